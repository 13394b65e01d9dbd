"""The new pipe must be large enough for all that drains into it, and 3 in at least with a toilet.

>>> from tests.made_up.stretch import limits, reroute, stretch
>>> way = lambda size, *serves: stretch(method="reroute", reroutes=(reroute(size_in=size, serves=serves),))
>>> carries(way(2.0, ("toilet", 1)), limits()).effect.value
'blocks'
>>> carries(way(3.0, ("toilet", 1)), limits()) is None
True
>>> carries(way(3.0, ("toilet", 4)), limits(place="california home")).effect.value  # UPC: three toilets on 3 in
'blocks'
"""

from estimator.knowledge.fixture_units import is_fixture, least_size_in
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import GOES_ROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def carries(it: StretchFacts, limits: Limits) -> Answers:
    for way in it.reroutes:
        served = [(word, count) for word, count in way.serves if is_fixture(word)]
        if not served or way.size_in is None:
            continue
        slope = limits.least_fall_in_per_ft(way.size_in)
        least_in = max(least_size_in(served, slope, family) for family in limits.code_families)
        if way.size_in < least_in:
            return Ruling(
                effect=Effect.BLOCKS,
                homeowner=Say.of("The new pipe must be larger for all the fixtures it serves."),
                estimator=Say.of(
                    "Fixtures served ask for {least} in, the notes say {size} in.",
                    least=f"{least_in:g}",
                    size=f"{way.size_in:g}",
                ),
            )
    return None


RULE = Rule(
    id="pipe-carries-its-fixtures",
    numbers=("R37",),
    concerns=GOES_ROUND,
    statement="Fixture units over the pipe's limit, or a toilet on less than 3 in: a larger pipe.",
    reason="An overloaded drain backs up into the lowest fixture.",
    source="IPC tables 709.1 and 710.1; UPC table 703.2 (county extract)",
    worse="offering what cannot work",
    applies=carries,
)

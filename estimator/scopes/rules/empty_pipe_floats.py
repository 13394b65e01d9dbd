"""An empty pipe floats in wet fill: it is filled with water and held down, and the fill goes in by lifts.

>>> from tests.made_up.stretch import limits, stretch
>>> floats(stretch(method="tunnel", zones=("slab",)), limits()).effect.value
'caution'
>>> RULE.is_asked(stretch(method="trench"))
False
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import TUNNELS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def floats(it: StretchFacts, limits: Limits) -> Answers:
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("We check the new pipe’s slope again after backfill."),
        estimator=Say.of(
            "Slurry or flowable fill: empty pipe floats and strap hangers hold only downward; fill the pipe with water, hold it down, place in lifts, watch the grade, film after."
        ),
        facts=frozenset({"film_after_fill"}),
    )


RULE = Rule(
    id="empty-pipe-floats",
    numbers=(),
    concerns=TUNNELS,
    statement="Pipe in slurry or flowable fill is filled with water and held down; filmed again after.",
    reason="A 4 in plastic pipe in wet fill lifts with about 11 lb a foot.",
    source="plain arithmetic (buoyancy); common practice",
    worse="offering what cannot work",
    applies=floats,
)

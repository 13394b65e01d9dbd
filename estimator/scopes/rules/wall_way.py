"""Toilets, tubs and showers drain through the floor: a way through the wall needs the floor opened at each, and that counted.

>>> from tests.made_up.stretch import limits, reroute, stretch
>>> tub = {"wall_ft": 12.0, "serves": (("tub", 1),)}
>>> floor_drained(stretch(method="reroute", reroutes=(reroute(**tub),)), limits()).effect.value
'blocks'
>>> counted = reroute(**tub, penetrations=(("floor", 1),))
>>> floor_drained(stretch(method="reroute", reroutes=(counted,)), limits()).effect.value
'adds work'
>>> floor_drained(stretch(method="reroute", reroutes=(reroute(wall_ft=12.0, serves=(("kitchen sink", 1),)),)), limits()) is None
True
"""

from estimator.knowledge.fixture_units import FLOOR_DRAINED, fixture, is_fixture
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import GOES_ROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def floor_drained(it: StretchFacts, limits: Limits) -> Answers:
    for way in it.reroutes:
        low = [word for word, _ in way.serves if is_fixture(word) and fixture(word) in FLOOR_DRAINED]
        if not low or not any(leg.zone == "wall" for leg in way.legs):
            continue
        counted = any(what == "floor" and count for what, count in way.penetrations)
        return Ruling(
            effect=Effect.ADDS_WORK if counted else Effect.BLOCKS,
            homeowner=Say.of(
                "Toilets, tubs and showers drain through the floor. The floor must be opened at each of them."
            ),
            estimator=Say.of(
                "{fixtures} drain through the floor: count an opening at each (penetrations, floor), or leave them on the old pipe.",
                fixtures=", ".join(low),
            ),
            facts=frozenset({"floor_opened_at_fixtures"}),
        )
    return None


RULE = Rule(
    id="wall-way-serves-what-drains-above-the-floor",
    numbers=(),
    concerns=GOES_ROUND,
    statement="A way through the wall serves sinks and washers; toilets, tubs and showers need the floor opened at each; without those openings counted it is not offered.",
    reason="Their traps lie in the floor.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    applies=floor_drained,
)

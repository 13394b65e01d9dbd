"""From 4 ft on there is a ladder within reach of everyone in the dig.

>>> from tests.made_up.stretch import dug, limits
>>> ladder(dug(4.0), limits()).effect.value
'requires first'
>>> ladder(dug(3.99), limits()) is None
True
"""

from estimator.knowledge.excavation import needs_ladder
from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import PEOPLE_BELOW
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def ladder(it: StretchFacts, limits: Limits) -> Answers:
    opening = it.deepest
    if opening is None or not needs_ladder(opening.safety_ft):
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("We fence the open excavation and leave a ladder in it. Keep children and pets away."),
        estimator=Say.of(
            "{opening}, {depth} with tolerance: ladder or ramp within reach (29 CFR 1926.651(c)(2)); air tested where bad air can be expected.",
            opening=opening.name,
            depth=Feet(round(opening.safety_ft, 2)),
        ),
        facts=frozenset({"ladder"}),
    )


RULE = Rule(
    id="ladder-from-four-feet",
    numbers=("R21",),
    concerns=PEOPLE_BELOW,
    statement="A dig 4 ft deep or more, locator's tolerance and bedding counted: a ladder or ramp, and air tested where bad air is likely.",
    reason="A way out must be near when a side begins to move.",
    source="29 CFR 1926.651(c)(2), (g)",
    worse="hurting somebody",
    guards_people=True,
    applies=ladder,
)

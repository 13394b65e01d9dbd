"""Lining resin smells: in a lived-in house traps are filled, windows opened, and a low-odor resin is chosen.

>>> from tests.made_up.stretch import limits, stretch
>>> resin(stretch(), limits()).effect.value
'adds work'
>>> resin(stretch(house={"lived_in": False}), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def resin(it: StretchFacts, limits: Limits) -> Answers:
    if not it.house.lived_in:
        return None
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of(
            "Lining smells while it cures. Fill every drain with water and keep windows open. Sensitive people should be away that day."
        ),
        estimator=Say.of(
            "Lived in: drains shut during the cure, traps filled, vents and doors planned, air out; low-odor resin. Styrene has passed the immediate-danger level outdoors."
        ),
        facts=frozenset({"low_odor_resin"}),
    )


RULE = Rule(
    id="resin-smell",
    numbers=("R45",),
    concerns=LINES,
    statement="Lining a lived-in house: traps filled, air out, low-odor resin.",
    reason="Styrene of 1,070 ppm was once measured outdoors; 700 ppm is the immediate-danger level; indoor cases are reported.",
    source="published measurements of styrene at lining sites (read second-hand); NIOSH immediate-danger level",
    worse="hurting somebody",
    guards_people=True,
    applies=resin,
)

"""Pipe through a foundation wall gets a sleeve or arch two sizes larger; under a footing the same by good habit.

>>> from tests.made_up.stretch import beam, limits, stretch
>>> sleeve(stretch(method="trench", beams=(beam(through=True),)), limits()).effect.value
'adds work'
>>> sleeve(stretch(method="trench"), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LAYS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def sleeve(it: StretchFacts, limits: Limits) -> Answers:
    through = [b for b in it.beams if b.through]
    walls = sum(count for way in it.reroutes for what, count in way.penetrations if what == "wall")
    if not through and not (it.works.goes_round and walls):
        return None
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of(
            "The pipe passes through the foundation in a sleeve, so that the house can move without breaking it."
        ),
        estimator=Say.of("Sleeve or arch two pipe sizes larger at each wall ({count}).", count=len(through) + walls),
        facts=frozenset({"sleeve"}),
    )


RULE = Rule(
    id="sleeve-through-the-wall",
    numbers=("R20",),
    concerns=LAYS,
    statement="Through a foundation wall: a sleeve or arch two pipe sizes larger.",
    reason="A wall that settles shears a pipe cast into it.",
    source="IRC 2021 P2603.4 (foundation walls; 2006 edition P2603.5 also named footings); under a footing: common practice",
    worse="leaving out a caution",
    applies=sleeve,
)

"""A side pipe that sticks in is cut flush before a liner goes past it.

>>> from tests.made_up.stretch import limits, stretch
>>> sticks_in(stretch("intruding 20%"), limits()).effect.value
'requires first'
>>> sticks_in(stretch("crack"), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def sticks_in(it: StretchFacts, limits: Limits) -> Answers:
    found = it.of("intruding")
    if not found:
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("A branch pipe sticks into the drain. We cut it back and inspect it before we line."),
        estimator=Say.of(
            "Intruding at {at}: cut flush by robot, film; know first what it is.", at=Feet(found[0].stretch.from_ft)
        ),
        facts=frozenset({"clean_first", "film_again"}),
    )


RULE = Rule(
    id="cut-flush-before-lining",
    numbers=("R02",),
    concerns=LINES,
    statement="A pipe that sticks in is cut flush and filmed before any liner.",
    reason="The liner hangs on it or folds round it.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    applies=sticks_in,
)

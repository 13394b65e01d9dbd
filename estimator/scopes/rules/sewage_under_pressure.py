"""A pump pushes the sewage: a force main is opened only when the pump is off, and no price is fixed before it is known where it runs.

>>> from tests.made_up.stretch import limits, stretch
>>> under_pressure(stretch(house={"force_main": True}), limits()).effect.value
'no fixed price'
>>> under_pressure(stretch(house={"force_main": False}), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINES, NEW_PIPE, ONLY_CLEANS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def under_pressure(it: StretchFacts, limits: Limits) -> Answers:
    if not it.house.force_main:
        return None
    return Ruling(
        effect=Effect.NO_FIXED_PRICE,
        homeowner=Say.of(
            "A pump pushes your sewage out through a pressure pipe. We confirm which pipe is under pressure before we give a fixed price."
        ),
        estimator=Say.of(
            "Force main: find where it runs. Lock out and tag the pump, let the pressure down, before any pipe is opened; a pressure pipe has no fall and gets a pressure test."
        ),
    )


RULE = Rule(
    id="sewage-under-pressure",
    numbers=(),
    concerns=NEW_PIPE | LINES | ONLY_CLEANS,
    statement="A force main: the pump locked out and the pressure let down first; no fixed price before it is known where it runs.",
    reason="Sewage under pressure sprays whoever opens the pipe, and fall and water tests say nothing of it.",
    source=COMMON_PRACTICE,
    settled_by="locate",
    worse="hurting somebody",
    guards_people=True,
    applies=under_pressure,
)

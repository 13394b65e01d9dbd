"""Where the house is to be lifted: test, fix only what feeds the soil or would break, lift, test again, then the rest.

>>> from estimator.model.job import Foundation
>>> from tests.made_up.stretch import limits, stretch
>>> lift(stretch(method="tunnel", zones=("slab",), foundation=Foundation(work="planned")), limits()).effect.value
'caution'
>>> lift(stretch(method="tunnel", zones=("slab",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINES, NEW_PIPE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def lift(it: StretchFacts, limits: Limits) -> Answers:
    if it.foundation.work != "planned":
        return None
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of(
            "Your foundation will be lifted. We test before and after the lift. Before it we repair only what leaks or would break. The warranty starts after it."
        ),
        estimator=Say.of(
            "Lift planned: test, fix what feeds the soil, lift, test after. Ask where the piers stand. Does their crew want the tunnel? Call before you backfill it. No warranty across a lift."
        ),
        facts=frozenset({"foundation_planned", "test_after_lift"}),
    )


RULE = Rule(
    id="foundation-work-planned",
    numbers=("R49",),
    concerns=NEW_PIPE | LINES,
    statement="Foundation work planned: test before, fix only what feeds the soil, lift, test after, then the rest; no warranty across a lift.",
    reason="A lift pulls joints apart; new pipe set too early breaks, and a leak left open softens the soil the piers stand in.",
    source=COMMON_PRACTICE,
    worse="leaving out a caution",
    applies=lift,
)

"""A house with one bathroom and drains off for more than a day needs a toilet or a room elsewhere.

>>> from tests.made_up.stretch import limits, stretch
>>> one_bath(stretch(method="break-through", zones=("slab",), house={"bathrooms": 1}), limits()).effect.value
'adds work'
>>> one_bath(stretch(method="break-through", zones=("slab",), house={"bathrooms": 2}), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import NEW_PIPE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def one_bath(it: StretchFacts, limits: Limits) -> Answers:
    if it.house.bathrooms != 1 or not it.house.lived_in:
        return None
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of(
            "You have one bathroom. If the drains are out for more than a day, you need a portable toilet or a hotel."
        ),
        estimator=Say.of("One bathroom, lived in, drains off over a day: portable toilet or hotel allowance."),
        facts=frozenset({"portable_toilet"}),
    )


RULE = Rule(
    id="one-bathroom",
    numbers=("R50",),
    concerns=NEW_PIPE,
    statement="One bathroom, lived in, and drains off over a day: a portable toilet or hotel allowance.",
    reason="Nobody can go a day without a toilet.",
    source=COMMON_PRACTICE,
    worse="leaving out a caution",
    applies=one_bath,
)

"""Where people live in the house or want their floors kept, ways from outside or inside the pipe come first.

>>> from tests.made_up.stretch import limits, stretch
>>> keep_floors(stretch(method="tunnel", zones=("slab",), wishes={"keep_floors": True}), limits()).effect.value
'prefers'
>>> keep_floors(stretch(method="tunnel", zones=("slab",), house={"lived_in": False}), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import RENEWS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def keep_floors(it: StretchFacts, limits: Limits) -> Answers:
    if it.works.cuts_floor or not it.under_floor or not (it.wishes.keep_floors or it.house.lived_in):
        return None
    return Ruling(
        effect=Effect.PREFERS,
        homeowner=Say.of("This method leaves your floors as they are."),
        estimator=Say.of("Lived in, or floors to be kept: tunnel, reroute or liner before breaking the floor."),
    )


RULE = Rule(
    id="keep-the-floors",
    numbers=("R27",),
    concerns=RENEWS,
    statement="Floors to be kept, or a lived-in house: tunnel, reroute or liner come first.",
    reason="The finish, the dust and the days out of the rooms often cost more than the digging.",
    source=COMMON_PRACTICE,
    worse="leaving out a way that works",
    applies=keep_floors,
)

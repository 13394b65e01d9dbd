"""Under cabinets, a tub or a wall a floor can be opened only once they are out of the way.

>>> from tests.made_up.stretch import limits, stretch
>>> room(stretch(method="break-through", zones=("slab",), under=("cabinets",)), limits()).effect.value
'adds work'
>>> room(stretch(method="break-through", zones=("slab",), under=("wall",)), limits()).effect.value
'until approved'
>>> room(stretch(method="break-through", zones=("slab",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import CUTS_FLOOR
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def room(it: StretchFacts, limits: Limits) -> Answers:
    if any("wall" in word for word in it.under):
        return Ruling(
            effect=Effect.UNTIL_APPROVED,
            homeowner=Say.of(
                "A wall is over the pipe. A qualified person must decide whether the floor may be opened under it."
            ),
            estimator=Say.of(
                "Wall over the pipe: if it bears load no opening without an engineer; tunnel or reroute instead."
            ),
            facts=frozenset({"engineer"}),
        )
    if not it.under:
        return None
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("We remove and reset what is over the pipe: {what}.", what=", ".join(it.under)),
        estimator=Say.of(
            "Under {what}: off and on as an allowance; tunnel or reroute may be easier.", what=", ".join(it.under)
        ),
        facts=frozenset({"fixtures_off"}),
    )


RULE = Rule(
    id="room-to-work-over-the-pipe",
    numbers=(),
    concerns=CUTS_FLOOR,
    statement="A floor is opened only where a saw and people can work; cabinets and tubs come off first, walls are asked about.",
    reason="A saw needs room, and a wall may carry the roof.",
    source=COMMON_PRACTICE,
    settled_by="engineer",
    worse="offering what cannot work",
    applies=room,
)

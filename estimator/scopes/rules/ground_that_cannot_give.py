"""Under a slab, in rock, in concrete or beside a footing a pipe is not burst.

>>> from tests.made_up.stretch import limits, mark, stretch
>>> cannot_give(stretch(method="burst", zones=("slab",)), limits()).effect.value
'blocks'
>>> cannot_give(stretch(method="burst", zones=("yard", "drive")), limits()) is None
True
>>> cannot_give(stretch(method="burst", marks=(mark("footing", lengths=(("away", 3.0),)),)), limits()).effect.value
'caution'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import BREAKS_PIPE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def cannot_give(it: StretchFacts, limits: Limits) -> Answers:
    encased = any(
        "encased" in m.signs or "encased" in (m.choice or "") or "encased" in m.note for m in it.placed("pipe")
    )
    rock = any((row := limits.soil(s)) is not None and row.osha_type == "rock" for s in it.soils)
    if it.under_floor or encased or rock:
        return Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of("Pipe bursting could push up the floor or ground there."),
            estimator=Say.of("Burst under a slab, in rock or in concrete: heave, cannot expand."),
        )
    if it.placed("footing"):
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of("The pipe runs beside the foundation. Pipe bursting may push against it."),
            estimator=Say.of("Burst beside a footing: heave; keep clear or choose another way."),
        )
    return None


RULE = Rule(
    id="ground-that-cannot-give",
    numbers=("R34",),
    concerns=BREAKS_PIPE,
    statement="No burst under a slab, in rock or in concrete; beside a footing with caution.",
    reason="The old pipe must be pushed outward into soil.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    applies=cannot_give,
)

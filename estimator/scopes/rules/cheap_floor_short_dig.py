"""Under bare concrete or carpet a short shallow spot is better reached through the floor.

>>> from estimator.model.stretch import Stretch
>>> from tests.made_up.stretch import limits, stretch
>>> at = {"method": "slab spot", "zones": ("slab",), "stretch": Stretch(0.0, 5.9), "depth_ft": 2.9, "house": {"floor_finish": "carpet"}}
>>> cheap_floor(stretch(**at), limits()).effect.value
'prefers'
>>> cheap_floor(stretch(**{**at, "stretch": Stretch(0.0, 6.0)}), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import PIECE_IN_A_FLOOR
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling

CHEAP = ("carpet", "bare", "concrete", "vinyl")


def cheap_floor(it: StretchFacts, limits: Limits) -> Answers:
    finish = it.house.floor_finish.lower()
    shallow = it.depth_ft is not None and it.depth_ft < limits("slab_spot_shallow_ft")
    if not any(word in finish for word in CHEAP) or not shallow or it.length_ft >= limits("slab_spot_max_ft"):
        return None
    if it.wishes.keep_floors or it.house.floor == "post-tensioned slab":
        return None
    return Ruling(
        effect=Effect.PREFERS,
        homeowner=Say.of(
            "The floor there is simple to restore and the pipe is shallow, so opening the floor is the short way."
        ),
        estimator=Say.of("Cheap floor, shallow and short: the least charge of a tunnel is more than the spot."),
    )


RULE = Rule(
    id="cheap-floor-short-dig",
    numbers=("R28",),
    concerns=PIECE_IN_A_FLOOR,
    statement="Bare concrete or carpet, shallow and short, no tendons: list through the floor first.",
    reason="A tunnel's minimum charge is more than the whole spot.",
    source=COMMON_PRACTICE,
    worse="leaving out a way that works",
    reads=("slab_spot_shallow_ft", "slab_spot_max_ft"),
    applies=cheap_floor,
)

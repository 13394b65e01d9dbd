"""Old pipe left under a slab or a drive is capped at both ends, and filled when it is large or the soil sinks.

>>> from tests.made_up.stretch import limits, stretch
>>> sorted(left_behind(stretch(method="abandon", zones=("slab",), sizes_in=(4.0,)), limits()).facts)
['cap_ends', 'fill_old_pipe']
>>> sorted(left_behind(stretch(method="abandon", zones=("slab",), sizes_in=(3.0,)), limits()).facts)
['cap_ends']
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import CLOSES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def left_behind(it: StretchFacts, limits: Limits) -> Answers:
    over = bool({"slab", "drive", "basement"} & set(it.zones))
    sinking = any("sink" in s.what.lower() for s in it.signs)
    fill = (over and max(it.sizes_in, default=0.0) >= limits("abandon_fill_from_in")) or sinking
    if fill:
        return Ruling(
            effect=Effect.ADDS_WORK,
            homeowner=Say.of(
                "The old pipe is capped at both ends and filled. The ground cannot sink and animals cannot get in."
            ),
            estimator=Say.of("Abandoned pipe under floor or drive, or sinking soil: cap both ends and fill."),
            facts=frozenset({"cap_ends", "fill_old_pipe"}),
        )
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of("The old pipe is capped at both ends and abandoned in place."),
        estimator=Say.of("Abandoned pipe: cap both ends."),
        facts=frozenset({"cap_ends"}),
    )


RULE = Rule(
    id="pipe-left-behind",
    numbers=("R48",),
    concerns=CLOSES,
    statement="Abandoned pipe: both ends capped; from 4 in under a slab or drive, or where soil sinks, filled too.",
    reason="An empty pipe is a void and a way for rodents.",
    source=COMMON_PRACTICE,
    worse="leaving out a caution",
    reads=("abandon_fill_from_in",),
    applies=left_behind,
)

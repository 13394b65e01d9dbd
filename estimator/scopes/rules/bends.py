"""Tight bends stop short liners and bursting heads, and ask for a flexible full liner.

>>> from tests.made_up.stretch import limits, mark, stretch
>>> bends(stretch(method="burst", marks=(mark("bend", degrees=90.0),)), limits()).effect.value
'blocks'
>>> bends(stretch(marks=(mark("bend", degrees=90.0),)), limits()).effect.value
'requires first'
>>> bends(stretch(method="burst", marks=(mark("bend", degrees=45.0),)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Feet, Say
from estimator.scopes.rules.concern import BREAKS_PIPE, LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import FROM_MEMORY, Answers, Rule, Ruling


def bends(it: StretchFacts, limits: Limits) -> Answers:
    tight = [m for m in it.placed("bend") if (m.degrees or 0.0) > limits("bend_blocks_degrees")]
    if not tight:
        return None
    if any(not x.pieces_ft for x in it.works.lined):
        return Ruling(
            effect=Effect.REQUIRES_FIRST,
            homeowner=Say.of("The pipe turns sharply, so we use a flexible liner. Slight folds in the bend are usual."),
            estimator=Say.of(
                "{count} bends over the limit: flexible liner; more than the usual number may stall the shot.",
                count=len(tight),
            ),
            facts=frozenset({"flexible_liner"}),
        )
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("The pipe turns too sharply there for this method."),
        estimator=Say.of(
            "Bend over the limit at {at}: no sectional liner; a burst needs a pit at the bend and ends there.",
            at=Feet(tight[0].stretch.from_ft),
        ),
        stretch=tight[0].stretch,
    )


RULE = Rule(
    id="tight-bends",
    numbers=("R13",),
    concerns=LINES | BREAKS_PIPE,
    statement="Bends over 45 degrees: no sectional liner and no burst through them; a full liner must be flexible.",
    reason="Liners wrinkle or stall, and a bursting head jams.",
    source=FROM_MEMORY,
    worse="offering what cannot work",
    reads=("bend_blocks_degrees",),
    applies=bends,
)

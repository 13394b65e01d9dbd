"""Where the pipe changes size one plain liner will not fit: a tapered one, or two liners.

>>> from tests.made_up.stretch import limits, stretch
>>> size_change(stretch(sizes_in=(3.0, 4.0)), limits()).effect.value
'requires first'
>>> size_change(stretch(sizes_in=(4.0,)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import BREAKS_PIPE, LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def size_change(it: StretchFacts, limits: Limits) -> Answers:
    if len(set(it.sizes_in)) < 2:
        return None
    if it.works.burst:
        return Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of("The pipe changes size there. One pull takes one size only."),
            estimator=Say.of(
                "Sizes {sizes} in: one pull takes one size; a pit at the change and two pulls, or a trench.",
                sizes=", ".join(f"{s:g}" for s in it.sizes_in),
            ),
        )
    if any(x.pieces_ft for x in it.works.lined):
        return Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of("The pipe changes size there. A short liner fits one size only."),
            estimator=Say.of("Size change within the piece: no sectional liner."),
        )
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("The pipe changes size, so we line it in two parts or with a transition liner."),
        estimator=Say.of(
            "Sizes {sizes} in: transition liner or split shots; finished bore is the bore less two walls.",
            sizes=", ".join(f"{s:g}" for s in it.sizes_in),
        ),
        facts=frozenset({"transition_liner"}),
    )


RULE = Rule(
    id="size-change-in-a-liner",
    numbers=("R12",),
    concerns=LINES | BREAKS_PIPE,
    statement="A size change within the length: a transition liner or split shots; bursting never pulls over it.",
    reason="A liner made for one size wrinkles in a smaller pipe and hangs loose in a larger one; a bursting head is made for one size.",
    source=COMMON_PRACTICE + "; bursting goes same size for same size, IPC 716 and a city's standard (from memory)",
    worse="offering what cannot work",
    applies=size_change,
)

"""Where the pipe changes size one plain liner will not fit: a tapered one, or two liners.

>>> from estimator.scopes.rules.examples import limits, stretch
>>> size_change(stretch(sizes_in=(3.0, 4.0)), limits()).effect.value
'requires first'
>>> size_change(stretch(sizes_in=(4.0,)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, LINERS, Answers, Rule, Ruling


def size_change(it: StretchFacts, limits: Limits) -> Answers:
    if len(set(it.sizes_in)) < 2:
        return None
    if it.method == "sectional liner":
        return Ruling(
            effect=Effect.BLOCKS,
            homeowner=Say.of("The pipe changes size there, and a short lining fits one size only."),
            estimator=Say.of("Size change within the piece: no sectional liner."),
        )
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("The pipe changes size on the way, so it is lined in two parts or with a tapered lining."),
        estimator=Say.of(
            "Sizes {sizes} in: transition liner or split shots; finished bore is the bore less two walls.",
            sizes=", ".join(f"{s:g}" for s in it.sizes_in),
        ),
        facts=frozenset({"transition_liner"}),
    )


RULE = Rule(
    id="size-change-in-a-liner",
    numbers=("R12",),
    methods=LINERS,
    statement="A size change within the length: a transition liner or split shots.",
    reason="A liner made for one size wrinkles in a smaller pipe and hangs loose in a larger one.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    applies=size_change,
)

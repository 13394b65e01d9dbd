"""More than two sharp turns in one liner are one too many to promise.

>>> from tests.made_up.stretch import limits, mark, stretch
>>> many(stretch(marks=tuple(mark("bend", at, degrees=90.0) for at in (5.0, 10.0, 15.0))), limits()).effect.value
'caution'
>>> many(stretch(marks=tuple(mark("bend", at, degrees=90.0) for at in (5.0, 10.0))), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINED_WHOLE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import FROM_MEMORY, Answers, Rule, Ruling


def many(it: StretchFacts, limits: Limits) -> Answers:
    square = [m for m in it.placed("bend") if (m.degrees or 0.0) > limits("bend_blocks_degrees")]
    if len(square) <= limits("liner_bends_max"):
        return None
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("The pipe has many sharp turns. We may have to line it in parts."),
        estimator=Say.of("{count} square bends in one shot: split it or try another way.", count=len(square)),
    )


RULE = Rule(
    id="many-sharp-bends",
    numbers=("R13",),
    concerns=LINED_WHOLE,
    statement="More than two square bends in one shot: caution.",
    reason="Each bend adds drag; the liner can stall inside the house.",
    source=FROM_MEMORY,
    worse="leaving out a caution",
    reads=("bend_blocks_degrees", "liner_bends_max"),
    applies=many,
)

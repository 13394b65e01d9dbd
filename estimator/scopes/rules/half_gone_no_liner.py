"""With more than half of the round missing there is no pipe left to line.

>>> from tests.made_up.stretch import limits, stretch
>>> half_gone(stretch("20-22 hole at 2-9"), limits()).effect.value
'blocks'
>>> half_gone(stretch("20-22 hole at 3-9"), limits()) is None  # half exactly
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.bottom_gone_dig_first import missing_percent
from estimator.scopes.rules.concern import LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import FROM_MEMORY, Answers, Rule, Ruling


def half_gone(it: StretchFacts, limits: Limits) -> Answers:
    if not any(missing_percent(f) > limits("channel_missing_block_percent") for f in it.of("channel", "hole", "crack")):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("Too much of the pipe is gone to hold a liner."),
        estimator=Say.of("More than half of the round is missing: no host for a liner."),
    )


RULE = Rule(
    id="half-gone-no-liner",
    numbers=("R04",),
    concerns=LINES,
    statement="More than half of the round missing: no liner.",
    reason="Nothing holds the liner's shape while it cures.",
    source=FROM_MEMORY,
    worse="offering what cannot work",
    reads=("channel_missing_block_percent",),
    applies=half_gone,
)

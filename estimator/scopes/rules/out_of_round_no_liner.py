"""A pipe squeezed far out of round is not lined: burst it or dig it.

>>> from tests.made_up.stretch import limits, stretch
>>> out_of_round(stretch("oval 12%"), limits()).effect.value
'blocks'
>>> out_of_round(stretch("oval 10%"), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import FROM_MEMORY, Answers, Rule, Ruling


def out_of_round(it: StretchFacts, limits: Limits) -> Answers:
    worst = it.worst("oval") or 0.0
    if worst <= limits("oval_blocks_percent") and not any("flat" in f.signs for f in it.of("oval")):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("The pipe is too far out of round for a liner."),
        estimator=Say.of("Deformed over the limit: no liner; burst or trench."),
    )


RULE = Rule(
    id="out-of-round-no-liner",
    numbers=("R08",),
    concerns=LINES,
    statement="Deformed by more than a tenth: no liner.",
    reason="The liner takes the same shape and keeps the loss of strength.",
    source=FROM_MEMORY,
    worse="offering what cannot work",
    reads=("oval_blocks_percent",),
    applies=out_of_round,
)

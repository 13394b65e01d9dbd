"""Where the whole run is at its end, repairing spots is money thrown after it.

>>> from tests.made_up.stretch import limits, need, stretch
>>> worn_out(stretch(method="slab spot", needs=(need("channel", whole_line="only"),)), limits()).effect.value
'blocks'
>>> worn_out(stretch(method="slab spot", needs=(need("channel", whole_line="option"),)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import A_PIECE
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def worn_out(it: StretchFacts, limits: Limits) -> Answers:
    if not any(n.whole_line == "only" for n in it.needs):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("The whole run needs replacement. Spot repairs would not last."),
        estimator=Say.of("Whole-run renewal is the only right answer here: no spots."),
    )


RULE = Rule(
    id="no-spots-on-worn-out-pipe",
    numbers=("D06", "D17", "D18"),
    concerns=A_PIECE,
    statement="Iron grooved along most of the run, clay with roots at most joints, or fiber: renewal of the run, no spots.",
    reason="The next hole opens beside the new piece.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    applies=worn_out,
)

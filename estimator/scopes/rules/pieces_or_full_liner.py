"""Short liners that a full liner would later cover are paid for twice: choose one.

>>> from tests.made_up.stretch import limits, need, stretch
>>> pieces_or_full(stretch(method="sectional liner", needs=(need("crack", whole_line="option"),)), limits()).effect.value
'caution'
>>> pieces_or_full(stretch(method="sectional liner", needs=(need("crack"),)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINED_IN_PIECES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def pieces_or_full(it: StretchFacts, limits: Limits) -> Answers:
    if not any(n.whole_line == "option" for n in it.needs):
        return None
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("If you line the whole run later, you pay twice for these pieces."),
        estimator=Say.of("Choose pieces or the full liner, never both over the same length."),
    )


RULE = Rule(
    id="pieces-or-full-liner",
    numbers=("R10",),
    concerns=LINED_IN_PIECES,
    statement="Sectional liners inside a later full reline: choose one, not both.",
    reason="The same length would be charged twice.",
    source="plain arithmetic",
    worse="leaving out a caution",
    applies=pieces_or_full,
)

"""A dig to look is offered where something is closed or only suspected, not where it was seen.

>>> from tests.made_up.stretch import limits, need, stretch
>>> unclear(stretch(method="look and see", needs=(need("crack"),)), limits()).effect.value
'blocks'
>>> unclear(stretch(method="look and see", needs=(need("blocked", grade="suspected"),)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LOOKS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def unclear(it: StretchFacts, limits: Limits) -> Answers:
    if any(n.grade in ("suspected", "not inspected") for n in it.needs) or not it.filmed:
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("The camera shows what is wrong there, so an exploratory excavation is not needed."),
        estimator=Say.of("Seen clearly: no look-and-see."),
    )


RULE = Rule(
    id="look-where-it-is-unclear",
    numbers=("D19", "R01"),
    concerns=LOOKS,
    statement="A look-and-see dig only where the trouble is suspected, hidden or beyond where the camera stopped.",
    reason="It is a fixed small price for certainty before a large one.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    goes_without_saying=True,
    applies=unclear,
)

"""Sections are tested apart only where a test failed and nobody knows where it leaks.

>>> from tests.made_up.stretch import limits, need, stretch
>>> nothing(stretch(method="isolation test", needs=(need("hole"),)), limits()).effect.value
'blocks'
>>> nothing(stretch(method="isolation test", needs=(need("failed test"),)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import TESTS_SECTIONS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def nothing(it: StretchFacts, limits: Limits) -> Answers:
    if any("failed test" in n.kinds for n in it.needs):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("There is no hidden leak to look for here."),
        estimator=Say.of("No failed test without a visible cause: nothing to isolate."),
    )


RULE = Rule(
    id="nothing-to-isolate",
    numbers=("D09",),
    concerns=TESTS_SECTIONS,
    statement="An isolation test is offered only after a failed test without a visible cause.",
    reason="An honest quote sells nothing that is not needed.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    goes_without_saying=True,
    applies=nothing,
)

"""A pipe with nothing in it needs no cleaning.

>>> from tests.made_up.stretch import limits, need, stretch
>>> nothing(stretch("crack", method="clean"), limits()).effect.value
'blocks'
>>> nothing(stretch("roots 10%", method="clean"), limits()) is None
True
>>> dip = lambda severity: stretch("20-26 sag 20%", method="clean", needs=(need("sag", severity),))
>>> nothing(dip(2), limits()) is None, nothing(dip(3), limits()).effect.value
(True, 'blocks')
"""

from estimator.model.judgement import Effect
from estimator.model.line import CLEANABLE
from estimator.model.say import Say
from estimator.scopes.rules.cleaning_closes_no_opening import lived_with
from estimator.scopes.rules.concern import ONLY_CLEANS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def nothing(it: StretchFacts, limits: Limits) -> Answers:
    if set(it.kinds) & CLEANABLE or any(lived_with(n) for n in it.needs):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("The pipe has nothing to clean out."),
        estimator=Say.of("No roots, scale, grease, mud or soft blockage over this stretch."),
    )


RULE = Rule(
    id="nothing-to-clean",
    numbers=(),
    concerns=ONLY_CLEANS,
    statement="Cleaning is offered only where there is something to clean out, or a dip that may stay and gathers dirt.",
    reason="An honest quote sells nothing that is not needed.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    goes_without_saying=True,
    applies=nothing,
)

"""Breaking a slab cuts the soil treated against termites.

>>> from tests.made_up.stretch import limits, stretch
>>> treated(stretch(method="break-through", zones=("slab",)), limits()).effect.value
'caution'
>>> RULE.is_asked(stretch(method="trench"))
False
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import BELOW_FLOOR
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def treated(it: StretchFacts, limits: Limits) -> Answers:
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("We disturb soil treated for termites. Ask about your pest warranty."),
        estimator=Say.of("Treated soil is cut: re-treat or exclude in writing."),
    )


RULE = Rule(
    id="treated-soil",
    numbers=(),
    concerns=BELOW_FLOOR,
    statement="Opening a slab or the soil under it: the termite treatment is cut, said in writing.",
    reason="The pest warranty may end there.",
    source=COMMON_PRACTICE,
    worse="leaving out a caution",
    applies=treated,
)

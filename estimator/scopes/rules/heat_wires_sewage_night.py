"""Every dig: heat, wires overhead, soil soaked with sewage, and a hole left open at night.

>>> from tests.made_up.stretch import limits, stretch
>>> every_dig(stretch(method="trench"), limits()).effect.value
'caution'
>>> RULE.is_asked(stretch(method="reline"))
False
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import DIGS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def every_dig(it: StretchFacts, limits: Limits) -> Answers:
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("We cover or fence the excavation at night."),
        estimator=Say.of(
            "Heat plan; look up for wires before the machine swings; gloves and washing for sewage-soaked soil; pit covered and lit at night."
        ),
    )


RULE = Rule(
    id="heat-wires-sewage-night",
    numbers=(),
    concerns=DIGS,
    statement="Every dig carries cautions for heat, overhead wires, soaked soil and night cover.",
    reason="These hurt people on days when nothing caves in.",
    source=COMMON_PRACTICE,
    worse="hurting somebody",
    guards_people=True,
    applies=every_dig,
)

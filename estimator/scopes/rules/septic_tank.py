"""A house on a septic tank: the health department's permit, and debris kept out of the tank.

>>> from tests.made_up.stretch import limits, stretch
>>> septic(stretch(house={"sewer": "septic"}), limits()).effect.value
'adds work'
>>> septic(stretch(), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINES, NEW_PIPE, ONLY_CLEANS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def septic(it: StretchFacts, limits: Limits) -> Answers:
    if it.house.sewer != "septic" and it.ends != "septic tank":
        return None
    return Ruling(
        effect=Effect.ADDS_WORK,
        homeowner=Say.of(
            "Your house drains to a septic tank. A health department permit may be required. Nothing from our work goes into the tank."
        ),
        estimator=Say.of("Septic: health-department permit, catch debris before the tank."),
        facts=frozenset({"septic", "septic_permit"}),
    )


RULE = Rule(
    id="septic-tank",
    numbers=("R47",),
    concerns=NEW_PIPE | LINES | ONLY_CLEANS,
    statement="Septic tank: health-department permit, debris kept out of the tank.",
    reason="Debris blocks the tank and its field.",
    source=COMMON_PRACTICE,
    worse="leaving out a caution",
    applies=septic,
)

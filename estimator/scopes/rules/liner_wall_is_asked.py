"""How thick a liner must be is the place's word: ask the inspector where nobody has.

>>> from tests.made_up.stretch import limits, stretch
>>> liner_wall(stretch(), limits(place="")).effect.value
'caution'
>>> str(liner_wall(stretch(), limits(place="")).homeowner)[:18]
'We ask the inspect'
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import LINES
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def liner_wall(it: StretchFacts, limits: Limits) -> Answers:
    asked = limits.place.min_liner_wall_mm if limits.place else None
    if asked is None or not limits.asked_here:
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of("We ask the inspector which liner your city accepts before we order it."),
            estimator=Say.of(
                "Minimum liner wall not asked here: public specifications ask more than house practice gives; ask the inspector, size by ASTM F1216 App. X1."
            ),
        )
    return Ruling(
        effect=Effect.CAUTION,
        homeowner=Say.of("The liner is as thick as the city requires."),
        estimator=Say.of("Minimum liner wall here {wall} mm; check the size by ASTM F1216 App. X1.", wall=f"{asked:g}"),
    )


RULE = Rule(
    id="liner-wall-is-asked",
    numbers=("R15",),
    concerns=LINES,
    statement="The least liner wall comes from the place's row; where it is empty, ask.",
    reason="Two public specifications ask 4.5 mm; 3 mm is usual in small house pipe.",
    source="ASTM F1216 App. X1 for the thickness; house practice from memory",
    worse="leaving out a caution",
    applies=liner_wall,
)

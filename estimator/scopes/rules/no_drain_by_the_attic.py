"""Water does not run up: no drain goes by the attic, only vents do.

>>> from tests.made_up.stretch import limits, reroute, stretch
>>> attic(stretch(method="reroute", reroutes=(reroute(attic_ft=20.0),)), limits()).effect.value
'blocks'
>>> attic(stretch(method="reroute", reroutes=(reroute(wall_ft=20.0),)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import GOES_ROUND
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def attic(it: StretchFacts, limits: Limits) -> Answers:
    if not any(leg.zone == "attic" for way in it.reroutes for leg in way.legs):
        return None
    return Ruling(
        effect=Effect.BLOCKS,
        homeowner=Say.of("A drain cannot go up through the attic."),
        estimator=Say.of("A leg by the attic: gravity drains of floors below cannot; vents can."),
    )


RULE = Rule(
    id="no-drain-by-the-attic",
    numbers=(),
    concerns=GOES_ROUND,
    statement="No drain by the attic, except for fixtures above it; vents may.",
    reason="Drains run by gravity.",
    source=COMMON_PRACTICE,
    worse="offering what cannot work",
    applies=attic,
)

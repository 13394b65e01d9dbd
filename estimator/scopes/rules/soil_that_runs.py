"""No tunnel in loose sand, gravel or fill, unless it is fully shored by design.

>>> from tests.made_up.stretch import limits, stretch
>>> soil_runs(stretch(method="tunnel", soils=("fill",)), limits()).effect.value
'until approved'
>>> soil_runs(stretch(method="tunnel", soils=("firm clay",)), limits()) is None
True
"""

from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import TUNNELS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import COMMON_PRACTICE, Answers, Rule, Ruling


def soil_runs(it: StretchFacts, limits: Limits) -> Answers:
    loose = [s for s in it.soils if (row := limits.soil(s)) is not None and not row.can_tunnel]
    if not loose:
        return None
    return Ruling(
        effect=Effect.UNTIL_APPROVED,
        homeowner=Say.of("The ground under the house is too loose for people to dig a tunnel in safely."),
        estimator=Say.of("{soil}: no tunnel without full shoring designed for it.", soil=", ".join(loose)),
        facts=frozenset({"engineer"}),
    )


RULE = Rule(
    id="soil-that-runs",
    numbers=("R26",),
    concerns=TUNNELS,
    statement="Loose sand, gravel, fill or running soil: no tunnel without full shoring by design.",
    reason="The face runs in on whoever digs.",
    source=COMMON_PRACTICE,
    settled_by="engineer",
    worse="hurting somebody",
    guards_people=True,
    applies=soil_runs,
)

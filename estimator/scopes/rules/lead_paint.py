"""In a house built before 1978, painted parts disturbed beyond a small area need a lead-safe firm and the leaflet.

>>> from tests.made_up.stretch import limits, stretch
>>> lead(stretch(method="reroute", house={"built": 1977}, site={"paint_sqft": 6.5}), limits()).effect.value
'requires first'
>>> lead(stretch(method="reroute", house={"built": 1977}, site={"paint_sqft": 6.0}), limits()) is None
True
>>> lead(stretch(method="reroute", house={"built": 1978}, site={"paint_sqft": 60.0}), limits()) is None
True
>>> lead(stretch(method="reroute", house={"built": 1970}), limits()).effect.value  # nobody measured
'caution'
"""

from estimator.knowledge.houses import INSIDE_ROOM_OVER_SQFT, LEAD_PAINT_BEFORE
from estimator.model.judgement import Effect
from estimator.model.say import Say
from estimator.scopes.rules.concern import CUTS_FLOOR, GOES_ROUND, HANGS
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.rule import Answers, Rule, Ruling


def lead(it: StretchFacts, limits: Limits) -> Answers:
    if it.house.built is not None and it.house.built >= LEAD_PAINT_BEFORE:
        return None
    if it.site.paint_sqft is None:
        return Ruling(
            effect=Effect.CAUTION,
            homeowner=Say.of(
                "If we have to disturb old paint in a house of this age, we work lead-safe. You get the EPA lead pamphlet."
            ),
            estimator=Say.of(
                "Built before 1978 and painted area not measured: ask; over the limit a lead-safe firm and the pamphlet (40 CFR 745.83)."
            ),
        )
    if it.site.paint_sqft <= INSIDE_ROOM_OVER_SQFT:
        return None
    return Ruling(
        effect=Effect.REQUIRES_FIRST,
        homeowner=Say.of("The work disturbs old paint, so we work lead-safe. You get the EPA lead pamphlet first."),
        estimator=Say.of(
            "{area} sq ft of paint in a house built before 1978: lead-safe certified firm and pamphlet (40 CFR 745.83).",
            area=f"{it.site.paint_sqft:g}",
        ),
        facts=frozenset({"lead_safe"}),
    )


RULE = Rule(
    id="lead-paint",
    numbers=("R30",),
    concerns=CUTS_FLOOR | HANGS | GOES_ROUND,
    statement="Built before 1978 and more than a small painted area disturbed: lead-safe certified firm and pamphlet.",
    reason="Lead dust harms children first.",
    source="40 CFR 745.83",
    worse="hurting somebody",
    guards_people=True,
    applies=lead,
)

"""The job in; the yes/no facts the house and the people in it give every takeoff, out."""

from estimator.knowledge.houses import LEAD_PAINT_BEFORE
from estimator.knowledge.tendons import may_have_tendons
from estimator.takeoff.case import Case

HOT_MONTHS = (6, 7, 8, 9)
DRY_CLAY_MONTHS = (8, 9)


def house_facts(case: Case) -> None:
    """Lived in, septic, tendons, lead paint, thick slab, hot season, foundation work, a claim, the firm's own facts."""
    house, facts = case.job.house, case.paper.facts
    told = {
        "lived_in": house.lived_in,
        "septic": house.sewer == "septic",
        "built_before_1978": house.built is not None and house.built < LEAD_PAINT_BEFORE,
        "expansive_soil": bool(house.expansive_soil),
        "hot_season": case.job.day.month in HOT_MONTHS,
        "foundation_planned": case.job.foundation.work == "planned",
        "insurance_claim": bool(case.job.customer.claim),
        "slab_may_have_tendons": may_have_tendons(house, case.place.tendons_since if case.place else None),
        "slab_over_4in": case.slab_ft * 12 > case.number("slab_thick_over_in") + 1e-6,
        "under_slab": any(zone == "slab" for _, zone in case.profile.zones(case.stretch)),
        "cast_iron": case.is_iron(),
        "clay_pipe": case.is_clay(),
        "one_bathroom": house.bathrooms == 1,
        "roots_in_pipe": any(f.kind == "roots" and f.stretch.touches(case.stretch) for f in case.line.findings),
        "street_work": any(zone == "street" for _, zone in case.profile.zones(case.stretch)),
        "over_fill": (case.soil_word or "") == "fill",
        "clay_dry_months": "clay" in (case.soil_word or "") and case.job.day.month in DRY_CLAY_MONTHS,
    }
    facts |= {name for name, holds in told.items() if holds}
    facts |= {name for name in house.own_facts if not name.startswith("not ")}

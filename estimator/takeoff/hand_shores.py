"""The sides of a dig that no machine can put a box into; boards and spreaders set by hand, out: a price allowance, never a design."""

from estimator.takeoff.case import Case


def hand_shores(case: Case, sides_ft: float, depth_ft: float) -> None:
    """All sides, `sides_ft` long together, as deep as the dig."""
    case.paper.facts.add("hand_shored")
    case.paper.add(
        "shores_sf",
        sides_ft * depth_ft,
        "length of all sides x depth, shored by hand: a price allowance, not a design",
        ("all sides", sides_ft, "ft"),
        ("depth", depth_ft, "ft"),
        source="29 CFR 1926.652(a)",
    )

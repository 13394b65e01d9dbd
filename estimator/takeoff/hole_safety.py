"""A hole that people work in; the boxes or shores that hold its sides, its edge and its air, out: a price allowance, never a design."""

from estimator.knowledge.excavation import air_test, needs_guardrail, needs_system
from estimator.model.say import Feet
from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.takeoff.rented import days_charged
from estimator.works.ground import leaks_here
from estimator.works.rounding import up


def sides_are_held(case: Case, safety_ft: float) -> bool:
    """Whether the sides must be held at this depth, the locator's error in it; what the depth asks for is noted and said.

    The soil of a pit or an opening has been dug before: type C (29 CFR 1926.652(a), Appendix A to Subpart P).
    """
    facts = case.paper.facts
    if safety_ft > case.number("depth_slow_from_ft"):
        facts.add("depth_over_4")
    held = needs_system(safety_ft, "C", case.job.site.caving_signs)
    if held:
        facts.add("depth_over_5")
    say_edge_and_air(case, case.stretch, safety_ft)
    return held


def say_edge_and_air(case: Case, hole: Stretch, safety_ft: float) -> None:
    """A rail from 6 ft on; air tested past 4 ft where sewage has been getting into the soil (29 CFR 1926.501(b)(7), .651(g))."""
    if needs_guardrail(safety_ft):
        case.paper.warn(
            "the edge of a hole {depth} deep is railed or fenced wherever it is not plainly seen",
            depth=Feet(round(safety_ft, 2)),
        )
    if air_test(safety_ft, leaks_here(case, hole)):
        case.paper.warn(
            "sewage has been getting into this soil: the air in the hole is tested before anyone goes in and while they work"
        )


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


def trench_boxes(case: Case, lengths_ft: tuple[float, ...], depth_ft: float, days: float) -> None:
    """As many boxes as the length that is open at one time needs, set one on another where the dig is deeper than one.

    A long trench is dug, laid and filled a length at a time: the firm has so many boxes in it at once and drags them along.
    They are on rent until the trench is filled, two lengths a day and never less than the firm's days. A box has two sides
    and no ends: whoever works in it is shielded on all four.
    """
    paper, long, high = case.paper, case.number("box_length_ft"), case.number("box_height_ft")
    at_once, layers = case.number("boxes_at_once"), up(depth_ft / high)
    places = [up(length / long) for length in lengths_ft]
    paper.facts.add("boxed")
    lengths = ", ".join(f"{length:g} ft" for length in lengths_ft)
    boxes = paper.put(
        "boxes",
        layers * sum(min(place, at_once) for place in places),
        "length / box length, up, at most those in it at once, x depth / box height, up",
        ("length", lengths),
        ("box length", long, "ft"),
        ("boxes at once", at_once),
        ("depth", depth_ft, "ft"),
        ("box height", high, "ft"),
        source="29 CFR 1926.652(a)",
    )
    if moves := layers * sum(max(0.0, place - at_once) for place in places):
        paper.put(
            "box_moves",
            moves,
            "places along the dig less those the boxes are set in, x boxes one on another",
            ("length", lengths),
            ("boxes at once", at_once),
            ("boxes one on another", layers),
        )
    open_days = max(days, *(up(up(place / at_once) / LENGTHS_A_DAY) for place in places))
    _rent(case, boxes, _end_shields(case, len(lengths_ft), layers), open_days)


def _end_shields(case: Case, holes: int, layers: float) -> float:
    return case.paper.put(
        "end_shields",
        2 * layers * holes,
        "two open ends of each hole x boxes one on another",
        ("holes", holes),
        ("boxes one on another", layers),
        source="29 CFR 1926.652(a): protected from cave-ins on all sides",
    )


def _rent(case: Case, boxes: float, shields: float, open_days: float) -> None:
    charged = days_charged(open_days, case.number("rent_week_days"))
    case.paper.put(
        "shoring_box_days",
        boxes * charged,
        "boxes x days charged",
        ("boxes", boxes),
        ("days open", open_days),
        ("days charged", charged),
    )
    case.paper.put(
        "end_shield_days",
        shields * charged,
        "end shields x days charged",
        ("end shields", shields),
        ("days open", open_days),
        ("days charged", charged),
    )


LENGTHS_A_DAY = 2.0
"""Lengths of boxes that a crew digs, lays and fills in a day (common practice: some 30 ft of held trench)."""

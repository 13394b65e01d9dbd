"""A dig held by steel boxes in; how many are on rent, how often they are dragged along, their end shields and days, out."""

from estimator.takeoff.case import Case
from estimator.works.rounding import up


def trench_boxes(case: Case, lengths_ft: tuple[float, ...], depth_ft: float, days: float) -> None:
    """As many boxes as the length that is open at one time needs, set one on another where the dig is deeper than one.

    A long trench is dug, laid and filled a length at a time: the firm has so many boxes in it at once and drags them along.
    They are on rent as long as the trench is open, two lengths a day and never less than the firm's days. A box has two sides
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
    paper.put("shoring_box_days", boxes * open_days, "boxes x days open", ("boxes", boxes), ("days open", open_days))
    _end_shields(case, len(lengths_ft), layers, open_days)


def _end_shields(case: Case, holes: int, layers: float, open_days: float) -> None:
    shields = case.paper.put(
        "end_shields",
        2 * layers * holes,
        "two open ends of each hole x boxes one on another",
        ("holes", holes),
        ("boxes one on another", layers),
        source="29 CFR 1926.652(a): protected from cave-ins on all sides",
    )
    case.paper.put(
        "end_shield_days",
        shields * open_days,
        "end shields x days open",
        ("end shields", shields),
        ("days open", open_days),
    )


LENGTHS_A_DAY = 2.0
"""Lengths of boxes that a crew digs, lays and fills in a day (common practice: some 30 ft of held trench)."""

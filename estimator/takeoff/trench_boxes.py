"""A dig held by steel boxes in; how many, set one on another where the dig is deeper than one, their end shields and days, out."""

from estimator.takeoff.case import Case
from estimator.takeoff.working import up


def trench_boxes(case: Case, lengths_ft: tuple[float, ...], depth_ft: float, days: float) -> None:
    """For each hole length / box length, up, times depth / box height, up; two end shields for each hole and layer.

    A box has two sides and no ends: whoever works in a pit is shielded on all four.
    """
    paper, long, high = case.paper, case.number("box_length_ft"), case.number("box_height_ft")
    layers = up(depth_ft / high)
    paper.facts.add("boxed")
    boxes = paper.put(
        "boxes",
        layers * sum(up(length / long) for length in lengths_ft),
        "length / box length, up, x depth / box height, up",
        ("length", ", ".join(f"{length:g} ft" for length in lengths_ft)),
        ("box length", long, "ft"),
        ("depth", depth_ft, "ft"),
        ("box height", high, "ft"),
        source="29 CFR 1926.652(a)",
    )
    paper.put("shoring_box_days", boxes * days, "boxes x days open", ("boxes", boxes), ("days open", days))
    shields = paper.put(
        "end_shields",
        2 * layers * len(lengths_ft),
        "two open ends of each hole x boxes one on another",
        ("holes", len(lengths_ft)),
        ("boxes one on another", layers),
        source="29 CFR 1926.652(a): protected from cave-ins on all sides",
    )
    paper.put("end_shield_days", shields * days, "end shields x days open", ("days open", days))

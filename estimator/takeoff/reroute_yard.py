"""The legs of a way round that run in the ground in; their trench by hand or machine, fill and lawn, out."""

from estimator.knowledge.pipes import pipe_size
from estimator.model.job import Reroute
from estimator.takeoff.case import Case
from estimator.takeoff.depth import INCHES_PER_FT
from estimator.takeoff.dig_fill import sand_tons
from estimator.takeoff.ground import ground_facts, hand_only
from estimator.takeoff.haul import export, spoil
from estimator.takeoff.working import cubic_yards, up

BURIED = ("yard", "drive", "walk")


def yard_legs(case: Case, way: Reroute, size_in: float) -> None:
    """A shallow trench along the buried legs at the firm's depth for a new drain."""
    legs = [leg for leg in way.legs if leg.zone in BURIED]
    if not legs:
        return
    ground_facts(case)
    paper, step = case.paper, case.number("dig_step_ft")
    outside = pipe_size(size_in or 3).outside_in / INCHES_PER_FT
    length = sum(leg.length_ft for leg in legs)
    width = up(outside + case.number("trench_clear_ft"), step)
    depth = up(case.number("reroute_depth_ft"), step)
    by_hand = hand_only(case)
    cubic_ft = length * width * depth
    paper.put(
        "hand_dig_bcy" if by_hand else "dig_bcy",
        cubic_yards(cubic_ft),
        "buried legs x width x depth / 27",
        ("buried legs", length, "ft"),
        ("width", width, "ft"),
        ("depth", depth, "ft"),
    )
    if by_hand:
        paper.facts.add("hand_only")
    zone = length * width * min(depth, case.number("bedding_ft") + outside + case.number("pipe_zone_over_ft"))
    sand, native = cubic_yards(zone), cubic_yards(cubic_ft - zone)
    paper.put("pipe_zone_ccy", sand, "legs x width x (bedding + pipe + cover) / 27", ("buried legs", length, "ft"))
    sand_tons(case, sand)
    paper.put("native_ccy", native, "dug - pipe zone", ("dug", cubic_yards(cubic_ft), "cy"), ("pipe zone", sand, "cy"))
    paper.put(
        "hand_backfill_ccy" if by_hand else "backfill_ccy",
        native + sand,
        "native + pipe zone",
        ("native", native, "cy"),
        ("pipe zone", sand, "cy"),
    )
    spoil(case, cubic_yards(cubic_ft))
    export(case, cubic_yards(cubic_ft), native, case.soil.shrink_hand if by_hand else case.soil.shrink_machine)
    lawn = sum(leg.length_ft for leg in legs if leg.zone == "yard")
    margin, sold = case.number("sod_margin_ft"), case.number("sod_step_sf")
    if lawn:
        paper.facts.add("lawn")
        paper.put(
            "sod_sf",
            up((lawn + 2 * margin) * (width + 2 * margin), sold),
            "(yard legs + margins) x (width + margins), up to what is sold",
            ("yard legs", lawn, "ft"),
            ("width", width, "ft"),
            ("margin", margin, "ft"),
        )

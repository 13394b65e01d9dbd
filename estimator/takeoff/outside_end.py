"""The part of the stretch that lies outside the slab in; the hand-dug hole over it, out."""

import math

from estimator.takeoff.case import Case
from estimator.takeoff.dig_fill import packed
from estimator.takeoff.hole_safety import hand_shores
from estimator.takeoff.restoration import put_back
from estimator.takeoff.working import cubic_yards, up
from estimator.works.depth import bedding_ft, outside_ft
from estimator.works.floor_cut import outside_hole
from estimator.works.grade import Grade


def outside_end(case: Case, pipe: Grade) -> tuple[float, float]:
    """Bank yards dug outside and native yards put back; both 0 where the stretch ends at the slab edge or inside."""
    hole = outside_hole(case, pipe)
    if hole is None:
        return 0.0, 0.0
    paper, room = case.paper, case.number("dig_end_ft")
    length, width, bed = hole.along.length_ft, hole.bottom_width_ft, bedding_ft(case)
    depth = up(hole.depth_ft, case.number("dig_step_ft"))
    bank = cubic_yards(length * width * depth)
    paper.put(
        "hand_dig_bcy",
        bank,
        "outside end: (pipe outside + room) x width x depth / 27",
        ("pipe outside", length - room, "ft"),
        ("room", room, "ft"),
        ("width", width, "ft"),
        ("depth", depth, "ft"),
    )
    if hole.held_by:
        paper.facts.add("depth_over_5")
        hand_shores(case, 2 * (length + width), depth)
    high = bed + outside_ft(case) + case.number("pipe_zone_over_ft")
    zone = length * width * min(high, depth)
    sand = cubic_yards(zone - math.pi / 4 * outside_ft(case) ** 2 * length)
    native = bank - cubic_yards(zone)
    paper.put("pipe_zone_ccy", sand, "outside end: (pipe zone - the pipe in it) / 27", ("pipe zone", zone, "cu ft"))
    packed(case, native, sand, formula="outside end: native + pipe zone", by_hand=True)
    put_back(case, (hole.along, width))
    return bank, native

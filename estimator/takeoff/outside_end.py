"""The part of the stretch that lies outside the slab in; the hand-dug hole over it, out."""

import math

from estimator.knowledge.excavation import needs_system
from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.takeoff.depth import INCHES_PER_FT, bedding_ft, outside_ft, tolerance_ft
from estimator.takeoff.grade import Grade
from estimator.takeoff.hand_shores import hand_shores
from estimator.takeoff.restoration import put_back
from estimator.takeoff.trench_width import trench_width_ft
from estimator.takeoff.tunnel_pit import above_grade_ft
from estimator.takeoff.working import cubic_yards, up


def outside_end(case: Case, pipe: Grade) -> tuple[float, float]:
    """Bank yards dug outside and native yards put back; both 0 where the stretch ends at the slab edge or inside."""
    near, _ = case.inside
    if near >= 0:
        return 0.0, 0.0
    paper, room = case.paper, case.number("dig_end_ft")
    length = -near + room
    bed = bedding_ft(case)
    exact = pipe.invert_ft(near) - above_grade_ft(case) + pipe.wall_in / INCHES_PER_FT + bed
    depth = up(exact, case.number("dig_step_ft"))
    held = needs_system(depth + tolerance_ft(case, depth), "C", case.job.site.caving_signs)
    width = trench_width_ft(case, shored=held)
    bank = cubic_yards(length * width * depth)
    paper.put(
        "hand_dig_bcy",
        bank,
        "outside end: (pipe outside + room) x width x depth / 27",
        ("pipe outside", -near, "ft"),
        ("room", room, "ft"),
        ("width", width, "ft"),
        ("depth", depth, "ft"),
    )
    if held:
        paper.facts.add("depth_over_5")
        hand_shores(case, 2 * (length + width), depth)
    high = bed + outside_ft(case) + case.number("pipe_zone_over_ft")
    zone = length * width * min(high, depth)
    sand = cubic_yards(zone - math.pi / 4 * outside_ft(case) ** 2 * length)
    native = bank - cubic_yards(zone)
    paper.put("pipe_zone_ccy", sand, "outside end: (pipe zone - the pipe in it) / 27", ("pipe zone", zone, "cu ft"))
    paper.put(
        "hand_backfill_ccy",
        native + sand,
        "outside end: native + pipe zone",
        ("native", native, "cy"),
        ("pipe zone", sand, "cy"),
    )
    put_back(case, (Stretch.between(case.station(0.0), case.station(-length)), width))
    return bank, native

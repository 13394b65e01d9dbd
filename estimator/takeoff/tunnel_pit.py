"""A tunnel in; the pits it is dug from, out: bank cubic yards, and the sod over them."""

from estimator.knowledge.excavation import PIT_OFF_LINES_FT, ladders, needs_ladder
from estimator.model.say import Feet
from estimator.takeoff.approach import Approach
from estimator.takeoff.case import Case
from estimator.takeoff.deep_hole import sides_are_held
from estimator.takeoff.depth import tolerance_ft
from estimator.takeoff.hand_shores import hand_shores
from estimator.takeoff.restoration import BARE, BEDS, surface
from estimator.takeoff.tunnel_beams import TunnelBeams
from estimator.takeoff.tunnel_shape import TunnelShape
from estimator.takeoff.working import cubic_yards, up


def pits(case: Case, way: Approach, shape: TunnelShape, beams: TunnelBeams) -> float:
    """0 where the tunnel begins in another one. Plan of the firm's pit x depth from the ground to the floor at the mouth, for each pit; cubic yards."""
    paper, long, wide = case.paper, case.number("pit_length_ft"), case.number("pit_width_ft")
    if not way.pits:
        return 0.0
    depth = pit_depth_ft(case, shape, beams.edge_floor_ft)
    cubic_ft = way.pits * long * wide * depth
    paper.put(
        "pits",
        way.pits,
        "one, and a second where the face is too far from it",
        ("tunnel", way.length_ft, "ft"),
        ("too far", case.number("second_pit_over_ft"), "ft"),
    )
    paper.put(
        "pit_depth_ft",
        depth,
        "slab top to the lower of the tunnel's floor at the mouth and the floor under the edge beam, less ground below slab top",
        ("slab", case.slab_ft, "ft"),
        ("height at the mouth", shape.mouth_ft, "ft"),
        ("edge beam's bottom", beams.edge_floor_ft, "ft"),
        ("crawl under it", case.number("beam_crawl_ft"), "ft"),
        ("ground below slab top", above_grade_ft(case), "ft"),
    )
    bank = paper.put(
        "pit_bcy",
        cubic_yards(cubic_ft),
        "pits x length x width x depth / 27",
        ("pits", way.pits),
        ("length", long, "ft"),
        ("width", wide, "ft"),
        ("depth", depth, "ft"),
    )
    _safety(case, depth, long, wide, way.pits)
    _sod(case, way.pits, long, wide)
    return bank


def above_grade_ft(case: Case) -> float:
    """How far the ground lies below the slab top outside."""
    above = case.job.house.slab_above_grade_ft
    return case.number("slab_above_grade_ft") if above is None else above


def pit_depth_ft(case: Case, shape: TunnelShape, edge_beam_ft: float) -> float:
    """The pit goes as deep as the floor at the mouth, the dip under the edge beam included; up to the dig step."""
    beam_floor = edge_beam_ft + case.number("beam_crawl_ft") if edge_beam_ft else 0.0
    floor = max(case.slab_ft + shape.mouth_ft, beam_floor)
    return up(floor - above_grade_ft(case), case.number("dig_step_ft"))


def _safety(case: Case, depth_ft: float, long_ft: float, wide_ft: float, count: int) -> None:
    """Limits are compared with the depth and what a locator may be off, as for any dig."""
    paper, safe = case.paper, depth_ft + tolerance_ft(case, depth_ft)
    paper.put(
        "safety_depth_ft",
        safe,
        "pit + what the locator may be off",
        ("pit", depth_ft, "ft"),
        ("locator", safe - depth_ft, "ft"),
    )
    if needs_ladder(safe):
        paper.put(
            "ladders",
            ladders(long_ft) * count,
            "one a pit from 4 ft on",
            ("pits", count),
            source="29 CFR 1926.651(c)(2)",
        )
    if sides_are_held(case, safe):
        hand_shores(case, 2 * count * (long_ft + wide_ft), depth_ft)  # no machine sets a box against a wall
    paper.warn(
        "the pit keeps {off} off gas and electric lines, and clear of air conditioner pads, decks and pools",
        off=Feet(PIT_OFF_LINES_FT),
    )
    paper.warn("the pit mouth is held by what the competent person decides, fenced, and covered at night")


def _sod(case: Case, count: int, long_ft: float, wide_ft: float) -> None:
    zone, word = surface(case, case.station(-long_ft / 2))
    if zone != "yard" or word in BARE:
        return
    margin, step = case.number("sod_margin_ft"), case.number("sod_step_sf")
    area = count * (long_ft + 2 * margin) * (wide_ft + 2 * margin)
    name = "bed_sf" if word in BEDS else "sod_sf"
    if name == "sod_sf":
        case.paper.facts.add("lawn")
    case.paper.put(
        name,
        up(area, step) if name == "sod_sf" else area,
        "pits x (length + margins) x (width + margins), up to what is sold",
        ("pits", count),
        ("length", long_ft, "ft"),
        ("width", wide_ft, "ft"),
        ("margin", margin, "ft"),
    )

"""A tunnel in; the pits it is dug from, out: bank cubic yards, and the sod over them."""

from estimator.knowledge.excavation import PIT_OFF_LINES_FT, ladders, needs_ladder
from estimator.model.say import Feet
from estimator.takeoff.case import Case
from estimator.takeoff.hole_safety import hand_shores, sides_are_held
from estimator.takeoff.restoration import BARE, BEDS
from estimator.takeoff.working import cubic_yards, up
from estimator.works.depth import tolerance_ft
from estimator.works.floor_cut import above_grade_ft
from estimator.works.ground import surface
from estimator.works.tunnel_plan import TunnelPlan


def pits(case: Case, plan: TunnelPlan) -> float:
    """0 where the tunnel begins in another one. Plan of the firm's pit x depth from the ground to the floor at the mouth, for each pit; cubic yards."""
    paper, long, wide = case.paper, case.number("pit_length_ft"), case.number("pit_width_ft")
    way, shape, beams = plan.way, plan.shape, plan.beams
    if not way.pits:
        return 0.0
    depth = plan.pit_ft
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
    _safety(case, plan, depth, long, wide)
    _sod(case, way.pits, long, wide)
    return bank


def _safety(case: Case, plan: TunnelPlan, depth_ft: float, long_ft: float, wide_ft: float) -> None:
    """Limits are compared with the depth, not rounded, and what a locator may be off, as for any dig."""
    paper, exact, count = case.paper, plan.exact_pit_ft, plan.way.pits
    off = tolerance_ft(case, exact)
    safe = exact + off
    paper.put(
        "safety_depth_ft",
        safe,
        "pit, not rounded, + what the locator may be off",
        ("pit", exact, "ft"),
        ("locator", off, "ft"),
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

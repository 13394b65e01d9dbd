"""The legs of a way round that run in the ground in; their trench by hand or machine, fill and surface, out."""

from estimator.knowledge.excavation import ladders, needs_ladder, needs_system
from estimator.model.job import Reroute
from estimator.model.say import Feet
from estimator.takeoff.case import Case
from estimator.takeoff.dig_fill import packed, sand_tons
from estimator.takeoff.haul import export, spoil, with_flatwork
from estimator.takeoff.hole_safety import hand_shores, trench_boxes
from estimator.takeoff.restoration import put_back_zone, round_sod
from estimator.takeoff.working import cubic_yards
from estimator.works.depth import bedding_ft
from estimator.works.earth import Depth, trench_cf
from estimator.works.ground import ground_facts, hand_only
from estimator.works.reroute_works import new_trench


def yard_legs(case: Case, way: Reroute, size_in: float) -> None:
    """A trench along the buried legs, as deep as the firm begins a new drain and deeper by its fall at the far end."""
    dug = new_trench(case, way, size_in)
    if dug is None:
        return
    ground_facts(case)
    legs, outside, begins, ends = dug.legs, dug.outside_ft, dug.begins_ft, dug.ends_ft
    length, width = dug.length_ft, dug.width_ft
    cubic_ft = trench_cf((Depth(0.0, begins), Depth(length, ends)), width)
    _earth(case, cubic_ft, length, width, begins, ends)
    _fill(case, cubic_ft, length, width, outside, begins)
    _safety(case, length, width, ends)
    _cover(case, Feet(round(max(0.0, begins - bedding_ft(case) - outside), 2)))
    case.paper.put("potholes", 1, "the pipe it ties into, uncovered by hand first")
    first, last = legs[0], legs[-1]
    for leg in legs:
        put_back_zone(case, leg.zone, "lawn", leg.length_ft, (leg is first) + (leg is last), width)
    round_sod(case)
    with_flatwork(case)


def _cover(case: Case, cover: Feet) -> None:
    if case.place is not None and case.place.least_cover_in is not None:
        case.paper.assume(
            "the reroute starts with {cover} of soil over the pipe; the city requires {least} inches",
            cover=cover,
            least=f"{case.place.least_cover_in:g}",
        )
        return
    case.paper.assume(
        "the reroute starts {cover} below the surface, if the city allows it",
        cover=cover,
    )


def _earth(case: Case, cubic_ft: float, length_ft: float, width_ft: float, begins_ft: float, ends_ft: float) -> None:
    by_hand = hand_only(case)
    if by_hand:
        case.paper.facts.add("hand_only")
    bank = case.paper.put(
        "hand_dig_bcy" if by_hand else "dig_bcy",
        cubic_yards(cubic_ft),
        "buried legs x width x mean depth / 27",
        ("buried legs", length_ft, "ft"),
        ("width", width_ft, "ft"),
        ("depth where it begins", begins_ft, "ft"),
        ("depth at its lower end", ends_ft, "ft"),
    )
    spoil(case, bank)


def _fill(case: Case, cubic_ft: float, length_ft: float, width_ft: float, outside_ft: float, begins_ft: float) -> None:
    paper, by_hand = case.paper, "hand_only" in case.paper.facts
    high = min(begins_ft, bedding_ft(case) + outside_ft + case.number("pipe_zone_over_ft"))
    zone, bank = length_ft * width_ft * high, cubic_yards(cubic_ft)
    sand, native = cubic_yards(zone), cubic_yards(cubic_ft - zone)
    paper.put(
        "pipe_zone_ccy",
        sand,
        "legs x width x (bedding + pipe + cover) / 27",
        ("buried legs", length_ft, "ft"),
        ("width", width_ft, "ft"),
        ("bedding, pipe and cover", high, "ft"),
    )
    sand_tons(case, sand)
    paper.put("native_ccy", native, "dug - pipe zone", ("dug", bank, "cy"), ("pipe zone", sand, "cy"))
    packed(case, native, sand, formula="native + pipe zone", by_hand=by_hand)
    export(case, bank, native, case.soil.shrink_hand if by_hand else case.soil.shrink_machine)


def _safety(case: Case, length_ft: float, width_ft: float, deepest_ft: float) -> None:
    """New ground, no locator: the depth is what the crew digs."""
    paper = case.paper
    paper.put("safety_depth_ft", deepest_ft, "depth at the lower end", ("depth", deepest_ft, "ft"))
    if needs_ladder(deepest_ft):
        paper.put(
            "ladders",
            ladders(length_ft),
            "nobody walks more than 25 ft sideways to one",
            ("length", length_ft, "ft"),
            source="29 CFR 1926.651(c)(2)",
        )
    if deepest_ft > case.number("depth_slow_from_ft"):
        paper.facts.add("depth_over_4")
    if needs_system(deepest_ft, "C", case.job.site.caving_signs):
        paper.facts.add("depth_over_5")
        if hand_only(case):
            hand_shores(case, 2 * (length_ft + width_ft), deepest_ft)
        else:
            trench_boxes(case, (length_ft,), deepest_ft, case.number("trench_days_open"))
    water = case.job.site.water_table_ft
    if water is not None and water < deepest_ft:
        paper.facts.add("wet")
        paper.put("dewater_days", case.number("trench_days_open"), "days the trench is open")

"""A length of pipe to reach from the open air in; the dig, its protection, its fill and what is hauled away, out."""

import math

from estimator.knowledge.excavation import (
    FOOTING_SOURCE,
    LADDER_TRAVEL_FT,
    SLOPE_SOURCE,
    clear_of_footing,
    ladders,
    needs_engineer,
    needs_ladder,
    needs_system,
)
from estimator.model.judgement import Effect, Verdict
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.takeoff.depth import Bottom, bottom, outside_ft
from estimator.takeoff.earth import PRISMOIDAL, sloped_pit_cf, trench_end_area_cf
from estimator.takeoff.ground import ground_facts, hand_only, is_wet, soil_type
from estimator.takeoff.haul import export, spoil
from estimator.takeoff.protection import Box, Hole, Way, least, ways
from estimator.takeoff.room import Room, room_beside
from estimator.takeoff.trench_width import D2321_SOURCE, exact_width_ft, trench_width_ft
from estimator.takeoff.working import cubic_yards, up

SAND_SOURCE = "ASTM D2321 bedding and pipe zone; common practice"


def dig(case: Case, hole: Stretch, days: float) -> tuple[Way, tuple[Verdict, ...]]:
    """Everything a trench or pit over `hole` takes. `hole` has room at both ends in it already; `days` it stays open."""
    under = bottom(case, hole)
    wet = is_wet(case, hole, under.safety_ft)
    kind = soil_type(case, hole, wet)
    beside = room_beside(case, hole)
    way = _chosen(case, hole, under, kind, beside)
    ground_facts(case)
    _write_size(case, way, under, kind)
    _safety(case, way, under, wet, days)
    _potholes(case, hole)
    _fill(case, way)
    return way, _footing_finds(case, way, under, beside)


def _chosen(case: Case, hole: Stretch, under: Bottom, kind: str, beside: Room) -> Way:
    whole = Hole(
        length_ft=hole.length_ft,
        width_ft=trench_width_ft(case, shored=False),
        shored_width_ft=trench_width_ft(case, shored=True),
        depths=under.dug,
        safety_ft=under.safety_ft,
    )
    box = Box(width_ft=case.number("box_width_ft"), length_ft=case.number("box_length_ft"))
    allowed = ways(whole, kind, case.job.site.caving_signs, beside, box, case.number("bench_percent"))  # type: ignore[arg-type]
    return least(allowed, case.tables.text("protection_wanted"))


def _write_size(case: Case, way: Way, under: Bottom, kind: str) -> None:
    paper, outside, bed = case.paper, outside_ft(case), case.number("bedding_ft")
    deepest = max(d.depth_ft for d in way.depths)
    paper.put(
        "dig_length_ft",
        way.length_ft,
        "pipe replaced + room to work at each end",
        ("pipe replaced", case.stretch.length_ft, "ft"),
        ("room at each end", case.number("dig_end_ft"), "ft"),
    )
    paper.put(
        "dig_depth_ft",
        deepest,
        "depth to the pipe's centre + half its outside + bedding, up to the dig step",
        ("depth to centre", under.exact_ft - outside / 2 - bed, "ft"),
        ("outside of the pipe", outside, "ft"),
        ("bedding", bed, "ft"),
        ("dig step", case.number("dig_step_ft"), "ft"),
    )
    paper.put(
        "safety_depth_ft",
        under.safety_ft,
        "bottom, not rounded, + what the locator may be off",
        ("bottom", under.exact_ft, "ft"),
        ("locator", under.tolerance_ft, "ft"),
    )
    shored = way.name == "boxed"
    paper.put(
        "dig_width_ft",
        way.width_ft,
        "the larger of the firm's rule and the standard's, up to the dig step",
        ("outside of the pipe", outside, "ft"),
        ("before rounding", exact_width_ft(case, shored), "ft"),
        source=D2321_SOURCE,
    )
    paper.put(
        "dig_top_width_ft",
        way.top_width_ft,
        "bottom width + 2 x slope x depth",
        ("bottom width", way.width_ft, "ft"),
        ("slope, across to down", way.slope_h_to_v),
        ("soil type", kind),
        source=SLOPE_SOURCE,
    )
    cubic_ft = paper.put(
        "dig_cf",
        way.bank_cf,
        _volume_words(way),
        ("length", way.length_ft, "ft"),
        ("bottom width", way.width_ft, "ft"),
        ("deepest", deepest, "ft"),
        ("shallowest", min(d.depth_ft for d in way.depths), "ft"),
        ("slope, across to down", way.slope_h_to_v),
        ("check by end areas", _check(way), "cu ft"),
        source=PRISMOIDAL,
    )
    bank = cubic_yards(cubic_ft)
    by_hand = hand_only(case)
    paper.put("hand_dig_bcy" if by_hand else "dig_bcy", bank, "cubic ft / 27", ("dug", cubic_ft, "cu ft"))
    if by_hand:
        paper.facts.add("hand_only")
    spoil(case, bank)


def _check(way: Way) -> float:
    return trench_end_area_cf(way.depths, way.width_ft, way.slope_h_to_v)


def _volume_words(way: Way) -> str:
    shape = {
        "vertical": "length x width x depth, upright sides",
        "boxed": "length x width x depth, made as large as the box",
        "sloped": "sloped on all sides: depth x length x width + slope x depth² x (length + width) + 4/3 slope² x depth³",
        "benched": "the outline of the slope and a little more",
    }[way.name]
    return shape + ("" if len({d.depth_ft for d in way.depths}) == 1 else ", depth changing evenly between readings")


def _safety(case: Case, way: Way, under: Bottom, wet: bool, days: float) -> None:
    paper, depth = case.paper, under.safety_ft
    facts = paper.facts
    if depth > case.number("depth_slow_from_ft"):
        facts.add("depth_over_4")
    if needs_system(depth, "C", None):
        facts.add("depth_over_5")
    if depth > case.number("hand_dig_deep_ft") and "hand_only" in facts:
        facts.add("depth_over_6")
    if needs_ladder(depth):
        paper.put(
            "ladders",
            ladders(way.length_ft),
            "nobody walks more than 25 ft sideways to one",
            ("length", way.length_ft, "ft"),
            ("most travel", LADDER_TRAVEL_FT, "ft"),
            source="29 CFR 1926.651(c)(2)",
        )
    if way.name in ("sloped", "benched"):
        facts.add("sloped")
    if way.name == "boxed":
        facts.add("boxed")
        boxes = paper.put(
            "boxes",
            up(way.length_ft / case.number("box_length_ft")),
            "length / box length, up",
            ("length", way.length_ft, "ft"),
            ("box", case.number("box_length_ft"), "ft"),
        )
        paper.put("shoring_box_days", boxes * days, "boxes x days open", ("boxes", boxes), ("days open", days))
    if wet:
        facts.add("wet")
        paper.put("dewater_days", days, "days the dig is open", ("days open", days))
    _say_protection(case, way, depth)


def _say_protection(case: Case, way: Way, depth_ft: float) -> None:
    paper = case.paper
    if needs_engineer(depth_ft):
        paper.facts.add("engineer")
        paper.put(
            "engineer_letters",
            1,
            "deeper than 20 ft a registered engineer designs the protection",
            source="29 CFR 1926.652(b), (c)",
        )
    if way.name == "vertical":
        paper.warn(
            "the competent person decides how the sides are held; nothing seen so far forces a system at {depth}",
            depth=Feet(round(depth_ft, 2)),
        )
    else:
        paper.warn(
            "nobody goes in before the sides are held ({way}) and the competent person has looked, "
            "each day and after every rain",
            way=way.name,
        )
    paper.warn("spoil, tools and machines stay at least {back} from the edge", back=Feet(2.0))


def _potholes(case: Case, hole: Stretch) -> None:
    crossings = len([m for m in case.profile.marks("crossing") if m.stretch.touches(hole)])
    potholed = any(m.stretch.touches(hole) for m in case.profile.marks("pothole"))
    case.paper.put(
        "potholes",
        crossings + (0 if potholed else 1),
        "utilities that cross, and the pipe itself unless it was uncovered before",
        ("crossings", crossings),
        ("pipe uncovered before", "yes" if potholed else "no"),
    )


def _fill(case: Case, way: Way) -> None:
    """Bedding and pipe-zone sand, native soil over it, and the rest hauled away."""
    paper, outside = case.paper, outside_ft(case)
    bed, over = case.number("bedding_ft"), case.number("pipe_zone_over_ft")
    high = min(bed + outside + over, min(d.depth_ft for d in way.depths))
    zone = sloped_pit_cf(way.length_ft, way.width_ft, high, way.slope_h_to_v)
    paper.put(
        "pipe_zone_cf",
        zone,
        "length x width x (bedding + outside of the pipe + cover over it)",
        ("length", way.length_ft, "ft"),
        ("width", way.width_ft, "ft"),
        ("bedding", bed, "ft"),
        ("outside of the pipe", outside, "ft"),
        ("cover", over, "ft"),
        source=SAND_SOURCE,
    )
    pipe_cf = math.pi / 4 * outside**2 * way.length_ft
    sand = paper.put(
        "pipe_zone_ccy",
        cubic_yards(zone - pipe_cf),
        "(pipe zone - the pipe in it) / 27",
        ("pipe zone", zone, "cu ft"),
        ("pipe", pipe_cf, "cu ft"),
        source=SAND_SOURCE,
    )
    sand_tons(case, sand)
    native = paper.put(
        "native_ccy",
        cubic_yards(way.bank_cf - zone),
        "(dug - pipe zone) / 27",
        ("dug", way.bank_cf, "cu ft"),
        ("pipe zone", zone, "cu ft"),
    )
    by_hand = "hand_only" in paper.facts
    paper.put(
        "hand_backfill_ccy" if by_hand else "backfill_ccy",
        native + sand,
        "native + pipe zone, in 6 in lifts",
        ("native", native, "cy"),
        ("pipe zone", sand, "cy"),
    )
    lift = case.number("lift_ft")
    paper.put(
        "lifts",
        up(max(d.depth_ft for d in way.depths) / lift),
        "depth / one lift, up",
        ("depth", max(d.depth_ft for d in way.depths), "ft"),
        ("lift", lift, "ft"),
        source="IPC 306.3: tamped layers of 6 in",
    )
    soil = case.soil
    export(case, cubic_yards(way.bank_cf), native, soil.shrink_hand if by_hand else soil.shrink_machine)


def sand_tons(case: Case, in_place_cy: float) -> None:
    """Sand to order: in place, loosened by its swell, weighed."""
    swell, weight = case.number("sand_swell_percent"), case.number("sand_tons_per_lcy")
    case.paper.put(
        "sand_tons",
        in_place_cy * (1 + swell / 100) * weight,
        "in place x (1 + swell) x tons a loose yard",
        ("in place", in_place_cy, "cy"),
        ("swell of sand", swell, "percent"),
        ("weight", weight, "ton/cy"),
    )
    case.paper.put("sand_delivery", 1, "one delivery")


def _footing_finds(case: Case, way: Way, under: Bottom, beside: Room) -> tuple[Verdict, ...]:
    """The dig's bottom edge must stay outside the 45 degree line from a footing's lower edge."""
    finds = []
    for footing in beside.footings:
        offset = footing.away_ft - way.width_ft / 2
        below = under.safety_ft - footing.deep_ft
        if clear_of_footing(offset, below):
            continue
        case.paper.facts.add("engineer")
        case.paper.put(
            "engineer_letters",
            1,
            "the dig comes below the 45 degree line from a footing",
            ("from the dig's edge to the footing", offset, "ft"),
            ("below the footing", below, "ft"),
            source=FOOTING_SOURCE,
        )
        finds.append(
            case.find(
                "dig-stays-above-the-footing-line",
                Effect.UNTIL_APPROVED,
                Say.of(
                    "The hole would come below the line that holds up the footing: an engineer must approve it first."
                ),
                Say.of(
                    "bottom {below} below a footing {offset} from the dig's edge: inside the 45 degree line ({source})",
                    below=Feet(round(below, 2)),
                    offset=Feet(round(offset, 2)),
                    source=FOOTING_SOURCE,
                ),
            )
        )
    return tuple(finds)

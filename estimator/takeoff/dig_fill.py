"""A dig with its sides settled in; bedding and pipe-zone sand, native soil over it, layers and what is left to haul, out."""

import math

from estimator.knowledge.trench import LAYER_IN, LAYERS_TO_OVER_PIPE_IN
from estimator.model.say import Feet
from estimator.takeoff.case import Case
from estimator.takeoff.haul import export
from estimator.takeoff.working import cubic_yards, up
from estimator.works.depth import INCHES_PER_FT, bedding_ft, outside_ft
from estimator.works.earth import sloped_pit_cf
from estimator.works.protection import Way

SAND_SOURCE = "ASTM D2321 bedding and pipe zone; common practice"


def fill(case: Case, way: Way) -> None:
    """Bedding and pipe-zone sand, native soil over it, and the rest hauled away."""
    paper, outside = case.paper, outside_ft(case)
    bed, over = bedding_ft(case), case.number("pipe_zone_over_ft")
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
    packed(case, native, sand, formula="native + pipe zone, in 6 in lifts", by_hand=by_hand)
    _layers(case, way.deepest_ft, by_hand)
    soil = case.soil
    export(case, cubic_yards(way.bank_cf), native, soil.shrink_hand if by_hand else soil.shrink_machine)


def packed(case: Case, native: float, sand: float, *, formula: str, by_hand: bool) -> None:
    """Native soil and pipe-zone sand put back, cubic yards in place."""
    name = "hand_backfill_ccy" if by_hand else "backfill_ccy"
    case.paper.put(name, native + sand, formula, ("native", native, "cy"), ("pipe zone", sand, "cy"))


def _layers(case: Case, deepest_ft: float, by_hand: bool) -> None:
    if not by_hand:
        case.paper.warn(
            "up to {over} over the pipe the fill is packed by hand, in layers of {layer}; the machine packs only above that",
            over=Feet(LAYERS_TO_OVER_PIPE_IN / INCHES_PER_FT),
            layer=Feet(LAYER_IN / INCHES_PER_FT),
        )
    lift = case.number("lift_ft")
    case.paper.put(
        "lifts",
        up(deepest_ft / lift),
        "depth / one lift, up",
        ("depth", deepest_ft, "ft"),
        ("lift", lift, "ft"),
        source="IPC 306.3: tamped layers of 6 in",
    )


def fill_as_it_was(case: Case, way: Way) -> None:
    """No pipe was laid: the same soil goes back, packed, and none is left over."""
    by_hand = "hand_only" in case.paper.facts
    shrink = case.soil.shrink_hand if by_hand else case.soil.shrink_machine
    bank = cubic_yards(way.bank_cf)
    native = case.paper.put("native_ccy", bank * shrink, "dug x shrink", ("dug", bank, "cy"), ("shrink", shrink))
    case.paper.put(
        "hand_backfill_ccy" if by_hand else "backfill_ccy", native, "all that was dug", ("native", native, "cy")
    )


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

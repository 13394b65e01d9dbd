"""Depth, soil type and room in; the ways the sides of a dig may be kept from falling, and the one with the least earth, out.

A price allowance: who works in the dig is protected by what the competent person on site decides, never by this choice.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

from estimator.knowledge.excavation import SoilType, may_bench, needs_system, slope
from estimator.model.frozen import Frozen
from estimator.works.earth import Depth, sloped_all_round_cf, top_width_ft, trench_cf
from estimator.works.room import Room

WayName = Literal["vertical", "sloped", "benched", "boxed", "shored"]


class Hole(Frozen, kw_only=True):
    """A dig before its sides are settled: length along the line, bottom width, depth along it, all ft.

    `shored_width_ft` is the bottom width where people work between shores; `safety_ft` the depth limits are compared with.
    """

    length_ft: float
    width_ft: float
    shored_width_ft: float
    depths: tuple[Depth, ...]
    safety_ft: float


class Box(Frozen, kw_only=True):
    """The firm's trench box: outside width, length, ft."""

    width_ft: float
    length_ft: float


class Way(Frozen, kw_only=True):
    """One way of keeping the sides up: its name, side slope, bottom, earth to move and the width at the top."""

    name: WayName
    slope_h_to_v: float
    width_ft: float
    length_ft: float
    depths: tuple[Depth, ...]
    bank_cf: float

    @property
    def deepest_ft(self) -> float:
        return max(d.depth_ft for d in self.depths)

    @property
    def top_width_ft(self) -> float:
        return top_width_ft(self.width_ft, self.deepest_ft, self.slope_h_to_v)


def stretched(depths: Sequence[Depth], length_ft: float) -> tuple[Depth, ...]:
    """The same depths over a longer hole: what is added at the far end keeps the last depth.

    >>> stretched((Depth(0, 4), Depth(5, 6)), 8)[-1]
    Depth(at_ft=8, depth_ft=6)
    """
    last = depths[-1]
    return tuple(depths) if length_ft <= last.at_ft else (*depths, Depth(length_ft, last.depth_ft))


def vertical(hole: Hole) -> Way:
    return _upright("vertical", hole.depths, hole.width_ft, hole.length_ft)


def shored(hole: Hole) -> Way:
    """Upright sides held by boards and spreaders set by hand, wide enough to work between them."""
    return _upright("shored", hole.depths, hole.shored_width_ft, hole.length_ft)


def boxed(hole: Hole, box: Box) -> Way:
    """The hole made as large as the box, with upright sides."""
    width, length = max(hole.shored_width_ft, box.width_ft), max(hole.length_ft, box.length_ft)
    return _upright("boxed", stretched(hole.depths, length), width, length)


def _upright(name: WayName, depths: tuple[Depth, ...], width_ft: float, length_ft: float) -> Way:
    bank_cf = trench_cf(depths, width_ft)
    return Way(name=name, slope_h_to_v=0.0, width_ft=width_ft, length_ft=length_ft, depths=depths, bank_cf=bank_cf)


def sloped(hole: Hole, soil_type: SoilType) -> Way:
    s = slope(soil_type)
    return Way(
        name="sloped",
        slope_h_to_v=s,
        width_ft=hole.width_ft,
        length_ft=hole.length_ft,
        depths=hole.depths,
        bank_cf=sloped_all_round_cf(hole.depths, hole.width_ft, s),
    )


def benched(hole: Hole, soil_type: SoilType, extra_percent: float) -> Way:
    """The outline of the slope and a little more earth."""
    way = sloped(hole, soil_type)
    return replace(way, name="benched", bank_cf=way.bank_cf * (1 + extra_percent / 100))


def ways(
    hole: Hole,
    soil_type: SoilType,
    caving_signs: bool | None,
    room: Room,
    box: Box | None,
    bench_percent: float,
    *,
    cohesive: bool,
) -> tuple[Way, ...]:
    """Every way allowed for this depth and soil that fits the room. A box or shores fit where upright sides fit.

    Without a need for a system the sides stand upright. Only soil that holds together is benched, type C never. `box` is None where no machine gets to
    the hole: a steel box cannot be set there, and the sides are shored by hand.
    """
    if not needs_system(hole.safety_ft, soil_type, caving_signs):
        return (vertical(hole),)
    open_ways = [sloped(hole, soil_type)]
    if may_bench(soil_type, cohesive):
        open_ways.append(benched(hole, soil_type, bench_percent))
    return (*(w for w in open_ways if room.fits(w.top_width_ft)), shored(hole) if box is None else boxed(hole, box))


def least(allowed: Sequence[Way], wanted: str = "") -> Way:
    """The way with the least earth; the one the firm asks for, where it is among those allowed."""
    asked = [w for w in allowed if w.name == wanted]
    return min(asked or allowed, key=lambda w: w.bank_cf)

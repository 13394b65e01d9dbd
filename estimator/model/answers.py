"""How a station's answers are known, what a branch and a beam are to the work, and readings joined by straight lines."""

from collections.abc import Callable
from typing import Generic, Literal, TypeVar

from estimator.model.frozen import Frozen
from estimator.model.line import Mark
from estimator.model.stretch import Stretch

How = Literal["read", "between", "carried", "assumed"]
T = TypeVar("T")


class Answer(Frozen, Generic[T]):
    """A value with how it is known: read there; between two readings; carried beyond the last one; or assumed."""

    value: T
    how: How
    marks: tuple[Mark, ...] = ()


class Branch(Frozen):
    """A side drain where it joins. `side` is left, right, up or down as one looks with the flow."""

    station_ft: float
    size_in: float
    side: str | None
    live: str | None
    proven: bool | None
    name: str | None
    away_ft: float  # how far the tie lies from the line
    out_of_reach: bool
    mark: Mark


class Beam(Frozen):
    """A footing or grade beam across the line: its stretch along the line and its bottom below the slab top, ft."""

    stretch: Stretch
    bottom_below_slab_ft: float
    through: bool
    mark: Mark


INDOOR_ZONES: tuple[str, ...] = ("slab", "basement")
INDOOR_SURFACES: tuple[str, ...] = ("slab", "floor", "tile", "wood", "vinyl", "carpet", "laminate")
OUTDOOR_SURFACES: tuple[str, ...] = (
    "lawn", "bed", "bare ground", "dirt", "gravel", "asphalt", "pavers", "drive", "walk", "street", "ground", "crawl floor",
)  # fmt: skip


def taken_indoors(mark: Mark) -> bool | None:
    """Whether a depth was taken from a floor; None when its surface may be either, such as concrete."""
    return True if mark.surface in INDOOR_SURFACES else False if mark.surface in OUTDOOR_SURFACES else None


def interpolated(readings: tuple[Mark, ...], value: Callable[[Mark], float], at_ft: float) -> Answer[float | None]:
    """The shortest reading that covers the station; else a straight line between its neighbours; else the nearest.

    Of two readings of one place the deeper counts, whichever was written first: who digs for the shallower one is wrong on
    the side that buries people.
    """
    over = [m for m in readings if m.stretch.holds(at_ft)]
    if over:
        shortest = min(m.stretch.length_ft for m in over)
        best = max((m for m in over if m.stretch.length_ft <= shortest + 1e-9), key=value)
        return Answer(value(best), "read", (best,))
    before = max(
        (m for m in readings if m.stretch.to_ft < at_ft), key=lambda m: (m.stretch.to_ft, value(m)), default=None
    )
    after = min(
        (m for m in readings if m.stretch.from_ft > at_ft), key=lambda m: (m.stretch.from_ft, -value(m)), default=None
    )
    if before is not None and after is not None:
        share = (at_ft - before.stretch.to_ft) / (after.stretch.from_ft - before.stretch.to_ft)
        return Answer(value(before) + share * (value(after) - value(before)), "between", (before, after))
    nearest = before or after
    return Answer(value(nearest), "carried", (nearest,)) if nearest else Answer(None, "assumed")

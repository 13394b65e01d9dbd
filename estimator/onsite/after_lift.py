"""A line, the slab's rise over it and levels before and after in; what the lift did to its falls, joints and risers, out.

Two things can happen to a drain under a raised slab. Where it hangs from the slab it rises with it: its falls change, and the
joint where it leaves the house turns. Where it stays in the ground every riser is pulled up by what the slab rose there. Levels
before and after say which; without them both are told.
"""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from math import hypot

from estimator.model.afterwards import LiftLevel
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.line import Line, Mark
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.onsite.elevations import NINE_OF_TEN, Elevations, elevations
from estimator.onsite.height_readings import INCHES_PER_FT
from estimator.onsite.lift_joints import LENGTH_FT, LEVELS, Joint, joints_of, levels_to_read
from estimator.onsite.lift_points import SAME_FT, Point, left_behind, points_of
from estimator.onsite.lift_surface import Surface
from estimator.tables.tables import Tables


class Run(Frozen):
    """Pipe from an upper to a lower point: fall with the flow before, inches a foot (None: no levels), and how much it changed.

    `measured`: from levels before and after; else as if the pipe hung from the slab.
    """

    upper: Point
    lower: Point
    before: float | None
    change: float
    sigma: float
    measured: bool

    @property
    def after(self) -> float | None:
        return None if self.before is None else self.before + self.change

    @property
    def turns(self) -> str:
        """Whether it runs uphill now: "yes", "may", "no", or "" where the fall before is not known."""
        if self.after is None or self.before is None:
            return ""
        if self.after < 0:
            return "yes"
        return "may" if self.after - NINE_OF_TEN * self.sigma < 0 else "no"


class Lifted(Frozen):
    """One line after the lift: its points with the flow, the runs between them, and the joints whose turn can be told.

    `again` are stations read before the lift where a level now tells the joints under the slab; `another` those to read before
    another lift, where too few were. Both are empty once three were read.
    """

    line: str
    points: tuple[Point, ...]
    runs: tuple[Run, ...]
    joints: tuple[Joint, ...]
    again: tuple[float, ...]
    another: tuple[float, ...]


def after_lift(line: Line, job: Job, levels: Sequence[LiftLevel], surface: Surface, tables: Tables) -> Lifted | None:
    """Return what the lift did to a line; None where no two points of it under the slab are taped to the walls of the plan."""
    points = points_of(line, levels, surface, tables)
    if len(points) < 2:
        return None
    known = elevations(job, _with_levels(line, levels), tables)
    runs = tuple(_run(a, b, known, line.downstream, surface) for a, b in pairwise(points))
    lengths = (mark.length("every") for mark in Profile(line).marks("joint"))
    length_ft = next((length for length in lengths if length), LENGTH_FT)
    again, another = _next_levels(line, points)
    return Lifted(line.name, tuple(points), runs, joints_of(points, length_ft), again, another)


def _next_levels(line: Line, points: Sequence[Point]) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Stations to read again now; where those make no three, stations to read before another lift instead."""
    read, under = [p.station_ft for p in points if p.own], [p.station_ft for p in points]
    inverts = [m.stretch.middle_ft for m in line.marks if m.word == "invert" and m.depth_ft is not None]
    again = levels_to_read(read, [at for at in inverts if min(under) <= at <= max(under)])
    if len(read) + len(again) >= LEVELS:
        return again, ()
    return (), levels_to_read((), under)


def _with_levels(line: Line, levels: Sequence[LiftLevel]) -> Line:
    """The line as it lay before the lift, with what was read for the lift beside what the log holds."""
    read = tuple(
        Mark(
            word="invert",
            stretch=Stretch(level.at_ft, level.at_ft),
            depth_ft=level.before_ft,
            to="invert",
            surface="slab",
        )
        for level in levels
        if level.line == line.name and level.below == "slab top"
    )
    return replace(line, marks=(*line.marks, *read))


def _run(upper: Point, lower: Point, known: Elevations | None, downstream: int, surface: Surface) -> Run:
    """The fall between two points: it grows by what the upper one rose more than the lower."""
    length = abs(upper.station_ft - lower.station_ft)
    rise = surface.difference(upper.place, lower.place)
    before = _fall(upper, lower, known, length)
    if not (upper.reads and lower.reads):
        return Run(upper, lower, before, rise.inches / length, rise.sigma_in / length, False)
    left = left_behind([*upper.reads, *((read, -share) for read, share in lower.reads)])
    sigma = hypot(rise.sigma_in, left.sigma_in)
    if upper.own and lower.own:
        sigma = min(sigma, hypot(upper.reads[0][0].pipe.sigma_in, lower.reads[0][0].pipe.sigma_in))
    return Run(upper, lower, before, (rise.inches - left.inches) / length, sigma / length, True)


def _fall(upper: Point, lower: Point, known: Elevations | None, length_ft: float) -> float | None:
    """The fall before the lift, inches a foot; None where no level was read, or beyond the last reading."""
    if known is None or not known.levels:
        return None
    ends = [h.station_ft for h in known.heights]
    if not all(min(ends) - SAME_FT <= p.station_ft <= max(ends) + SAME_FT for p in (upper, lower)):
        return None
    high, low = (known.at(p.station_ft).below_slab_ft for p in (upper, lower))
    return (low - high) / length_ft * INCHES_PER_FT

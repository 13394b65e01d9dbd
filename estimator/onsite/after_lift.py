"""A line, the slab's rise over it and levels before and after in; what the lift did to its falls, joints and risers, out.

Two things can happen to a drain under a raised slab. Where it hangs from the slab it rises with it: its falls change, and the
joint where it leaves the house turns. Where it stays in the ground every riser is pulled up by what the slab rose there. Levels
before and after say which; without them both are told.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import hypot

from estimator.model.afterwards import LiftLevel
from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.onsite.elevations import INCHES_PER_FT, Elevations, elevations
from estimator.onsite.lift_surface import Place, Rise, Surface
from estimator.onsite.positions import Errors
from estimator.tables.tables import Tables

NINE_OF_TEN = 1.645
SAME_FT = 0.3


@dataclass(frozen=True, slots=True)
class Point:
    """A station under the slab: what is there, how far the slab rose, how far the pipe itself did (None: no levels), and whether a riser stands there."""

    station_ft: float
    what: str
    place: Place
    slab: Rise
    pipe: Rise | None
    riser: bool

    @property
    def pull(self) -> Rise:
        """How much farther the slab rose than the pipe: what a riser there is pulled. Without levels, as if the pipe had stayed."""
        if self.pipe is None:
            return self.slab
        return Rise(self.slab.inches - self.pipe.inches, hypot(self.slab.sigma_in, self.pipe.sigma_in))


@dataclass(frozen=True, slots=True)
class Run:
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


@dataclass(frozen=True, slots=True)
class Lifted:
    """One line after the lift: its points with the flow, the runs between them, and the joint at the slab edge, inches a foot it turned."""

    line: str
    points: tuple[Point, ...]
    runs: tuple[Run, ...]
    edge_turn: Rise | None


def after_lift(line: Line, job: Job, levels: Sequence[LiftLevel], surface: Surface, tables: Tables) -> Lifted | None:
    """Return what the lift did to a line; None where no two points of it under the slab are taped to the walls of the plan."""
    errors, profile = Errors.of(tables), Profile(line)
    mine = [level for level in levels if level.line == line.name]
    points = []
    for station, what, riser in _stations(profile, mine):
        place = surface.place_of(line, station, errors)
        if place is not None:
            slab = surface.at(place)
            points.append(Point(station, what, place, slab, _moved(station, mine, slab, tables), riser))
    points.sort(key=lambda p: p.station_ft * line.downstream)
    if len(points) < 2:
        return None
    known = elevations(job, line, tables)
    runs = tuple(_run(a, b, known, line.downstream, surface) for a, b in pairwise(points))
    return Lifted(line.name, tuple(points), runs, _edge(profile, points, line))


def _stations(profile: Profile, levels: Sequence[LiftLevel]) -> list[tuple[float, str, bool]]:
    """Slab edge, branches, upper end and ways in under the slab, taped places and levels; what stands up through the slab is a riser."""
    found: list[tuple[float, str, bool]] = []
    if (edge := profile.slab_edge_ft) is not None:
        found.append((edge, "slab edge", False))
    found += [(b.station_ft, b.name or "branch", True) for b in profile.branches]
    top = profile.extent.from_ft if profile.line.downstream > 0 else profile.extent.to_ft
    named = {m.stretch.from_ft: m.name or m.choice or m.word for m in profile.marks("end", "cleanout", "access")}
    named |= {p.start_ft: p.access for p in profile.line.passes if p.access}
    found += [(at, named.get(at, "way in"), True) for at in profile.accesses()]
    found.append((top, named.get(top, "upper end"), True))
    found += [(m.stretch.middle_ft, "taped", False) for m in profile.line.marks if m.ties]
    found += [(level.at_ft, "level", False) for level in levels]
    out: list[tuple[float, str, bool]] = []
    for one in found:
        indoors = profile.zone(one[0]).value == "slab" or one[1] == "slab edge"
        if indoors and not any(abs(one[0] - other[0]) < SAME_FT for other in out):
            out.append(one)
    return out


def _moved(station_ft: float, levels: Sequence[LiftLevel], slab: Rise, tables: Tables) -> Rise | None:
    """How far the pipe itself rose, from its level there; a level below the slab top moves with the slab."""
    level = next((one for one in levels if abs(one.at_ft - station_ft) < SAME_FT), None)
    if level is None:
        return None
    sank = (level.after_ft - level.before_ft) * INCHES_PER_FT
    two = 2**0.5 * tables.number("level_error_in")
    if level.below == "benchmark":
        return Rise(-sank, two)
    return Rise(slab.inches - sank, hypot(slab.sigma_in, two))


def _run(upper: Point, lower: Point, known: Elevations | None, downstream: int, surface: Surface) -> Run:
    """The fall between two points: it grows by what the upper one rose more than the lower."""
    length = abs(upper.station_ft - lower.station_ft)
    before = None
    if known is not None and known.levels:
        high, low = (known.at(p.station_ft).below_slab_ft for p in (upper, lower))
        before = (low - high) / length * INCHES_PER_FT
    if upper.pipe is not None and lower.pipe is not None:
        change = (upper.pipe.inches - lower.pipe.inches) / length
        sigma = hypot(upper.pipe.sigma_in, lower.pipe.sigma_in) / length
        return Run(upper, lower, before, change, sigma, True)
    rise = surface.difference(upper.place, lower.place)
    return Run(upper, lower, before, rise.inches / length, rise.sigma_in / length, False)


def _edge(profile: Profile, points: Sequence[Point], line: Line) -> Rise | None:
    """How sharply the pipe bends where it leaves the raised slab, inches a foot over its first length outside; None where the edge is not known."""
    at = next((p for p in points if p.what == "slab edge"), None)
    if at is None:
        return None
    rose = at.pipe or at.slab
    length = next((m.length("every") for m in profile.marks("joint") if m.length("every")), None) or LENGTH_FT
    return Rise(rose.inches / length, rose.sigma_in / length)


LENGTH_FT = 5.0
"""A length of cast-iron soil pipe (ASTM A74, from memory); clay is often shorter and turns more."""

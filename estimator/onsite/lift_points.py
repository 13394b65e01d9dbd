"""A line, levels before and after and the slab's rise in; its points under the slab, each with how far slab and pipe rose, out."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from itertools import pairwise
from math import hypot

from estimator.model.afterwards import LiftLevel
from estimator.model.frozen import Frozen
from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.onsite.height_readings import INCHES_PER_FT
from estimator.onsite.lift_surface import Place, Rise, Surface
from estimator.onsite.positions import Errors
from estimator.tables.tables import Tables

SAME_FT = 0.3


class Read(Frozen):
    """A level before and after: how far the pipe rose there, and how far the slab rose beyond it, each as sure as what it was read from."""

    station_ft: float
    pipe: Rise
    pull: Rise


class Point(Frozen):
    """A station under the slab: what is there, how far the slab rose, and whether a riser stands there.

    `reads` are the levels that tell of the pipe there, each with its share: one of its own, or two between which it lies.
    """

    station_ft: float
    what: str
    place: Place
    slab: Rise
    riser: bool
    reads: tuple[tuple[Read, float], ...] = ()

    @property
    def own(self) -> bool:
        """Whether a level was read at this very place."""
        return len(self.reads) == 1

    @property
    def pull(self) -> Rise:
        """How much farther the slab rose than the pipe: what a riser there is pulled. Without levels, as if the pipe had stayed."""
        return left_behind(self.reads) if self.reads else self.slab

    @property
    def pipe(self) -> Rise | None:
        """How far the pipe itself rose; None without levels."""
        if self.own:
            return self.reads[0][0].pipe
        if not self.reads:
            return None
        return Rise(self.slab.inches - self.pull.inches, hypot(self.slab.sigma_in, self.pull.sigma_in))


def left_behind(reads: Iterable[tuple[Read, float]]) -> Rise:
    """Return the sum of pulls by their shares; a level that counts twice counts once with both shares."""
    shares: dict[Read, float] = {}
    for read, share in reads:
        shares[read] = shares.get(read, 0.0) + share
    return Rise(
        sum(r.pull.inches * share for r, share in shares.items()),
        hypot(*(r.pull.sigma_in * share for r, share in shares.items())),
    )


def points_of(line: Line, levels: Sequence[LiftLevel], surface: Surface, tables: Tables) -> list[Point]:
    """Return the points of a line that are taped to the walls of the plan, with the flow."""
    errors, mine = Errors.of(tables), [level for level in levels if level.line == line.name]
    points = []
    for station, what, riser in _stations(Profile(line), mine):
        place = surface.place_of(line, station, errors)
        if place is not None:
            slab = surface.at(place)
            read = _read(station, mine, slab, tables)
            points.append(Point(station, what, place, slab, riser, ((read, 1.0),) if read else ()))
    reads = sorted((read for p in points for read, _ in p.reads), key=lambda r: r.station_ft)
    told = [p if p.reads else replace(p, reads=_between(p.station_ft, reads)) for p in points]
    return sorted(told, key=lambda p: p.station_ft * line.downstream)


def _between(station_ft: float, reads: Sequence[Read]) -> tuple[tuple[Read, float], ...]:
    """The two levels a station lies between, with their shares: between two levels pipe is taken to run straight."""
    for low, high in pairwise(reads):
        if low.station_ft < station_ft < high.station_ft:
            share = (station_ft - low.station_ft) / (high.station_ft - low.station_ft)
            return ((low, 1 - share), (high, share))
    return ()


def _stations(profile: Profile, levels: Sequence[LiftLevel]) -> list[tuple[float, str, bool]]:
    """Slab edge, branches, upper end and ways in under the slab, taped places and levels; what stands up through the slab is a riser."""
    found: list[tuple[float, str, bool]] = []
    if (edge := profile.slab_edge_ft) is not None:
        found.append((edge, "slab edge", False))
    found += [(b.station_ft, b.name or "branch", True) for b in profile.branches]
    top = profile.extent.from_ft if profile.line.downstream > 0 else profile.extent.to_ft
    named = {m.stretch.from_ft: m.name or m.choice or m.word for m in profile.marks("end", "cleanout", "access")}
    named |= {p.start_ft: p.access for p in profile.line.passes if p.access}
    found += [(at, named.get(at, "access point"), True) for at in profile.accesses()]
    found.append((top, named.get(top, "upper end"), True))
    found += [(m.stretch.middle_ft, "taped", False) for m in profile.line.marks if m.ties]
    found += [(level.at_ft, "level", False) for level in levels]
    out: list[tuple[float, str, bool]] = []
    for one in found:
        indoors = profile.zone(one[0]).value == "slab" or one[1] == "slab edge"
        if indoors and not any(abs(one[0] - other[0]) < SAME_FT for other in out):
            out.append(one)
    return out


def _read(station_ft: float, levels: Sequence[LiftLevel], slab: Rise, tables: Tables) -> Read | None:
    """The level taken there; one below the slab top moves with the slab."""
    level = next((one for one in levels if abs(one.at_ft - station_ft) < SAME_FT), None)
    if level is None:
        return None
    sank = (level.after_ft - level.before_ft) * INCHES_PER_FT
    error = 2**0.5 * tables.number("level_error_in")
    with_slab = hypot(slab.sigma_in, error)
    if level.below == "benchmark":
        return Read(station_ft, Rise(-sank, error), Rise(slab.inches + sank, with_slab))
    return Read(station_ft, Rise(slab.inches - sank, with_slab), Rise(sank, error))

"""A line's levels, locates and standing water in; one profile of the pipe's bottom with its errors, and the readings that do not fit, out.

Heights are ft below the slab top. Between readings the pipe is taken to fall as pipe is laid, give or take; standing water is a
level line, so the pipe's bottom is equally high where the water begins and where it ends.
"""

from collections.abc import Callable, Iterable
from itertools import pairwise
from math import hypot
from typing import Literal

from estimator.model.answers import INDOOR_ZONES, Answer, taken_indoors
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.line import Line, Mark
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch, joined
from estimator.onsite.least_squares import Equation, Solution, solve
from estimator.tables.tables import Tables

INCHES_PER_FT = 12.0
ODD = 2.5
"""A reading this many standard errors from what the others say is named (one sound reading in eighty)."""
SAME_FT = 0.05
"""Stations nearer to each other than this are one place."""

NINE_OF_TEN = 1.645
"""Standard errors on each side that hold nine of ten of a normal distribution."""

STEP_FT = 0.5
"""So often pipe is asked whether it lies at a height."""

UNTOLD_FT = 2 / 12
"""How far pipe may lie below standing water whose depth nobody told, standard error (judgment)."""

Kind = Literal["level", "locate", "pothole", "riser", "standing water", "water depth", "slope as laid"]


class Height(Frozen):
    """The pipe's bottom at a station: ft below the slab top, and its standard error."""

    station_ft: float
    below_slab_ft: float
    sigma_ft: float


class Heard(Frozen):
    """What one reading says and how it agrees: `off_ft` is it less the profile (below 0: it says higher), `odd` where it does not fit."""

    kind: Kind
    at: Stretch
    says_ft: float
    off_ft: float
    odd: bool


class Elevations(Frozen):
    """One line's profile. `levels` counts readings that are good for slope; without one the heights serve digging alone.

    `laid` is how much the bottom sinks a foot of station where pipe is laid as usual, and the standard error of that.
    """

    line: str
    heights: tuple[Height, ...]
    heard: tuple[Heard, ...]
    levels: int
    laid: tuple[float, float] = (0.0, 0.0)

    def at(self, station_ft: float) -> Height:
        """Return the pipe's bottom at a station, in a straight line between the known ones; beyond them as pipe is laid, less and less sure."""
        before = [h for h in self.heights if h.station_ft <= station_ft]
        after = [h for h in self.heights if h.station_ft >= station_ft]
        if not before or not after:
            end = (after or before)[0 if after else -1]
            beyond = station_ft - end.station_ft
            off = hypot(end.sigma_ft, self.laid[1] * beyond)
            return Height(station_ft, end.below_slab_ft + self.laid[0] * beyond, off)
        a, b = before[-1], after[0]
        if a is b or b.station_ft == a.station_ft:
            return Height(station_ft, a.below_slab_ft, a.sigma_ft)
        share = (station_ft - a.station_ft) / (b.station_ft - a.station_ft)

        def between(one: float, other: float) -> float:
            return one + share * (other - one)

        return Height(station_ft, between(a.below_slab_ft, b.below_slab_ft), between(a.sigma_ft, b.sigma_ft))

    def slope_in_per_ft(self, stretch: Stretch, downstream: int) -> float | None:
        """Return how much the bottom falls with the flow, inches a foot; None for a point. Below 0 it runs uphill."""
        if stretch.length_ft == 0:
            return None
        rise = self.at(stretch.to_ft).below_slab_ft - self.at(stretch.from_ft).below_slab_ft
        return downstream * rise / stretch.length_ft * INCHES_PER_FT

    def holding(self, from_in: float, to_in: float, bore_at: Callable[[float], Answer[float]]) -> tuple[Stretch, ...]:
        """Return the stretches whose pipe, bottom to top and nine of ten, lies anywhere between two depths below the slab top, inches.

        `bore_at` is the bore at a station, inches.
        """
        if not self.heights:
            return ()
        low, high = self.heights[0].station_ft, self.heights[-1].station_ft
        count = max(1, round((high - low) / STEP_FT))
        steps = [low + (high - low) * n / count for n in range(count + 1)]
        found = [s for s in steps if self._spans(s, from_in, to_in, bore_at(s).value)]
        return joined(Stretch(max(low, s - STEP_FT / 2), min(high, s + STEP_FT / 2)) for s in found)

    def _spans(self, station_ft: float, from_in: float, to_in: float, bore_in: float) -> bool:
        here = self.at(station_ft)
        bottom, off = here.below_slab_ft * INCHES_PER_FT, NINE_OF_TEN * here.sigma_ft * INCHES_PER_FT
        return bottom - bore_in - off <= to_in and from_in <= bottom + off


class _Saying(Frozen):
    kind: Kind
    parts: tuple[tuple[float, float], ...]  # (station, factor)
    value: float
    sigma: float

    @property
    def at(self) -> Stretch:
        stations = [station for station, _ in self.parts]
        return Stretch(min(stations), max(stations))


def elevations(job: Job, line: Line, tables: Tables) -> Elevations | None:
    """Return the line's profile by weighted least squares; None where no height was ever read."""
    profile = Profile(line)
    sayings = [*_levels(profile, tables), *_locates(profile, job, tables)]
    if sayings:
        sayings += _risers(line, profile, job, tables)
    if not sayings:
        return None
    water = list(_standing(line, profile, tables))
    stations = sorted({round(s, 2) for said in [*sayings, *water] for s, _ in said.parts})
    places = [s for n, s in enumerate(stations) if n == 0 or s - stations[n - 1] > SAME_FT]
    sayings += [*water, *_as_laid(places, [w.at for w in water], line, tables), *_sunk(places, water)]

    def number(station_ft: float) -> int:
        return min(range(len(places)), key=lambda n: abs(places[n] - station_ft))

    equations = [Equation(tuple((number(s), f) for s, f in said.parts), said.value, said.sigma) for said in sayings]
    solution = solve(len(places), equations)
    heights = tuple(Height(s, solution.values[n], solution.sigma([(n, 1.0)])) for n, s in enumerate(places))
    heard = tuple(_heard(said, e, solution) for said, e in zip(sayings, equations, strict=True) if said.kind != AS_LAID)
    levels = sum(said.kind in ("level", "standing water") for said in sayings)
    slope, error = _slope_as_laid(tables)
    return Elevations(line.name, heights, heard, levels, (line.downstream * slope, error))


AS_LAID: Kind = "slope as laid"


def _heard(said: _Saying, equation: Equation, solution: Solution) -> Heard:
    off = equation.value - solution.at(equation.parts)
    return Heard(said.kind, said.at, said.value, off, abs(solution.misfit(equation)) > ODD)


def _levels(profile: Profile, tables: Tables) -> Iterable[_Saying]:
    """Bottoms of the pipe read with a level or a stick from the slab top."""
    error = tables.number("level_error_in") / INCHES_PER_FT
    for mark in profile.levels:
        yield _Saying("level", ((round(mark.stretch.middle_ft, 2), 1.0),), mark.depth_ft or 0.0, error)


def _locates(profile: Profile, job: Job, tables: Tables) -> Iterable[_Saying]:
    """Locate depths and potholes, from the floor or, where the slab's height over the ground is known, from the ground."""
    for mark in profile.marks("depth", "loc", "pothole"):
        lower = _surface_below_slab_ft(mark, job)
        if mark.depth_ft is None or lower is None:
            continue
        bottom = mark.depth_ft + (0.0 if mark.to == "invert" else profile.bore_in(mark.stretch.middle_ft).value / 24)
        uneven = tables.number("ground_error_in") / INCHES_PER_FT if lower else 0.0
        if mark.word == "pothole":
            error = tables.number("level_error_in") / INCHES_PER_FT
        else:
            share = tables.number("locator_tolerance_percent") / 100 * mark.depth_ft
            error = max(share, tables.number("locator_tolerance_min_ft")) / 2
        kind: Kind = "pothole" if mark.word == "pothole" else "locate"
        yield _Saying(kind, ((round(mark.stretch.middle_ft, 2), 1.0),), bottom + lower, (error**2 + uneven**2) ** 0.5)


def _risers(line: Line, profile: Profile, job: Job, tables: Tables) -> Iterable[_Saying]:
    """Where a run went in: its riser, from the floor or the ground down to the middle of the pipe.

    A run that hangs on ties alone may have come in by a branch, so its riser says nothing of this line.
    """
    error = tables.number("riser_error_in") / INCHES_PER_FT
    known = (p for p in line.passes if p.riser_ft > 0 and p.access and p.placed_by not in ("ties", "end"))
    for at, riser_ft in dict.fromkeys((p.start_ft, p.riser_ft) for p in known):
        indoors = profile.zone(at).value in INDOOR_ZONES
        lower = 0.0 if indoors else job.house.slab_above_grade_ft
        if lower is not None:
            bottom = riser_ft + profile.bore_in(at).value / 24 + lower
            uneven = 0.0 if indoors else tables.number("ground_error_in") / INCHES_PER_FT
            yield _Saying("riser", ((round(at, 2), 1.0),), bottom, (error**2 + uneven**2) ** 0.5)


def _surface_below_slab_ft(mark: Mark, job: Job) -> float | None:
    """How far the surface a depth was taken from lies below the slab top; None where nobody measured it."""
    indoors = taken_indoors(mark)
    if indoors or (indoors is None and mark.surface in (None, "")):
        return 0.0
    return job.house.slab_above_grade_ft


def _standing(line: Line, profile: Profile, tables: Tables) -> Iterable[_Saying]:
    """Water that stands from here to there: its ends are level, and its depth is how far the bottom dips below them."""
    error = tables.number("water_line_error_in") / INCHES_PER_FT
    for finding in line.findings:
        if (
            finding.kind != "sag"
            or finding.stretch.length_ft < STEP_FT
            or {"only in use", "never ends"} & set(finding.signs)
        ):
            continue
        low, high = round(finding.stretch.from_ft, 2), round(finding.stretch.to_ft, 2)
        yield _Saying("standing water", ((low, 1.0), (high, -1.0)), 0.0, error)
        bore = profile.bore_in(finding.stretch.middle_ft).value
        share = finding.share_percent(bore)
        if share is not None:
            eye = tables.number("eye_tolerance_percent") / 200 * bore / INCHES_PER_FT
            middle = round(finding.stretch.middle_ft, 2)
            deep = share / 100 * bore / INCHES_PER_FT
            yield _Saying("water depth", ((middle, 1.0), (low, -0.5), (high, -0.5)), deep, eye)


def _sunk(places: list[float], water: list[_Saying]) -> Iterable[_Saying]:
    """Inside standing water pipe sags like a hung cable, deepest in the middle (a parabola), give or take half of how deep it is."""
    depths = {w.at: w for w in water if w.kind == "water depth"}
    for one in water:
        if one.kind != "standing water":
            continue
        low, high = one.at.from_ft, one.at.to_ft
        deep = depths[one.at].value if one.at in depths else 0.0
        off = max(deep / 2, one.sigma) if deep else UNTOLD_FT
        for at in places:
            share = (at - low) / (high - low)
            middle = one.at in depths and abs(at - one.at.middle_ft) < SAME_FT
            if at - low > SAME_FT and high - at > SAME_FT and not middle:
                parts = ((at, 1.0), (low, share - 1), (high, -share))
                yield _Saying(AS_LAID, parts, 4 * share * (1 - share) * deep, off)


def _as_laid(places: list[float], water: list[Stretch], line: Line, tables: Tables) -> Iterable[_Saying]:
    """Between two neighbors outside standing water: the fall pipe is laid with, give or take."""
    slope, error = _slope_as_laid(tables)
    for a, b in pairwise(places):
        if not any(w.length_ft > 0 and w.covers(Stretch(a, b)) for w in water):
            yield _Saying(AS_LAID, ((b, 1.0), (a, -1.0)), line.downstream * slope * (b - a), error * (b - a))


def _slope_as_laid(tables: Tables) -> tuple[float, float]:
    """The fall pipe is laid with where nobody measured it, and its standard error, ft a foot."""
    fall, error = (tables.number(name) for name in ("fall_if_unknown_in_per_ft", "slope_as_laid_error_in_per_ft"))
    return fall / INCHES_PER_FT, error / INCHES_PER_FT

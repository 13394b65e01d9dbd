"""A line's levels, locates and standing water in; one profile of the pipe's bottom with its errors, and the readings that do not fit, out.

Heights are ft below the slab top. Between readings the pipe is taken to fall as pipe is laid, give or take; standing water is a
level line, so the pipe's bottom is equally high where the water begins and where it ends.
"""

from collections.abc import Callable, Iterable
from itertools import pairwise
from math import hypot

from estimator.model.answers import Answer
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch, joined
from estimator.onsite.height_readings import (
    INCHES_PER_FT,
    STEP_FT,
    Kind,
    Saying,
    level_readings,
    locate_readings,
    riser_readings,
    standing_water,
)
from estimator.onsite.least_squares import Equation, Solution, solve
from estimator.tables.tables import Tables

ODD = 2.5
"""A reading this many standard errors from what the others say is named (one sound reading in eighty)."""
SAME_FT = 0.05
"""Stations nearer to each other than this are one place."""

NINE_OF_TEN = 1.645
"""Standard errors on each side that hold nine of ten of a normal distribution."""


UNTOLD_FT = 2 / 12
"""How far pipe may lie below standing water whose depth nobody told, standard error (judgment)."""


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


def elevations(job: Job, line: Line, tables: Tables) -> Elevations | None:
    """Return the line's profile by weighted least squares; None where no height was ever read."""
    profile = Profile(line)
    sayings = [*level_readings(profile, tables), *locate_readings(profile, job, tables)]
    if sayings:
        sayings += riser_readings(line, profile, job, tables)
    if not sayings:
        return None
    water = list(standing_water(line, profile, tables))
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


def _heard(said: Saying, equation: Equation, solution: Solution) -> Heard:
    off = equation.value - solution.at(equation.parts)
    return Heard(said.kind, said.at, said.value, off, abs(solution.misfit(equation)) > ODD)


def _sunk(places: list[float], water: list[Saying]) -> Iterable[Saying]:
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
                yield Saying(AS_LAID, parts, 4 * share * (1 - share) * deep, off)


def _as_laid(places: list[float], water: list[Stretch], line: Line, tables: Tables) -> Iterable[Saying]:
    """Between two neighbors outside standing water: the fall pipe is laid with, give or take."""
    slope, error = _slope_as_laid(tables)
    for a, b in pairwise(places):
        if not any(w.length_ft > 0 and w.covers(Stretch(a, b)) for w in water):
            yield Saying(AS_LAID, ((b, 1.0), (a, -1.0)), line.downstream * slope * (b - a), error * (b - a))


def _slope_as_laid(tables: Tables) -> tuple[float, float]:
    """The fall pipe is laid with where nobody measured it, and its standard error, ft a foot."""
    fall, error = (tables.number(name) for name in ("fall_if_unknown_in_per_ft", "slope_as_laid_error_in_per_ft"))
    return fall / INCHES_PER_FT, error / INCHES_PER_FT

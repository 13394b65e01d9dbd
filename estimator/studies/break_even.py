"""Two ways over one stretch in, where the choice between them turns out: by length, depth, floor price, way from the wall.

The smooth price (nothing rounded) and the homeowner's own floor are scanned on a grid and each change of sign is closed in
on; the real prices stand on both sides of it. A real price goes up in steps, so near a crossing it may turn back and forth.
"""

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from functools import cache

from estimator.diagnosis import diagnose
from estimator.model.comparison import AlongAxis, Axis, BreakEven, Turn
from estimator.model.deeper_line import deeper
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.work import Repair
from estimator.scopes.extent import NUDGE_FT
from estimator.scopes.ground import grounds
from estimator.studies.crossings import Crossing, Curve, crossings, grid
from estimator.studies.priced import bare_and_opened, study, with_floor
from estimator.tables.tables import Tables

Turned = Callable[[Repair, float], tuple[Repair, Job]]
"""A repair and a value of the axis in, the repair and the job as they would be there."""


class Turning(Frozen):
    """What is turned, and how a repair and its job are there; `straight` where the price of the floor alone moves."""

    axis: Axis
    at: Turned
    straight: bool = False

    def curve(self, repair: Repair, tables: Tables) -> Curve:
        """The smooth price with the homeowner's floor, dollars, along the axis; each place is priced once."""
        if self.straight:
            bare, opened_sf = bare_and_opened((repair,), self.at(repair, 0.0)[1], tables)
            return lambda dollars: bare + opened_sf * dollars

        @cache
        def price(x: float) -> float:
            there, job = self.at(repair, x)
            return with_floor((there,), job, tables)

        return price


def break_even(first: Repair, second: Repair, job: Job, tables: Tables) -> BreakEven:
    """Every turn along every axis that bears on one of the two. Errors: those of takeoff and pricing."""
    along = [_along(turning, first, second, tables) for turning in turnings(first, second, job, tables)]
    return BreakEven(first=first.method, second=second.method, along=tuple(a for a in along if _bears(a)))


def turnings(first: Repair, second: Repair, job: Job, tables: Tables) -> tuple[Turning, ...]:
    """Return the axes there are for the two, each with what it makes of a repair and its job."""
    axes = (_length(first, second, job, tables), _depth(first, job, tables), _floor(job, tables))
    return tuple(a for a in (*axes, _wall(first, second, job, tables)) if a is not None)


def _bears(along: AlongAxis) -> bool:
    """The prices move along it."""
    return any(p[1:] != along.points[0][1:] for p in along.points)


def _along(turning: Turning, first: Repair, second: Repair, tables: Tables) -> AlongAxis:
    axis = turning.axis
    a, b = (turning.curve(repair, tables) for repair in (first, second))
    found = crossings(a, b, axis.low, axis.high, axis.step)
    points = tuple((x, a(x), b(x)) for x in grid(axis.low, axis.high, axis.step))
    return AlongAxis(axis=axis, turns=tuple(_turn(c, turning, first, second, tables) for c in found), points=points)


def _turn(crossing: Crossing, turning: Turning, first: Repair, second: Repair, tables: Tables) -> Turn:
    names, axis = (first.method, second.method), turning.axis
    low, high = max(axis.low, crossing.at - axis.step), min(axis.high, crossing.at + axis.step)

    def real(x: float) -> tuple[Decimal, Decimal]:
        a, b = (turning.at(r, x) for r in (first, second))
        return _all_in(*a, tables), _all_in(*b, tables)

    return Turn(
        at=crossing.at,
        below=names[crossing.cheaper_before],
        above=names[1 - crossing.cheaper_before],
        prices_below=real(low),
        prices_above=real(high),
    )


def _all_in(repair: Repair, job: Job, tables: Tables) -> Decimal:
    return study((repair,), job, diagnose(job, tables), tables).option.all_in


# ── the axes ──────────────────────────────────────────────────────────────────────────────────


def _length(first: Repair, second: Repair, job: Job, tables: Tables) -> Turning:
    """The far end of the stretch moves; the end toward the outlet stays."""
    line = job.line(first.line)
    near = first.stretch.to_ft if line.downstream == 1 else first.stretch.from_ft
    run = _run_of_far_end(line, first.stretch)
    most = near - run.from_ft if line.downstream == 1 else run.to_ft - near

    def at(repair: Repair, length_ft: float) -> tuple[Repair, Job]:
        return replace(repair, stretch=Stretch.between(near, near - line.downstream * length_ft)), job

    step = tables.number("break_even_step_ft")
    low = min(tables.number("break_even_least_ft"), most / 2)
    now = first.stretch.length_ft
    return Turning(Axis(name=Say.of("length of pipe"), unit="ft", low=low, high=max(most, now), step=step, now=now), at)


def _run_of_far_end(line: Line, stretch: Stretch) -> Stretch:
    """The pipe under the same ground as the far end: beyond it other ways are meant."""
    inside = stretch.from_ft + NUDGE_FT if line.downstream == 1 else stretch.to_ft - NUDGE_FT
    return next((run for run, _ in grounds(Profile(line)) if run.holds(inside)), stretch).union(stretch)


def _depth(first: Repair, job: Job, tables: Tables) -> Turning | None:
    """All depths read on the line are so much greater or less."""
    line = job.line(first.line)
    now = Profile(line).depth_to_centre_ft(first.stretch.middle_ft).value
    if now is None:
        return None

    def at(repair: Repair, depth_ft: float) -> tuple[Repair, Job]:
        return repair, deeper(job, line.name, depth_ft - now)

    step = tables.number("break_even_step_ft")
    low, high = tables.number("break_even_shallow_ft"), tables.number("break_even_deep_ft")
    low, high = min(low, now), max(high, now)
    return Turning(Axis(name=Say.of("depth of the pipe"), unit="ft", low=low, high=high, step=step, now=now), at)


def _floor(job: Job, tables: Tables) -> Turning:
    """Dollars a square foot to put this homeowner's floor back."""

    def at(repair: Repair, dollars: float) -> tuple[Repair, Job]:
        price = Decimal(repr(dollars)).quantize(Decimal("0.01"))
        return repair, replace(job, house=replace(job.house, floor_price_sf=price))

    high = tables.number("floor_price_high")
    now, known = float(job.house.floor_price_sf or 0), job.house.floor_price_sf is not None
    name, unit = Say.of("price of the floor"), "dollars a sq ft"
    return Turning(
        Axis(name=name, unit=unit, low=0.0, high=max(high, now), step=0.5, now=now, known=known), at, straight=True
    )


def _wall(first: Repair, second: Repair, job: Job, tables: Tables) -> Turning | None:
    """How far it is from the open wall straight in to the pipe, for a tunnel that goes in there."""
    by_wall = next((r for r in (first, second) if r.entry == "wall"), None)
    if by_wall is None:
        return None
    line = job.line(by_wall.line)
    beside = [m for m in Profile(line).marks("beside") if m.stretch.touches(by_wall.stretch) and m.length()]
    if not beside:
        return None
    nearest = min(beside, key=lambda m: m.length() or 0.0)

    def at(repair: Repair, into_ft: float) -> tuple[Repair, Job]:
        moved = tuple(replace(m, lengths=(("", into_ft),)) if m is nearest else m for m in line.marks)
        lines = tuple(replace(one, marks=moved) if one.name == line.name else one for one in job.lines)
        return repair, replace(job, lines=lines)

    step, now = tables.number("break_even_step_ft"), nearest.length() or 0.0
    high = max(2 * now, 20 * step)
    return Turning(Axis(name=Say.of("way in from the wall"), unit="ft", low=step, high=high, step=step, now=now), at)

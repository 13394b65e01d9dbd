"""A scope with its takeoffs and price in, what the homeowner lives with out: days, floor, yard, old pipe left."""

import math
from collections.abc import Iterable, Sequence
from decimal import Decimal

from estimator.model.job import Job
from estimator.model.judgement import Need
from estimator.model.line import Line
from estimator.model.money import exact, up_to
from estimator.model.price import Price
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch, missing
from estimator.model.work import Repair, Takeoff
from estimator.tables.tables import Tables
from estimator.works.methods import RECORDS

NOTHING_NEW = tuple(name for name, record in RECORDS.items() if not record.renews)
"""After these the pipe is as old as before."""
HALF = Decimal("0.5")
CLASSES = ("find", "reach", "pipe", "put back")


def each(repairs: Iterable[Repair]) -> tuple[Repair, ...]:
    """Every repair after those that come before it."""
    return tuple(one for repair in repairs for one in (*each(repair.first), repair))


def hours_of(price: Price, tables: Tables) -> dict[tuple[str, str, str], float]:
    """Crew-hours by repair, class of work and crew."""
    out: dict[tuple[str, str, str], float] = {}
    for task in price.tasks:
        key = (task.repair, tables.work_item(task.work_item).work_class, task.crew)
        out[key] = out.get(key, 0.0) + task.hours
    return out


def days_on_site(price: Price, tables: Tables) -> Decimal:
    """Find, reach, pipe and put back one after another, in each the slowest crew, up to the half day.

    A crew's day is crew_day_hours less what it takes to set up. Days.
    """
    setup = max((c.setup_hours / max(1, math.ceil(c.days)) for c in price.crews), default=0.0)
    hours = hours_of(price, tables)
    total = 0.0
    for work_class in CLASSES:
        by_crew: dict[str, float] = {}
        for (_, here, crew), spent in hours.items():
            if here == work_class:
                by_crew[crew] = by_crew.get(crew, 0.0) + spent
        total += max(by_crew.values(), default=0.0)
    return up_half(total / (tables.number("crew_day_hours") - setup))


def up_half(days: float) -> Decimal:
    """Up to the half day; what floating numbers add in the last places does not count.

    >>> up_half(1.65), up_half(2.0), up_half(2.0000000001), up_half(0)
    (Decimal('2.00'), Decimal('2.00'), Decimal('2.00'), Decimal('0.00'))
    """
    return up_to(exact(round(days, 6)), HALF)


def drains_out_days(repair: Repair, price: Price, tables: Tables) -> float:
    """How long its line is out of use: the method's days and so much of each crew-day on the pipe. Unrounded."""
    row = tables.method(repair.method)
    hours = sum(h for (name, work, _), h in hours_of(price, tables).items() if name == repair.id and work == "pipe")
    return row.drains_out_days + row.drains_out_per_pipe_day * hours / tables.number("crew_day_hours")


def days_without_drains(repairs: Sequence[Repair], price: Price, job: Job, tables: Tables) -> float:
    """Along each line the sum of its repairs; of lines that run into one another the longest; those apart added up."""
    by_line: dict[str, float] = {}
    for repair in each(repairs):
        by_line[repair.line] = by_line.get(repair.line, 0.0) + drains_out_days(repair, price, tables)
    slowest: dict[str, float] = {}
    for line, days in by_line.items():
        main = main_of(job.line(line), job)
        slowest[main] = max(slowest.get(main, 0.0), days)
    return sum(slowest.values())


def main_of(line: Line, job: Job) -> str:
    """The line that all of its water ends up in.

    A ring of lines that join one another (the notes refuse it) ends where it began.
    """
    seen = {line.name}
    while line.joins is not None and line.joins.line not in seen:
        line = job.line(line.joins.line)
        seen.add(line.name)
    return line.name


def floor_sf(takeoffs: Iterable[Takeoff]) -> float:
    return sum(t.value("slab_sf") for t in takeoffs)


def yard_sf(takeoffs: Iterable[Takeoff]) -> float:
    """Grass, beds, walks, drive and street opened, sq ft."""
    return sum(t.value(name) for t in takeoffs for name in ("sod_sf", "bed_sf", "flatwork_sf", "drive_sf", "street_sf"))


def renewed(repairs: Iterable[Repair], line: str) -> tuple[Stretch, ...]:
    """Where a line has new pipe or a lining afterwards, or was taken out of use by a way round."""
    return tuple(r.stretch for r in each(repairs) if r.line == line and r.method not in NOTHING_NEW)


def old_pipe_left_ft(repairs: Sequence[Repair], needs: Iterable[Need], job: Job) -> float:
    """Length of the lines with needs that is neither replaced nor lined, what was not filmed among it."""
    lines = sorted({n.line for n in needs})
    return sum(
        part.length_ft for line in lines for part in missing(Profile(job.line(line)).extent, renewed(repairs, line))
    )

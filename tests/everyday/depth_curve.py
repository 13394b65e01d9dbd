"""The trench and the burst of 60 ft in; their prices over the depth of the pipe, and why they step where they do, out."""

from dataclasses import dataclass
from decimal import Decimal

from estimator.fieldnotes import read_job
from estimator.model.deeper_line import deeper
from estimator.model.job import Job
from estimator.model.work import Takeoff
from estimator.pipeline.costing import in_figures, place_of
from estimator.pricing.build import price_scope
from estimator.tables.read import demo_folder, read_tables
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from tests.everyday.all_everyday import HERE, Everyday

FROM_FT, TO_FT, STEP_FT = 3.0, 6.0, 0.25
HOUSE = "trench-60-ft"
WHY = {
    "depth_over_4": "a ladder, from 4 ft (29 CFR 1926.651(c)(2))",
    "boxed": "boxes hold the sides, from 5 ft (29 CFR 1926.652(a)(1)): rent, setting, dragging, a wider bottom",
    "sloped": "the sides are laid back, from 5 ft (29 CFR 1926.652(a)(1)): more earth, more grass",
}


@dataclass(frozen=True, slots=True)
class Point:
    """One depth of the pipe's middle: the price, its crew days, yards dug, days of rent charged of boxes and of the excavator, and what began here."""

    depth_ft: float
    price: Decimal
    days: Decimal
    earth_cy: float
    loads: float
    box_days: float
    machine_days: float
    facts: frozenset[str]


def curve(method: str) -> tuple[Point, ...]:
    """A point every quarter foot."""
    job = read_job(HERE / HOUSE / "job.toml").job
    assert job is not None
    tables = read_tables(demo_folder(), job.day).tables
    assert tables is not None
    option = Everyday(folder=HOUSE, what="", method=method, low=0, high=0).option()
    repair = option.scope.repairs[0]
    count = round((TO_FT - FROM_FT) / STEP_FT)
    depths = [FROM_FT + n * STEP_FT for n in range(count + 1)]
    return tuple(_point(take_off(repair, _at(job, d), tables), _at(job, d), d, tables) for d in depths)


def _at(job: Job, depth_ft: float) -> Job:
    return deeper(job, "main", depth_ft - FROM_FT)


def _point(takeoff: Takeoff, job: Job, depth_ft: float, tables: Tables) -> Point:
    place = place_of(job, tables)
    takeoffs = in_figures((takeoff,), job, tables, place).takeoffs
    price, own = price_scope(takeoffs, tables, place), takeoffs[0]
    return Point(
        depth_ft,
        price.total,
        price.days,
        own.value("dig_bcy"),
        own.value("loads"),
        own.value("shoring_box_days"),
        own.value("excavator_days"),
        own.facts,
    )


def table(method: str) -> str:
    """The curve as rows of a page, each with what it costs over the one before and why."""
    points = curve(method)
    rows = []
    for before, now in zip((None, *points), points, strict=False):
        more = "" if before is None else f"{now.price - before.price:+,.0f}" if now.price != before.price else "0"
        rows.append(
            f"| {now.depth_ft:.2f} | ${now.price:,.0f} | {more} | {now.earth_cy:.1f} | {now.days:g} | {_why(before, now)} |\n"
        )
    return "".join(rows)


def _rents(before: Point, now: Point) -> tuple[tuple[str, float, float], ...]:
    return (
        ("boxes", before.box_days, now.box_days),
        ("excavator", before.machine_days, now.machine_days),
    )


def _why(before: Point | None, now: Point) -> str:
    if before is None:
        return ""
    began = [WHY[fact] for fact in WHY if fact in now.facts - before.facts]
    if now.days > before.days:
        began.append(f"{now.days - before.days:g} crew day more")
    longer = [what for what, was, is_now in _rents(before, now) if is_now > was > 0]
    if longer:
        began.append(f"more days of rent of {' and '.join(longer)}")
    if now.loads < before.loads:
        began.append("a load less is hauled: packed fill takes back more of its own earth")
    return "; ".join(began) or ("more earth and what comes with it" if now.price > before.price else "")

"""How much of a usual job's cost hangs on each figure of the tables: `python -m tests.bench numbers` writes
estimator/tables/first_numbers.csv, the order in which `estimator tables start` asks.

Every house of tests/cases/houses and tests/jobs is priced with the demo tables; each of its options counts alike, then each house.
A figure's share is the percent of an option's cost that would move with it: a material's, machine's or sub's line; a wage, the labor
paid by it; a task's time, the labor of its hours.
"""

import csv
from collections import defaultdict
from collections.abc import Iterator, Mapping
from decimal import Decimal
from io import StringIO
from pathlib import Path

from estimator.fieldnotes import read_job
from estimator.model.offer import Option
from estimator.model.problem import CannotGoOn
from estimator.pipeline import run
from estimator.tables.first_questions import FILE
from estimator.tables.lookups import SETUP_TASK
from estimator.tables.read import demo_folder, read_tables
from estimator.tables.tables import Tables

HOUSES = Path(__file__).parents[1]
TABLE_OF = {"material": "materials", "equipment": "equipment", "sub": "subs_and_fees", "fee": "subs_and_fees"}
COLUMN = {"materials": "cost", "equipment": "cost", "subs_and_fees": "cost", "roles": "wage", "production": "likely"}
Shares = dict[tuple[str, str], float]


def first_numbers() -> list[str]:
    found = [shares for house in houses() if (shares := shares_of(house))]
    mean: Shares = defaultdict(float)
    for shares in found:
        for key, share in shares.items():
            mean[key] += share / len(found)
    rows = sorted(((table, row, round(share, 2)) for (table, row), share in mean.items()), key=lambda r: (-r[2], r[:2]))
    text = StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(("table", "row", "column", "share"))
    writer.writerows((table, row, COLUMN.get(table, ""), f"{share:.2f}") for table, row, share in rows if share >= 0.01)
    FILE.write_text(text.getvalue(), encoding="utf-8")
    return [f"{len(found)} houses priced, {len(rows)} figures: {FILE.name} is written"]


def houses() -> Iterator[Path]:
    yield from sorted((*HOUSES.glob("cases/houses/*/job.toml"), *HOUSES.glob("jobs/*/job.toml")))


def shares_of(job_file: Path) -> Mapping[tuple[str, str], float]:
    """Percent of the cost of a house's options, the mean of them; nothing where nothing can be priced."""
    job = read_job(job_file).job
    tables = read_tables(demo_folder(), job.day).tables if job else None
    if job is None or tables is None:
        return {}
    try:
        quote = run(job, tables, job.day).quote
    except CannotGoOn:
        return {}
    options = quote.options if quote else ()
    out: Shares = defaultdict(float)
    for option in options:
        for key, share in _of_option(option, tables).items():
            out[key] += share / len(options)
    return out


def _of_option(option: Option, tables: Tables) -> Shares:
    total = sum((cost.amount for cost in option.price.costs), Decimal(0))
    out: Shares = defaultdict(float)
    if not total:
        return out
    days = sum((crew.days for crew in option.price.crews), Decimal(0))
    if days:
        labor = sum((c.amount for c in option.price.costs if c.part == "labor"), Decimal(0))
        out["a crew-day", "labor"] += float(labor / days)
        own = sum((c.amount for c in option.price.costs if c.price_class == "own"), Decimal(0))
        out["a crew-day", "other own cost"] += float((own - labor) / days)
    for cost in option.price.costs:
        share = 100 * float(cost.amount / total)
        if cost.part == "labor":
            for key, part in _labor(option, cost.ref, tables).items():
                out[key] += share * part
        elif cost.part in TABLE_OF:
            out[TABLE_OF[cost.part], cost.ref] += share
    return out


def _labor(option: Option, crew: str, tables: Tables) -> Mapping[tuple[str, str], float]:
    """Of a crew's cost: what each wage pays, and what each task's hours take."""
    out: Shares = defaultdict(float)
    members = [m for m in tables.crew_members if m.crew == crew]
    hour = {m.role: float(m.count * tables.role(m.role).hour) for m in members}
    for role, pays in hour.items():
        out["roles", role] += pays / sum(hour.values())
    tasks = [(t.task, t.hours) for t in option.price.tasks if t.crew == crew]
    tasks += [(SETUP_TASK, c.setup_hours) for c in option.price.crews if c.crew == crew]
    hours = sum(each for _, each in tasks)
    for task, each in tasks:
        out["production", task] += each / hours if hours else 0.0
    return out

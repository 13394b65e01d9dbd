"""Tables in, the fifty questions of a firm that begins out: who it is, people, overhead, its city, then what moves a price most."""

import csv
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

from estimator.model.frozen import Frozen
from estimator.model.say import FromTable, Say
from estimator.tables.rows_of_hours import Production
from estimator.tables.tables import Tables

PRICES, TASKS = 11, 13
PRICED = ("materials", "equipment", "subs_and_fees")
CITY = "your city"
OVERHEAD, CREW_DAYS, PROFIT = "overhead_a_year", "crew_days_a_year", "profit_percent"
"""Settings from which the margin on own work is computed."""
OF_THE_MARGIN = (OVERHEAD, CREW_DAYS, PROFIT)


class Question(Frozen, kw_only=True):
    """One number: where it goes, what is asked in plain words, what it decides, and the percent of the cost of a usual job, or of
    the job asked for, that hangs on it (0 where that cannot be said)."""

    table: str
    row: str
    column: str
    asks: Say
    decides: Say
    share: float = 0.0


ONE = {
    "ft": Say.of("foot"),
    "sq ft": Say.of("square foot"),
    "cy": Say.of("cubic yard"),
    "ton": Say.of("ton"),
    "load": Say.of("load"),
    "day": Say.of("day"),
    "bag": Say.of("bag"),
    "crew-day": Say.of("crew-day"),
    "gal": Say.of("gallon"),
}
"""One of a unit, as a sentence says it."""
LAST_DAY = Say.of("No quote after it; until it is yours no quote can be accepted.")
WHO = (
    ("firm_name", Say.of("Name of your firm"), Say.of("The name on every paper.")),
    ("firm_address", Say.of("Its address"), Say.of("The letterhead.")),
    ("firm_phone", Say.of("Its phone"), Say.of("The letterhead.")),
    ("firm_email", Say.of("Its e-mail"), Say.of("The letterhead.")),
    ("firm_licence", Say.of("License number"), Say.of("The first page; without it no quote can be accepted.")),
    ("firm_licence_until", Say.of("Last day of the license, such as 2027-12-31"), LAST_DAY),
    ("firm_insurance", Say.of("Liability insurer and policy"), Say.of("The first page; without it no quote can be accepted.")),
    ("firm_insurance_until", Say.of("Last day of the insurance, such as 2027-12-31"), LAST_DAY),
)  # fmt: skip
ON_LABOR = Say.of("Labor cost; until it is yours no quote can be accepted.")
ON_MARGIN = Say.of("The margin on your own work, computed when the three are in.")
ON_THE_LINE = Say.of("The cost of that line.")
ON_CITY = Say.of("Sales tax and fees of every job there.")


def first_questions(tables: Tables) -> tuple[Question, ...]:
    """Return the fifty in their order; rows that a firm took out of its tables are passed over."""
    return (*_who(), *_people(tables), *_overhead(), *_city(), *_measured(tables))


def _who() -> Iterator[Question]:
    for key, asks, decides in WHO:
        yield Question(table="settings", row=key, column="value", asks=asks, decides=decides)


def _people(tables: Tables) -> Iterator[Question]:
    share = {number.row: number.share for number in measured() if number.table == "roles"}
    roles = sorted(dict.fromkeys(m.role for m in tables.crew_members), key=lambda role: -share.get(role, 0.0))
    for role in roles:
        asks = Say.of("Wage, {role}, dollars an hour", role=Say.of(role))
        yield Question(table="roles", row=role, column="wage", asks=asks, decides=ON_LABOR, share=share.get(role, 0.0))
    asks = Say.of("On top of wages: payroll taxes, insurance, paid leave, percent of the wage")
    yield Question(table="roles", row="", column="burden_percent", asks=asks, decides=ON_LABOR)
    for crew in dict.fromkeys(m.crew for m in tables.crew_members):
        asks = Say.of("Who is in this crew: {crew}", crew=Say.of(crew))
        yield Question(
            table="crews", row=crew, column="count", asks=asks, decides=Say.of("What an hour of that crew costs.")
        )


def _overhead() -> Iterator[Question]:
    for row, asks in (
        (OVERHEAD, Say.of("Overhead a year: office, trucks, shop, insurance, your own salary, dollars")),
        (CREW_DAYS, Say.of("Crew-days a year that customers pay for, all crews together")),
        (PROFIT, Say.of("Profit you want to keep of every dollar, percent of the price")),
    ):
        yield Question(table="settings", row=row, column="value", asks=asks, decides=ON_MARGIN)


def _city() -> Iterator[Question]:
    for column, asks in (
        ("text", Say.of("Name of your city or county, as papers print it")),
        ("tax_kind", Say.of("Sales tax there: contractor pays, separated, whole charge or none (ask your accountant)")),
        ("tax_percent", Say.of("Sales tax rate there, percent")),
    ):
        yield Question(table="places", row=CITY, column=column, asks=asks, decides=ON_CITY)
    asks = Say.of("Plumbing permit and inspection there, dollars")
    yield Question(table="subs_and_fees", row="permit", column="cost", asks=asks, decides=ON_CITY)


def _measured(tables: Tables) -> Iterator[Question]:
    """Prices, then times of tasks, those first on which most of a usual job's cost hangs."""
    numbers = [(n, made) for n in measured() if n.row != "permit" and (made := figure(n.table, n.row, n.share, tables))]
    yield from [made for n, made in numbers if n.table in PRICED][:PRICES]
    yield from [made for n, made in numbers if n.table == "production"][:TASKS]


def figure(table: str, row: str, share: float, tables: Tables) -> Question | None:
    """Return the question for a price or a task's time; None where the tables have no such row."""
    found = next((r for r in tables.current(table) if getattr(r, "task", getattr(r, "item", None)) == row), None)
    if isinstance(found, Production):
        return _time(found, share)
    return _price(table, found, share) if table in PRICED and found is not None else None


def _price(table: str, row: Any, share: float) -> Question:
    what, unit = FromTable(row.text, row.text_es), row.unit
    asks = Say.of("Cost of {what}, dollars each", what=what)
    if unit != "each":
        asks = Say.of("Cost of {what}, dollars per {unit}", what=what, unit=ONE.get(unit, unit))
    if table == "equipment" and unit == "day":
        asks = Say.of(
            "{asks}, and own or rented: 320 rented is the rent, 120 own what your own machine costs you", asks=asks
        )
    return Question(table=table, row=row.item, column="cost", asks=asks, decides=ON_THE_LINE, share=share)


def _time(task: Production, share: float) -> Question:
    words = {"task": Say.of(task.task), "covers": FromTable(task.covers, task.covers_es)}
    asks = Say.of("{task}: crew-hours each time as a rule ({covers})", **words)
    if task.unit != "each":
        asks = Say.of("{task}: crew-hours per {unit} as a rule ({covers})", unit=ONE.get(task.unit, task.unit), **words)
    decides = Say.of("Hours and days of every job that does it.")
    return Question(table="production", row=task.task, column="likely", asks=asks, decides=decides, share=share)


FILE = Path(__file__).with_name("first_numbers.csv")


class FirstNumber(Frozen):
    """One figure: its table, row and column, and the percent of a usual job's cost that moves with it."""

    table: str
    row: str
    column: str
    share: float


@cache
def measured() -> tuple[FirstNumber, ...]:
    """Return every figure, the one that moves most first (`python -m tests.bench numbers` measures them)."""
    with FILE.open(encoding="utf-8", newline="") as rows:
        return tuple(FirstNumber(r["table"], r["row"], r["column"], float(r["share"])) for r in csv.DictReader(rows))

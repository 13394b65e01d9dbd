"""The crew's workbook that came back filled in, in; real hours, quantities and causes by task, out."""

import math
from collections.abc import Iterator, Sequence
from decimal import Decimal
from pathlib import Path

from estimator.model.frozen import Frozen
from estimator.model.languages import LANGUAGES
from estimator.model.price import TaskHours
from estimator.model.problem import CannotGoOn, Place, Problem
from estimator.model.say import Say
from estimator.papers.crew_hours import COLUMNS, heads, written
from estimator.pricing.actuals import CAUSES, Actual, outcomes_of, strangers_to
from estimator.records.afterwards.problems import (
    BAD_AMOUNT,
    FAR_FROM_ESTIMATE,
    NO_HOURS_SHEET,
    NOTHING_FILLED_IN,
    UNKNOWN_CAUSE,
)
from estimator.records.afterwards.sold import Sold
from estimator.sheets.read import CellValue, ReadRow, ReadSheet, read

COLUMN = {name: column for column, name in enumerate(COLUMNS)}


class Filled(Frozen):
    """One row of the sheet beside the lines of the estimate it stands for; none for work that was written in by hand."""

    name: str
    tasks: tuple[TaskHours, ...]
    hours: float | None
    real: float | None
    cause: str


def crew_hours(file: Path, done: Sold) -> tuple[Actual, ...]:
    """One entry for each task with any hours. A quantity left empty is as planned.

    Errors: CannotGoOn for no workbook, no sheet of this option, nothing filled in, and every cell that is no number or no cause.
    """
    there = read(file)
    if there.problems:
        raise CannotGoOn(*there.problems)
    place = Place(file=file.name)
    sheet = next((s for s in there.sheets.values() if s.name.split()[-1:] == [done.letter] and _head(s)), None)
    if sheet is None:
        raise CannotGoOn(NO_HOURS_SHEET(place, letter=done.letter, number=done.revision.number))
    rows, wrong = _rows(sheet, done, file.name)
    if wrong:
        raise CannotGoOn(*wrong)
    found = tuple(_entries(rows))
    if not found:
        raise CannotGoOn(NOTHING_FILLED_IN(place))
    return found


def _head(sheet: ReadSheet) -> int:
    """The number of the row of heads, 0 where there is none."""
    known = [heads(language) for language in LANGUAGES]
    return next((row.number for row in sheet.rows if row.cells[: len(COLUMNS)] in known), 0)


def _rows(sheet: ReadSheet, done: Sold, file: str) -> tuple[list[Filled], list[Problem]]:
    """Rows met with the estimate's lines of the same work item and task; a row by hand needs a task and hours."""
    waiting = list(done.tasks)
    filled: list[Filled] = []
    wrong: list[Problem] = []
    for row in sheet.rows[_head(sheet) :]:
        mine = tuple(
            t
            for t in waiting
            if _said(row, "task") in written(t.task) and _said(row, "work_item") in written(t.work_item)
        )
        waiting = [t for t in waiting if t not in mine]
        name = mine[0].task if mine else _known(_said(row, "task"), done)
        if not mine and (not name or _said(row, "hours") == ""):
            continue
        hours, bad_hours = _number(row, "hours", sheet.name, file)
        real, bad_real = _number(row, "actual", sheet.name, file)
        said = _said(row, "cause")
        cause = next((c for c in CAUSES if said in written(c)), said)
        wrong += [*bad_hours, *bad_real]
        if cause not in CAUSES:
            place = Place(file=file, table=sheet.name, cell=f"H{row.number}")
            wrong.append(UNKNOWN_CAUSE(place, cause=cause, causes=", ".join(c for c in CAUSES if c)))
        filled.append(Filled(name, mine, hours, real, cause))
    return filled, wrong


def _said(row: ReadRow, column: str) -> str:
    return str(_at(row, column)).strip().lower()


def _known(name: str, done: Sold) -> str:
    """A task written in by hand, as the tables call it; as it stands where they have none."""
    return next((task for task in done.tasks_known if name in written(task)), name)


def _at(row: ReadRow, head: str) -> CellValue:
    column = COLUMN[head]
    return row.cells[column] if column < len(row.cells) else ""


def _number(row: ReadRow, head: str, sheet: str, file: str) -> tuple[float | None, list[Problem]]:
    value = _at(row, head)
    if value == "" or (isinstance(value, str) and not value.strip()):
        return None, []
    try:
        number = float(value) if isinstance(value, int | float | str) and not isinstance(value, bool) else math.nan
    except ValueError:
        number = math.nan
    if math.isfinite(number) and number >= 0:
        return number, []
    what = Say.of("number of hours") if head == "hours" else Say.of("quantity")
    place = Place(file=file, table=sheet, cell=f"{'ABCDEFGH'[COLUMN[head]]}{row.number}")
    return None, [BAD_AMOUNT(place, value=value, what=what)]


def _entries(rows: Sequence[Filled]) -> Iterator[Actual]:
    for name in dict.fromkeys(r.name for r in rows):
        mine = [r for r in rows if r.name == name]
        if not any(r.hours for r in mine):
            continue
        measured = [_measured(r) for r in mine]
        yield Actual(
            task=name,
            hours=sum(r.hours or 0.0 for r in mine),
            quantity=sum(measured) if any(r.real is not None for r in mine) else None,
            cause=next((r.cause for r in reversed(mine) if r.cause), ""),
        )


def _measured(row: Filled) -> float:
    """The quantity as production counts it; of work nobody planned only what was written."""
    planned, counted = sum(t.quantity for t in row.tasks), sum(t.quantity * t.per for t in row.tasks)
    if not planned:
        return row.real or 0.0
    return counted if row.real is None else row.real * counted / planned


TIMES_OVER, TIMES_UNDER = 3, 5
"""Past so many times the estimate, or below such a part of it, a figure is more often a slip than a bad day (common practice)."""
SMALL_HOURS, SMALL_DAYS = 2.0, 2.0
"""What may be off by this much is never asked about: small tasks double easily."""


def far_from_estimate(folder: Path, done: Sold, entries: Sequence[Actual], days: Decimal | None) -> tuple[Problem, ...]:
    """Return a question for each figure just typed that is far from what was estimated; nothing is refused for it."""
    place = Place(file=str(folder))
    return tuple(
        FAR_FROM_ESTIMATE(place, what=what, real=f"{real:g}", estimated=f"{round(estimated, 2):g}", unit=unit)
        for what, real, estimated, unit in (*_hours(done, entries), *_quantities(done, entries), *_days(done, days))
    )


Far = tuple[Say, float, float, Say | str]
"""What is far off: its name, as typed, as estimated, its unit."""


def _far(real: float, estimated: float, small: float) -> bool:
    off = abs(real - estimated) > small
    return off and (real > TIMES_OVER * estimated or real * TIMES_UNDER < estimated)


def _hours(done: Sold, entries: Sequence[Actual]) -> Iterator[Far]:
    for one in outcomes_of(done.tasks, entries):
        if _far(one.actual_hours, one.hours, SMALL_HOURS):
            yield (Say.of("{task} (hours)", task=one.task), one.actual_hours, one.hours, Say.of("crew-hours"))
    every = sum(task.hours for task in done.tasks)
    for name in strangers_to(done.tasks, entries):
        hours = sum(e.hours for e in entries if e.task == name)
        if hours > every:
            yield (
                Say.of("{task} (not in this option; against all its hours)", task=name),
                hours,
                every,
                Say.of("crew-hours"),
            )


def _quantities(done: Sold, entries: Sequence[Actual]) -> Iterator[Far]:
    for one in outcomes_of(done.tasks, [e for e in entries if e.quantity is not None]):
        if _far(one.actual_quantity, one.quantity, 0.0):
            yield (Say.of("{task} (quantity)", task=one.task), one.actual_quantity, one.quantity, one.unit)


def _days(done: Sold, days: Decimal | None) -> Iterator[Far]:
    if days is not None and _far(float(days), float(done.days), SMALL_DAYS):
        yield (Say.of("crew days"), float(days), float(done.days), Say.of("crew-days"))

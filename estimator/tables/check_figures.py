"""Checks of figures that a spreadsheet takes and a price suffers from: out of their range, on a day to come, paid to nobody."""

from collections.abc import Iterator
from datetime import date

from estimator.model.problem import Problem
from estimator.model.say import Say
from estimator.tables import problems as p
from estimator.tables.check_others import AGAINST_OTHERS
from estimator.tables.check_view import View
from estimator.tables.columns import columns
from estimator.tables.figures import called, figures
from estimator.tables.following_rows import in_force
from estimator.tables.lookups import PARTS, SETUP_TASK, expanded
from estimator.tables.rows import TABLES, Equipment, Setting, WorkItem
from estimator.tables.rows_of_hours import Production
from estimator.tables.values import plain_number

DAYS_LEARNED = ("price_day", "checked_on")


def shares(view: View) -> Iterator[Problem]:
    """Percents typed as a share of one; a setting that may be no larger than 1 is none."""
    for table in TABLES:
        for row, column, value in figures(view, table):
            share = column.percent or (isinstance(row, Setting) and column.name == "value" and row.unit == "percent")
            least_whole = isinstance(row, Setting) and row.max is not None and row.max <= 1
            if share and 0 < value < 1 and not least_whole:
                words = {"text": plain_number(value), "fixed": plain_number(value * 100)}
                yield p.PERCENT_SMALL(
                    view.at(table, row, column.name), column=column.header, item=called(table, row), **words
                )


def unusual(view: View) -> Iterator[Problem]:
    """Figures outside their column's range. 0 and empty are other checks' to judge."""
    for table in TABLES:
        for row, column, value in figures(view, table):
            if value and (usual := column.usual) and not usual.low <= value <= usual.high:
                low, high = plain_number(usual.low), plain_number(usual.high)
                words = {"text": plain_number(value), "low": low, "high": high, "why": Say.of(usual.why)}
                yield p.UNUSUAL(
                    view.at(table, row, column.name), column=column.header, item=called(table, row), **words
                )


def days_to_come(view: View) -> Iterator[Problem]:
    """A price learned on a day to come."""
    for table in TABLES:
        for column in (c for c in columns(table) if c.name in DAYS_LEARNED):
            for row in view.tables.current(table):
                day = getattr(row, column.name)
                if day is not None and day > view.tables.day:
                    yield p.DAY_TO_COME(
                        view.at(table, row, column.name), column=column.header, item=called(table, row), text=day
                    )


def paid(view: View) -> Iterator[Problem]:
    """Whoever does a task is paid; a machine paid by the day follows somebody's days."""
    tables = view.tables
    tasks = {row.task: row for row in tables.current("production") if isinstance(row, Production)}
    machines = {row.item: row for row in tables.current("equipment") if isinstance(row, Equipment)}
    told: set[str] = set()
    for recipe in tables.recipes:
        for ref in expanded(view, recipe.ref):
            if ref in told:
                continue
            task = tasks.get(ref) if PARTS[recipe.part] == "production" else None
            if task is not None and not task.crew and not recipe.crew and ref != SETUP_TASK:
                told.add(ref)
                yield p.NOBODY_PAID(view.at("production", task, "crew"), task=ref)
            machine = machines.get(ref) if recipe.part == "equipment" else None
            if (
                machine is not None
                and machine.unit == "day"
                and not machine.crew
                and not _in_days(view, recipe.quantity)
            ):
                told.add(ref)
                yield p.NO_CREW_DAYS(view.at("equipment", machine, "crew"), item=ref)


def _in_days(view: View, quantity: str) -> bool:
    known = view.known.quantities or {}
    return quantity.startswith("days.") or "day" in known.get(quantity, "" if known else "day")


def out_of_use(view: View) -> Iterator[Problem]:
    """Work items that are switched off."""
    used = {item.item for item in view.tables.work_items}
    rows = (row for row in view.tables.rows["work_items"] if isinstance(row, WorkItem) and row.item not in used)
    for row in {row.item: row for row in rows if row.starts is None or row.starts <= view.tables.day}.values():
        yield p.ITEM_OFF(view.at("work_items", row, "active"), item=row.item, text=row.text_en)


def follows(view: View) -> Iterator[Problem]:
    """A later recipe or factor of which nobody can tell which row it replaces."""
    for table in ("recipes", "factors"):
        _, unclear = in_force(table, view.tables.rows.get(table, ()), date.max)
        for row in unclear:
            yield p.FOLLOWS_WHICH(view.at(table, row, "starts"), day=row.starts, name=called(table, row))


FIGURE_CHECKS = (shares, *AGAINST_OTHERS, unusual, days_to_come, paid, out_of_use, follows)

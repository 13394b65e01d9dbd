"""Checks of figures that a spreadsheet takes and a price suffers from: out of their range, far from before, off by a row."""

import re
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from decimal import Decimal

from estimator.model.problem import Problem
from estimator.model.say import Say
from estimator.tables import problems as p
from estimator.tables.columns import Column, columns
from estimator.tables.follows import in_force
from estimator.tables.lookups import PARTS, SETUP_TASK, expanded
from estimator.tables.rows import NO_NUMBER, TABLES, Equipment, Kept, Material, Production, Setting, WorkItem
from estimator.tables.values import plain_number
from estimator.tables.view import View

FAR = 5
"""A figure this many times the one before, or that part of it, is asked about: a decimal point is ten, minutes for hours sixty."""
SHIFTED_ROWS = 3
"""So many figures in a row that are their neighbors' are no chance."""
UNIT_OF = {"cost": ("unit",), "low": ("unit",), "likely": ("unit",), "high": ("unit",), "value": ("unit",)}
"""A figure is held against another only where what it is counted in is the same."""
NOT_HELD = ("order", "tendons_since", "min", "max", "pack", "price_for")
DAYS_LEARNED = ("price_day", "checked_on")

Name = tuple[object, ...]


def named(table: str, row: Kept) -> Name:
    return tuple(getattr(row, n) for n in TABLES[table][1])


def figure(row: Kept, column: Column) -> Decimal | None:
    """The number in a cell; None where it is none, or empty."""
    value = getattr(row, column.name)
    if isinstance(row, Setting) and column.name == "value":
        if row.unit in NO_NUMBER:
            return None
        try:
            return Decimal(value)
        except ArithmeticError:
            return None
    if not column.amount or value is None:
        return None
    return row.unit_cost if isinstance(row, Material) and column.name == "cost" else Decimal(str(value))


def answered(row: Kept, value: Decimal) -> bool:
    """The office has looked at this very figure and says so in the note."""
    looked_at = re.findall(r"checked\s+\$?(\d[\d,]*(?:\.\d+)?)", row.note, re.IGNORECASE)
    return any(Decimal(figure.replace(",", "")) == value for figure in looked_at)


def _figures(view: View, table: str) -> Iterator[tuple[Kept, Column, Decimal]]:
    for row in view.tables.rows.get(table, ()):
        if row.active:
            for column in columns(table):
                value = figure(row, column)
                if value is not None and not answered(row, value):
                    yield row, column, value


def _called(table: str, row: Kept) -> str:
    return " ".join(str(v) for v in named(table, row)[:3] if v and not isinstance(v, tuple))


def shares(view: View) -> Iterator[Problem]:
    """Percents typed as a share of one; a setting that may be no larger than 1 is none."""
    for table in TABLES:
        for row, column, value in _figures(view, table):
            share = column.percent or (isinstance(row, Setting) and column.name == "value" and row.unit == "percent")
            least_whole = isinstance(row, Setting) and row.max is not None and row.max <= 1
            if share and 0 < value < 1 and not least_whole:
                words = {"text": plain_number(value), "fixed": plain_number(value * 100)}
                yield p.PERCENT_SMALL(
                    view.at(table, row, column.name), column=column.header, item=_called(table, row), **words
                )


def unusual(view: View) -> Iterator[Problem]:
    """Figures outside their column's range. 0 and empty are other checks' to judge."""
    for table in TABLES:
        for row, column, value in _figures(view, table):
            if value and (usual := column.usual) and not usual.low <= value <= usual.high:
                low, high = plain_number(usual.low), plain_number(usual.high)
                words = {"text": plain_number(value), "low": low, "high": high, "why": Say.of(usual.why)}
                yield p.UNUSUAL(
                    view.at(table, row, column.name), column=column.header, item=_called(table, row), **words
                )


def far(view: View) -> Iterator[Problem]:
    """Figures many times the one of the row they follow, or of the invented row of that name."""
    usual = view.known.usual
    for table in TABLES:
        invented = {named(table, row): row for row in usual.rows.get(table, ())} if usual else {}
        older = _older(table, view.tables.rows.get(table, ()))
        for row, column, value in _figures(view, table):
            if column.name in NOT_HELD:
                continue
            held = [
                (older.get(id(row)), Say.of("the row before it,")),
                (invented.get(named(table, row)), Say.of("the invented figure")),
            ]
            for other, which in held:
                times = _times(row, other, column, value) if other is not None else None
                if times is not None and other is not None:
                    before = plain_number(figure(other, column) or 0)
                    words = {"text": plain_number(value), "times": times, "which": which, "before": before}
                    place = view.at(table, row, column.name)
                    yield p.FAR(place, column=column.header, item=_called(table, row), **words)
                    break


def other_unit(view: View) -> Iterator[Problem]:
    """A row counted in another unit than the invented one of its name, at the very same figure."""
    usual = view.known.usual
    for table in ("materials", "equipment", "subs_and_fees", "production", "extras"):
        invented = {named(table, row): row for row in usual.rows.get(table, ())} if usual else {}
        column = next(c for c in columns(table) if c.name in ("cost", "likely", "price"))
        for row in view.tables.current(table):
            other, value = invented.get(named(table, row)), figure(row, column)
            unit, before = getattr(row, "unit", ""), getattr(other, "unit", "")
            if other is not None and value and unit != before and value == figure(other, column):
                words = {"item": _called(table, row), "unit": unit, "text": plain_number(value), "other": before}
                yield p.OTHER_UNIT(view.at(table, row, "unit"), **words)


def _older(table: str, rows: Sequence[Kept]) -> Mapping[int, Kept]:
    """For each row by its id the newest older row of its name, where there is one."""
    alike: dict[Name, list[Kept]] = {}
    for row in rows:
        alike.setdefault(named(table, row), []).append(row)
    out: dict[int, Kept] = {}
    for same in alike.values():
        for row in same if len(same) > 1 else ():
            older = [r for r in same if _starts(r) < _starts(row)]
            if older:
                out[id(row)] = max(older, key=_starts)
    return out


def _starts(row: Kept) -> date:
    return row.starts or date.min


def _times(row: Kept, other: Kept, column: Column, value: Decimal) -> str | None:
    """How many times the other the figure is, in words; None where it is near, or counted in something else."""
    before = figure(other, column)
    if not before or (before < 0) != (value < 0):
        return None
    if any(getattr(row, n, None) != getattr(other, n, None) for n in UNIT_OF.get(column.name, ())):
        return None
    if not value:
        return "0"
    times = value / before
    if 1 / Decimal(FAR) < times < FAR:
        return None
    return plain_number(round(times, 1)) if times >= 1 else f"1/{plain_number(round(1 / times, 1))}"


def shifted(view: View) -> Iterator[Problem]:
    """A column whose figures are those of the row above, or below, several in a row."""
    usual = view.known.usual
    for table in TABLES if usual else ():
        assert usual is not None
        rows = [row for row in view.tables.rows.get(table, ()) if row.active]
        invented = [named(table, row) for row in usual.rows.get(table, ())]
        for column in columns(table):
            if column.name in NOT_HELD or not (column.amount or column.name == "value"):
                continue
            old = {named(table, row): figure(row, column) for row in usual.rows.get(table, ())}
            for step, side in ((-1, Say.of("above")), (1, Say.of("below"))):
                neighbor = {
                    name: old[invented[at + step]] for at, name in enumerate(invented) if 0 <= at + step < len(invented)
                }
                for run in _runs(rows, table, column, old, neighbor):
                    first, last = _called(table, run[0]), _called(table, run[-1])
                    place = view.at(table, run[0], column.name)
                    yield p.SHIFTED(place, count=len(run), column=column.header, side=side, first=first, last=last)


def _runs(
    rows: Sequence[Kept],
    table: str,
    column: Column,
    old: Mapping[Name, Decimal | None],
    neighbor: Mapping[Name, Decimal | None],
) -> Iterator[list[Kept]]:
    """Runs of rows whose figures are a neighbor's; the same figure in both rows says nothing and breaks no run."""
    run: list[Kept] = []
    moved = 0
    for row in (*rows, None):
        name = None if row is None else named(table, row)
        value = None if row is None else figure(row, column)
        beside = None if name is None else neighbor.get(name)
        if row is not None and name is not None and value and value == beside:
            run.append(row)
            moved += name in old and old[name] != value
            continue
        if moved >= SHIFTED_ROWS:
            yield run
        run, moved = [], 0


def days_to_come(view: View) -> Iterator[Problem]:
    """A price learned on a day to come."""
    for table in TABLES:
        for column in (c for c in columns(table) if c.name in DAYS_LEARNED):
            for row in view.tables.current(table):
                day = getattr(row, column.name)
                if day is not None and day > view.tables.day:
                    yield p.DAY_TO_COME(
                        view.at(table, row, column.name), column=column.header, item=_called(table, row), text=day
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
            yield p.FOLLOWS_WHICH(view.at(table, row, "starts"), day=row.starts, name=_called(table, row))


FIGURE_CHECKS = (shares, far, other_unit, unusual, shifted, days_to_come, paid, out_of_use, follows)

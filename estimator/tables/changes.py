"""Two sets of tables in, what moved between them and by how much out."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Literal

from estimator.model.frozen import Frozen
from estimator.tables.columns import Column, columns
from estimator.tables.csv_folder import written
from estimator.tables.rows import TABLES, TableRow, name_of
from estimator.tables.tables import Tables

UNSPOKEN = ("changed_by", "changed_on", "starts", "cell_row")
"""Columns whose change alone is no change: they say who and when."""


class TableChange(Frozen, kw_only=True):
    """One row new, gone, or one value of it moved. `percent` where both are amounts and the old one is not 0."""

    table: str
    name: str
    what: Literal["new", "gone", "moved"]
    column: str = ""
    old: str = ""
    new: str = ""
    percent: Decimal | None = None
    starts: date | None = None  # the day it begins, where that is to come

    def __str__(self) -> str:
        if self.starts is not None:
            return f"from {self.starts}: {replace(self, starts=None)}"
        if self.what != "moved":
            return f"{self.table}: {self.name} is {self.what}"
        by = "" if self.percent is None else f" ({self.percent:+} %)"
        return f"{self.table}: {self.name}, {self.column}: {self.old or 'empty'} -> {self.new or 'empty'}{by}"


def changes(old: Tables, new: Tables) -> tuple[TableChange, ...]:
    """What is in force on each set's own day, compared row by row by name; in the order of the tables.

    A row set to active no counts as gone, a newer row of the same name as moved.
    """
    return tuple(change for table in TABLES for change in _table(table, old, new))


def changes_to_come(old: Tables, new: Tables) -> tuple[TableChange, ...]:
    """What begins to differ on a day after the new set's own, each change once, with its day."""
    told = set(changes(old, new))
    out: list[TableChange] = []
    for day in _days_to_come(old, new):
        before, after = old.on(max(day, old.day)), new.on(max(day, new.day))
        for change in (c for table in TABLES for c in _table(table, before, after)):
            if change not in told:
                told.add(change)
                out.append(replace(change, starts=day))
    return tuple(out)


def _days_to_come(old: Tables, new: Tables) -> list[date]:
    rows = (row for tables in (old, new) for table in tables.rows.values() for row in table)
    return sorted({row.starts for row in rows if row.starts is not None and row.starts > new.day})


def _table(table: str, old: Tables, new: Tables) -> Iterator[TableChange]:
    before, after = _by_name(table, old), _by_name(table, new)
    for key in dict.fromkeys((*before, *after)):
        name = ", ".join(part for part in key if part)
        if key not in after:
            yield TableChange(table=table, name=name, what="gone")
        elif key not in before:
            yield TableChange(table=table, name=name, what="new")
        else:
            yield from _moved(table, name, before[key], after[key])


def _by_name(table: str, tables: Tables) -> Mapping[tuple[str, ...], TableRow]:
    return {tuple(map(written, name_of(table, row))): row for row in tables.current(table)}


def _moved(table: str, name: str, old: TableRow, new: TableRow) -> Iterator[TableChange]:
    for column in columns(table):
        before, after = getattr(old, column.name), getattr(new, column.name)
        if before != after and column.name not in UNSPOKEN:
            share = _percent(before, after, column)
            was, now = written(before), written(after)
            yield TableChange(
                table=table, name=name, what="moved", column=column.header, percent=share, old=was, new=now
            )


def _percent(old: object, new: object, column: Column) -> Decimal | None:
    """By how much an amount moved, in percent of the old one, to a tenth."""
    if not column.amount or not old or new is None:
        return None
    before, after = Decimal(str(old)), Decimal(str(new))
    return (100 * (after - before) / before).quantize(Decimal("0.1"))

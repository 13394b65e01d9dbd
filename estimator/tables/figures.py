"""The figures of a set of tables: which rows and columns hold one, and whether the office has looked at it."""

import re
from decimal import Decimal

from estimator.model.remembered import answered_once
from estimator.tables.check_view import View
from estimator.tables.columns import Column, columns
from estimator.tables.rows import NO_NUMBER, Material, Setting, TableRow, name_of

Name = tuple[object, ...]
LOOKED_AT = re.compile(r"checked\s+\$?(\d[\d,]*(?:\.\d+)?)", re.IGNORECASE)
"""How the office notes that it looked at a figure."""


def figure(row: TableRow, column: Column) -> Decimal | None:
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


def answered(row: TableRow, value: Decimal) -> bool:
    """The office has looked at this very figure and says so in the note."""
    return any(Decimal(figure.replace(",", "")) == value for figure in LOOKED_AT.findall(row.note))


@answered_once
def figures(view: View, table: str) -> tuple[tuple[TableRow, Column, Decimal], ...]:
    """Every figure of the rows in use that nobody has answered for yet."""
    with_figures = [c for c in columns(table) if c.amount or c.name == "value"]
    found = ((r, c, figure(r, c)) for r in view.tables.rows.get(table, ()) if r.active for c in with_figures)
    return tuple((row, column, value) for row, column, value in found if value is not None and not answered(row, value))


def called(table: str, row: TableRow) -> str:
    """A row as a message names it."""
    return " ".join(str(v) for v in name_of(table, row)[:3] if v and not isinstance(v, tuple))

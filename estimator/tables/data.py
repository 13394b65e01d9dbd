"""A set of tables in, plain data for the record out; and back, to price the same job again."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

from estimator.tables.columns import Column, columns
from estimator.tables.invented_rows import plain
from estimator.tables.rows import TABLES, TableRow
from estimator.tables.tables import Tables
from estimator.tables.values import read_cell


def to_data(tables: Tables) -> dict[str, Any]:
    """Everything needed to have the same tables again, as JSON holds it: the day, the fingerprint, every row.

    Rows are lists in the order of `columns`, with the row's number in its file last, so that a price cell can be named.
    """
    return {
        "day": tables.day.isoformat(),
        "fingerprint": tables.fingerprint,
        "source": tables.source,
        "columns": {name: [c.name for c in columns(name)] for name in TABLES},
        "rows": {name: [_row(name, row) for row in tables.rows.get(name, ())] for name in TABLES},
        "sheet_columns": {name: dict(rows[0].sheet_columns) for name, rows in tables.rows.items() if rows},
    }


def _row(table: str, row: TableRow) -> list[object]:
    return [*(plain(getattr(row, c.name)) for c in columns(table)), row.cell_row]


def from_data(data: Mapping[str, Any]) -> Tables:
    """The tables of a record. A column or table the record does not know yet is read as empty.

    Errors: KeyError or ValueError for data that `to_data` did not make.
    """
    rows: dict[str, tuple[TableRow, ...]] = {}
    for name in TABLES:
        kept = data["columns"].get(name, ())
        letters = data.get("sheet_columns", {}).get(name, {})
        rows[name] = tuple(_back(name, kept, row, letters) for row in data["rows"].get(name, ()))
    return Tables(rows, date.fromisoformat(data["day"]), data["fingerprint"], data["source"])


def _back(table: str, names: Sequence[str], row: Sequence[Any], letters: Mapping[str, str]) -> TableRow:
    known = dict(zip(names, row, strict=False))
    values = {column.name: _value(known.get(column.name), column) for column in columns(table)}
    return TABLES[table][0](**values, cell_row=row[len(names)], sheet_columns=letters)


def _value(value: Any, column: Column) -> Any:
    """As a cell would be read, so that a day is a day and a dollar a Decimal."""
    if value is None:
        return read_cell("", column) if column.empty else None
    if isinstance(value, list):
        return tuple(value)
    if column.kind == "text":
        return value
    return read_cell(value, column)

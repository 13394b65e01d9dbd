"""A set of tables in, its CSV files out; a value of a row in, the text of its cell out."""

import csv
from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from io import StringIO

from estimator.tables.columns import columns
from estimator.tables.rows import TABLES
from estimator.tables.tables import Tables
from estimator.tables.values import plain_number


def csv_files(tables: Tables) -> Mapping[str, bytes]:
    """Every table by the name of its file; read again they give the same rows and the same fingerprint."""
    return {f"{name}.csv": _file(name, tables) for name in TABLES}


def _file(name: str, tables: Tables) -> bytes:
    text = StringIO(newline="")
    lines = csv.writer(text, lineterminator="\n")
    lines.writerow(column.header for column in columns(name))
    lines.writerows([written(getattr(row, c.name)) for c in columns(name)] for row in tables.rows.get(name, ()))
    return text.getvalue().encode("utf-8")


def written(value: object) -> str:
    """A value as it stands in a CSV file.

    >>> written(True), written(("tunnel", "trench")), written(None), written(4.0)
    ('yes', 'tunnel, trench', '', '4')
    """
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float | Decimal):
        return plain_number(value)
    if isinstance(value, date):
        return value.isoformat()
    return ", ".join(value) if isinstance(value, tuple) else str(value)

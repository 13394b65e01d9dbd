"""A set of tables in, the text of every CSV file out."""

import csv
from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from io import StringIO

from estimator.tables.columns import columns
from estimator.tables.rows import TABLES
from estimator.tables.tables import Tables
from estimator.tables.values import plain_number


def csv_texts(tables: Tables) -> Mapping[str, str]:
    """File name to text, a file a table; read again they give the same rows and the same fingerprint."""
    return {f"{name}.csv": _text(name, tables) for name in TABLES}


def _text(table: str, tables: Tables) -> str:
    out = StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([c.header for c in columns(table)])
    for row in tables.rows.get(table, ()):
        writer.writerow([written(getattr(row, c.name)) for c in columns(table)])
    return out.getvalue()


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

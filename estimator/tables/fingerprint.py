"""Rows in, one short name for exactly these rows out: the same for CSV files and a workbook, whatever the order of rows."""

import hashlib
import json
from collections.abc import Mapping
from datetime import date
from decimal import Decimal

from estimator.tables.columns import columns
from estimator.tables.rows import TABLES, Kept


def fingerprint(rows: Mapping[str, tuple[Kept, ...]]) -> str:
    """SHA-256 over every row's values; where a row stands in its file does not count."""
    digest = hashlib.sha256()
    for table in TABLES:
        names = [c.name for c in columns(table)]
        lines = sorted(json.dumps([table, *(plain(getattr(r, n)) for n in names)]) for r in rows.get(table, ()))
        digest.update("\n".join([table, *lines, ""]).encode())
    return digest.hexdigest()


def plain(value: object) -> object:
    """A value as JSON holds it; a Decimal by its value, not its spelling.

    >>> plain(Decimal("24.50")), plain(Decimal("24.5")), plain(date(2026, 1, 2))
    ('24.5', '24.5', '2026-01-02')
    """
    if isinstance(value, Decimal):
        return f"{value.normalize():f}" if value else "0"
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, tuple):
        return list(value)
    return value

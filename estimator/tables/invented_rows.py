"""A firm's tables in; which of their rows are still the demo's invention, and which are the firm's own, out."""

import hashlib
import json
from collections.abc import Mapping
from dataclasses import fields
from datetime import date
from decimal import Decimal

from estimator.tables.columns import columns
from estimator.tables.read import demo_rows
from estimator.tables.rows import TABLES, TableRow, id_of
from estimator.tables.tables import Tables

UNSEEN = ("cell_row", "sheet_columns", "starts", "active", "note")


def invented(tables: Tables, table: str) -> frozenset[str]:
    """Ids of rows that are the demo's to the letter. A row that somebody of the firm has signed (changed_by, changed_on) is
    the firm's own, whatever it says."""
    cache: dict[str, frozenset[str]] = tables.__dict__.setdefault("_invented", {})
    if table not in cache:
        theirs = {_values(table, row) for row in demo_rows().rows.get(table, ())}
        cache[table] = frozenset(id_of(table, row) for row in tables.current(table) if _values(table, row) in theirs)
    return cache[table]


def own_rows(tables: Tables) -> frozenset[tuple[str, str]]:
    """Return (table, id) of every row that is the firm's own."""
    every = ((table, id_of(table, row)) for table in TABLES for row in tables.current(table))
    return frozenset((table, row) for table, row in every if row not in invented(tables, table))


FIGURES = ("roles", "materials", "equipment", "subs_and_fees", "production", "pricing")
"""Tables of wages, prices, times and margins: what a price is made of."""


def still_invented(tables: Tables) -> tuple[int, int]:
    """Return how many rows of FIGURES are still the demo's, and how many there are in all; a name counts once."""
    every = [(table, row) for table in FIGURES for row in {id_of(table, row) for row in tables.current(table)}]
    return sum(row in invented(tables, table) for table, row in every), len(every)


def _values(table: str, row: TableRow) -> tuple[object, ...]:
    return tuple(getattr(row, f.name) for f in fields(TABLES[table][0]) if f.name not in UNSEEN)


def fingerprint(rows: Mapping[str, tuple[TableRow, ...]]) -> str:
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

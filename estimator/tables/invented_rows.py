"""A firm's tables in; which of their rows are still the demo's invention, and which are the firm's own, out."""

from dataclasses import fields

from estimator.tables.read import demo_rows
from estimator.tables.rows import TABLES, Kept, id_of
from estimator.tables.tables import Tables

UNSEEN = ("cell_row", "sheet_columns", "starts", "active", "note")


def invented(tables: Tables, table: str) -> frozenset[str]:
    """Ids of rows that are the demo's to the letter. A row that somebody of the firm has signed (changed_by, changed_on) is
    the firm's own, whatever it says."""
    cache: dict[str, frozenset[str]] = tables.__dict__.setdefault("_invented", {})
    if table not in cache:
        theirs = {_told(table, row) for row in demo_rows().rows.get(table, ())}
        cache[table] = frozenset(id_of(table, row) for row in tables.current(table) if _told(table, row) in theirs)
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


def _told(table: str, row: Kept) -> tuple[object, ...]:
    return tuple(getattr(row, f.name) for f in fields(TABLES[table][0]) if f.name not in UNSEEN)

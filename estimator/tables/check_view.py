"""What every check looks at: the tables as read, their raw form for places, the day, what is known."""

import re
from collections.abc import Collection, Mapping

from estimator.model.frozen import Frozen
from estimator.model.problem import Place
from estimator.tables.raw import RawTable, RawTables
from estimator.tables.rows import HEADERS, TableRow
from estimator.tables.tables import Tables


class Known(Frozen):
    """quantities: name to unit; facts and methods: names; settings: key to the demo's value with its unit.

    Tables do not import the rooms that own them.
    """

    quantities: Mapping[str, str] | None = None
    facts: Collection[str] | None = None
    methods: Collection[str] | None = None
    settings: Mapping[str, str] | None = None
    usual: Tables | None = None
    """The tables whose figures a new one is held against: the invented ones."""
    before: Tables | None = None
    """The firm's own tables as they were, where somebody says which."""


class View(Frozen, dict=True):
    """The tables on their day, with a way to name a cell."""

    tables: Tables
    raw: RawTables
    known: Known
    lost: Mapping[str, frozenset[str]]  # names of rows that could not be read, by table

    def at(self, table: str, row: TableRow, column: str = "") -> Place:
        """The place of a row's cell, by field name."""
        raw: RawTable = self.raw.tables[table]
        return raw.place(row.cell_row, HEADERS.get(column, column) if column else None)

    def sizes(self) -> tuple[str, ...]:
        """What {size} may mean: setting pipe_sizes."""
        try:
            text = self.tables.text("pipe_sizes")
        except KeyError:
            return ()
        parts = [part.strip() for part in text.split(",")]
        return tuple(parts) if all(re.fullmatch(r"\d+(\.\d+)?", part) for part in parts) else ()

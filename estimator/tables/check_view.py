"""What every check looks at: the tables as read, their raw form for places, the day, what is known."""

import re
from collections.abc import Mapping

from estimator.model.frozen import Frozen
from estimator.model.problem import Place
from estimator.tables.known_names import Known
from estimator.tables.raw import RawTable, RawTables
from estimator.tables.rows import HEADERS, Kept
from estimator.tables.tables import Tables


class View(Frozen, dict=True):
    """The tables on their day, with a way to name a cell."""

    tables: Tables
    raw: RawTables
    known: Known
    lost: Mapping[str, frozenset[str]]  # names of rows that could not be read, by table

    def at(self, table: str, row: Kept, column: str = "") -> Place:
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

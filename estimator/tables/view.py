"""What every check looks at: the tables as read, their raw form for places, the day, what is known."""

from dataclasses import dataclass

from estimator.model.problem import Place
from estimator.tables.known import Known
from estimator.tables.raw import RawTable, RawTables
from estimator.tables.rows import HEADERS, Kept
from estimator.tables.tables import Tables


@dataclass(frozen=True)
class View:
    """The tables on their day, with a way to name a cell."""

    tables: Tables
    raw: RawTables
    known: Known

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
        return tuple(part.strip() for part in text.split(",") if part.strip())

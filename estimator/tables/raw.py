"""What a CSV file and a sheet have in common: headers and rows of cells, each with a place that can be named."""

from collections.abc import Mapping
from datetime import date
from decimal import Decimal

from msgspec import field

from estimator.model.frozen import Frozen
from estimator.model.problem import Place
from estimator.sheets.fault import Fault

CellValue = str | int | float | bool | date | Decimal | Fault


class RawRow(Frozen):
    """One row as it stands; `number` counts from 1 at the header; a cell that is not there is empty."""

    number: int
    cells: tuple[CellValue, ...]
    hidden: bool = False
    struck: bool = False

    @property
    def empty(self) -> bool:
        return all(isinstance(cell, str) and not cell.strip() for cell in self.cells)


class RawTable(Frozen):
    """One table as it stands. `letters` names cells the spreadsheet way, D17; else "row 17, cost"."""

    name: str
    file: str
    headers: tuple[str, ...]
    rows: tuple[RawRow, ...]
    letters: bool = False
    header_row: int = 1
    hidden_columns: tuple[int, ...] = ()

    def place(self, row: int | None = None, column: int | str | None = None) -> Place:
        """Where to look: a cell, a row, or the table."""
        if row is None:
            return Place(file=self.file, table=self.name)
        if isinstance(column, str):
            column = self.headers.index(column) if column in self.headers else None
        if self.letters:
            cell = f"row {row}" if column is None else f"{letters(column)}{row}"
        else:
            cell = f"row {row}" if column is None else f"row {row}, {self.headers[column]}"
        return Place(file=self.file, table=self.name, cell=cell)


class RawTables(Frozen):
    """All tables found at a path, by name."""

    file: str
    tables: Mapping[str, RawTable] = field(default_factory=dict)


def letters(column: int) -> str:
    """A column's letters, counted from 0.

    >>> letters(0), letters(25), letters(26)
    ('A', 'Z', 'AA')
    """
    name = ""
    number = column + 1
    while number:
        number, rest = divmod(number - 1, 26)
        name = chr(65 + rest) + name
    return name

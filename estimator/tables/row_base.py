"""What a column may say of itself, and the columns that every row of every table carries."""

from collections.abc import Mapping
from dataclasses import MISSING, dataclass, field
from datetime import date
from typing import Any

from estimator.model.frozen import Frozen


class Usual(Frozen):
    """The range that figures of a column lie in as a rule, and the reason; a figure outside is asked about, not refused."""

    low: float
    high: float
    why: str


def col(
    note: str,
    refers: str = "",
    choices: tuple[str, ...] = (),
    least: float | None = None,
    needed: bool = False,
    blank: str | None = None,
    default: Any = MISSING,
    above: float | None = None,
    usual: Usual | None = None,
) -> Any:
    """A column: what it means, the table its ids come from, the words allowed, the least value allowed.

    `needed`: a text that may not be empty (numbers may not be empty anyway); `blank`: what an empty cell means.
    With a `default` the column may be left out of the file altogether, so that older tables are still read.
    `above`: a number that must be more than this; `usual`: what such a number is as a rule, and why.
    """
    metadata = {"note": note, "refers": refers, "choices": choices, "least": least, "needed": needed, "blank": blank}
    return field(default=default, metadata={**metadata, "above": above, "usual": usual})


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRow:
    """What every row carries so that the office can keep it."""

    starts: date | None = col("the day this row begins to count; column `from`", default=None)
    active: bool = col("no: the row is kept but not used", default=True)
    note: str = col("anything worth remembering", default="")
    changed_by: str = col("who changed it last", default="")
    changed_on: date | None = col("the day it was changed last", default=None)
    cell_row: int = field(default=0, metadata={"note": "", "hidden": True})  # the row in the file, from 1 at the header
    sheet_columns: Mapping[str, str] = field(default_factory=dict, compare=False, metadata={"note": "", "hidden": True})
    """The letters of each column where the row was read from a workbook; empty for a CSV file."""

    def cell(self, column: str) -> str:
        """Where a value of this row stands: D17 in a workbook, "row 17, cost" in a CSV file, the column's name otherwise."""
        if column in self.sheet_columns:
            return f"{self.sheet_columns[column]}{self.cell_row}"
        return f"row {self.cell_row}, {column}" if self.cell_row else column

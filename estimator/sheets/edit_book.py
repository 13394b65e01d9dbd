"""A workbook for people to edit, as plain data: sheets of columns with notes, lists to choose from and computed cells."""

from datetime import date
from typing import Literal

from estimator.model.frozen import Frozen

Kind = Literal["text", "number", "dollars", "whole", "yes/no", "day"]
Value = str | int | float | date | None


class Computed(Frozen):
    """A locked cell: its formula with {row} for the row's number; the spreadsheet program works it out on opening."""

    formula: str
    values: tuple[float | str, ...]


class EditColumn(Frozen, kw_only=True):
    """One column. `choose` are the words allowed; `list_from` a range such as =roles!$A$2:$A$40, or a formula giving one.

    `needed` cells are marked while empty; `old_after_days` marks a day that is longer ago. `several` names may stand in a
    cell, commas between: the list is offered, and what is typed is let be.
    """

    header: str
    note: str
    kind: Kind
    width: float
    needed: bool = False
    choose: tuple[str, ...] = ()
    list_from: str = ""
    several: bool = False
    least: float | None = None
    old_after_days: int | None = None
    computed: Computed | None = None


class EditSheet(Frozen, kw_only=True):
    """One table: a header row, then `rows`. `read_only` sheets are locked whole; no password anywhere."""

    name: str
    columns: tuple[EditColumn, ...]
    rows: tuple[tuple[Value, ...], ...]
    tab: str  # RRGGBB
    read_only: bool = False
    off_column: int | None = None  # the column that says no for a row not in use
    spare_rows: int = 60


class CoverLine(Frozen):
    """A line of the cover: text in columns; `link` is a place in the workbook such as materials!E12 for the last text."""

    texts: tuple[str, ...]
    style: str = "body"  # title, heading, body, quiet
    link: str = ""
    colour: str = ""


class EditBook(Frozen, kw_only=True):
    title: str
    day: date
    cover: tuple[CoverLine, ...]
    sheets: tuple[EditSheet, ...]
    cover_name: str = "start here"

"""A workbook somebody hands in, in; its sheets as plain cells, or what is wrong with the file, out."""

import re
from collections.abc import Iterable
from datetime import date, datetime, time, timedelta
from io import BytesIO
from pathlib import Path
from typing import Any

from estimator.disk.whole import read_bytes
from estimator.model.frozen import Frozen
from estimator.model.problem import Place, Problem
from estimator.model.say import Say
from estimator.sheets import problems as p
from estimator.sheets.fault import Fault
from estimator.sheets.gate import gate
from estimator.sheets.style import Percent

CURRENCY = re.compile(r"\[\$([^\]$-]+)[\]-]|([€£¥₱₡])")
"""What a cell's number format says of the money it holds; dollars carry their own sign, or no word."""
OURS = ("", "US", "USD")
CellValue = str | int | float | bool | date | Fault
"""A day with a time of day is a datetime; an empty cell an empty text."""


class ReadRow(Frozen):
    """One row with its number as the spreadsheet counts, from 1."""

    number: int
    cells: tuple[CellValue, ...]
    hidden: bool = False
    struck: bool = False  # whoever looks at it takes it, or a cell of it, for taken out
    formulas: frozenset[int] = frozenset()  # cells that are worked out, counted from 0


class ReadSheet(Frozen):
    name: str
    rows: tuple[ReadRow, ...]
    hidden: bool = False
    hidden_columns: tuple[int, ...] = ()  # counted from 0


class SheetsReading(Frozen):
    """The sheets by name; empty, with one problem, when the file cannot be read."""

    sheets: dict[str, ReadSheet]
    problems: tuple[Problem, ...] = ()


def read(path: Path) -> SheetsReading:
    """Every sheet of an .xlsx file. Values and formulas are both read, to tell empty, error and never calculated apart."""
    place = Place(file=path.name)
    if path.is_dir():
        return SheetsReading({}, (p.UNREADABLE(place, why=Say.of("it is a folder")),))
    try:
        data = read_bytes(path)
    except OSError as error:
        return SheetsReading({}, (p.UNREADABLE(place, why=error.strerror or type(error).__name__),))
    wrong = gate(data, place)
    if wrong is not None:
        return SheetsReading({}, (wrong,))
    try:
        return SheetsReading(_sheets(data))
    except Exception as error:  # the reading library raises whatever its parsing meets in a damaged part
        return SheetsReading({}, (p.DAMAGED(place, why=Say.of("{error} while reading", error=type(error).__name__)),))


def _sheets(data: bytes) -> dict[str, ReadSheet]:
    from openpyxl import load_workbook

    typed = load_workbook(BytesIO(data))
    worked = load_workbook(BytesIO(data), read_only=True, data_only=True)  # reads a sheet when it is asked for
    return {sheet.title: _sheet(sheet, _results(sheet, worked)) for sheet in typed.worksheets}


def _results(typed: Any, worked: Any) -> dict[tuple[int, int], Any]:
    """What the formulas of a sheet came to, by row and column: cells that hold a value."""
    formulas = {at for at, cell in typed._cells.items() if cell.data_type == "f"}
    if not formulas:
        return {}
    sheet = worked[typed.title]
    sheet.reset_dimensions()  # a file may say less than it holds
    cells = (cell for row in sheet.iter_rows() for cell in row if cell.value is not None)
    return {at: cell for cell in cells if (at := (cell.row, cell.column)) in formulas}


def _sheet(typed: Any, results: dict[tuple[int, int], Any]) -> ReadSheet:
    last_row, last_column = used(typed)
    merged = {
        (row, column): str(area)
        for area in typed.merged_cells.ranges
        for row in range(area.min_row, min(area.max_row, last_row) + 1)
        for column in range(area.min_col, min(area.max_col, last_column) + 1)
    }
    rows = []
    for number, cells in enumerate(typed.iter_rows(max_row=last_row, max_col=last_column), start=1):
        formulas = frozenset(at for at, cell in enumerate(cells) if cell.data_type == "f")
        shown = [results.get((c.row, c.column)) if at in formulas else c for at, c in enumerate(cells)]
        values = tuple(_value(one, cell, merged) for one, cell in zip(shown, cells, strict=True))
        rows.append(ReadRow(number, values, bool(typed.row_dimensions[number].hidden), _struck(shown), formulas))
    return ReadSheet(typed.title, tuple(rows), typed.sheet_state != "visible", _hidden_columns(typed))


def _struck(cells: Iterable[Any]) -> bool:
    """Something that is filled in is struck through by hand."""
    return any(c is not None and c.value not in (None, "") and c.font and c.font.strike for c in cells)


def _hidden_columns(sheet: Any) -> tuple[int, ...]:
    spans = (d for d in sheet.column_dimensions.values() if d.hidden)
    return tuple(
        sorted({at - 1 for d in spans for at in range(d.min or 0, min(d.max or 0, sheet.max_column) + 1)} - {-1})
    )


def used(*sheets: Any) -> tuple[int, int]:
    """The last row and column in which anything stands; a row that was deleted leaves empty cells at a sheet's end."""
    cells = [at for sheet in sheets for at, cell in sheet._cells.items() if cell.value is not None]
    return max((row for row, _ in cells), default=1), max((column for _, column in cells), default=1)


def _value(shown: Any, typed: Any, merged: dict[tuple[int, int], str]) -> CellValue:
    """What a cell holds; `shown` is what it came to, None where that was never worked out."""
    if area := merged.get((typed.row, typed.column)):
        return Fault("merged", area)
    if shown is None:
        return Fault("uncalculated", str(typed.value))
    value = shown.value
    if shown.data_type == "e":
        return Fault("error", str(value))
    if value is None:
        return ""
    if isinstance(value, datetime):
        return value.date() if value.time() == time(0) else value
    if isinstance(value, time | timedelta):
        return str(value)
    if isinstance(value, int | float) and not isinstance(value, bool):
        looks = shown.number_format or ""
        money = CURRENCY.search(looks)
        if money and (sign := (money[1] or money[2]).strip()) not in OURS:
            return Fault("currency", sign)
        if "%" in looks:
            return Percent(value)
    return value if isinstance(value, str | int | float | bool | date) else str(value)

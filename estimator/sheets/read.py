"""A workbook somebody hands in, in; its sheets as plain cells, or what is wrong with the file, out."""

import re
from collections.abc import Iterable
from datetime import date, datetime, time, timedelta
from io import BytesIO
from pathlib import Path
from typing import Any

from estimator.disk.read import read_bytes
from estimator.model.frozen import Frozen
from estimator.model.problem import Place, Problem
from estimator.model.say import Say
from estimator.sheets import problems as p
from estimator.sheets.fault import Fault
from estimator.sheets.gate import gate
from estimator.sheets.percent import Percent

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

    values = load_workbook(BytesIO(data), data_only=True)
    formulas = load_workbook(BytesIO(data), data_only=False)
    return {sheet.title: _sheet(sheet, formulas[sheet.title]) for sheet in values.worksheets}


def _sheet(values: Any, formulas: Any) -> ReadSheet:
    last_row, last_column = used(values, formulas)
    merged = {
        (row, column): str(area)
        for area in values.merged_cells.ranges
        for row in range(area.min_row, min(area.max_row, last_row) + 1)
        for column in range(area.min_col, min(area.max_col, last_column) + 1)
    }
    rows = tuple(
        ReadRow(
            number,
            _cells(shown, typed, merged),
            bool(values.row_dimensions[number].hidden),
            _struck(shown),
            frozenset(at for at, cell in enumerate(typed) if cell.data_type == "f"),
        )
        for number, (shown, typed) in enumerate(
            zip(
                values.iter_rows(max_row=last_row, max_col=last_column),
                formulas.iter_rows(max_row=last_row, max_col=last_column),
                strict=True,
            ),
            start=1,
        )
    )
    return ReadSheet(values.title, rows, values.sheet_state != "visible", _hidden_columns(values))


def _struck(cells: Iterable[Any]) -> bool:
    """Something that is filled in is struck through by hand."""
    return any(cell.value not in (None, "") and cell.font and cell.font.strike for cell in cells)


def _hidden_columns(sheet: Any) -> tuple[int, ...]:
    spans = (d for d in sheet.column_dimensions.values() if d.hidden)
    return tuple(
        sorted({at - 1 for d in spans for at in range(d.min or 0, min(d.max or 0, sheet.max_column) + 1)} - {-1})
    )


def used(*sheets: Any) -> tuple[int, int]:
    """The last row and column in which anything stands; a row that was deleted leaves empty cells at a sheet's end."""
    cells = [at for sheet in sheets for at, cell in sheet._cells.items() if cell.value is not None]
    return max((row for row, _ in cells), default=1), max((column for _, column in cells), default=1)


def _cells(shown: Iterable[Any], typed: Iterable[Any], merged: dict[tuple[int, int], str]) -> tuple[CellValue, ...]:
    return tuple(
        Fault("merged", merged[at.row, at.column]) if (at.row, at.column) in merged else _value(at, formula)
        for at, formula in zip(shown, typed, strict=True)
    )


def _value(cell: Any, formula: Any) -> CellValue:
    value = cell.value
    if cell.data_type == "e":
        return Fault("error", str(value))
    if value is None:
        return Fault("uncalculated", str(formula.value)) if formula.data_type == "f" else ""
    if isinstance(value, datetime):
        return value.date() if value.time() == time(0) else value
    if isinstance(value, time | timedelta):
        return str(value)
    if isinstance(value, int | float) and not isinstance(value, bool):
        looks = cell.number_format or ""
        money = CURRENCY.search(looks)
        if money and (sign := (money[1] or money[2]).strip()) not in OURS:
            return Fault("currency", sign)
        if "%" in looks:
            return Percent(value)
    return value if isinstance(value, str | int | float | bool | date) else str(value)

"""A workbook in, what its reader sees out: each cell's value, its formula, how its number is shown, and what cannot be seen.

Merged cells count by their words, which stand in the first of them.
"""

import re
from collections.abc import Iterator
from datetime import date
from io import BytesIO
from pathlib import Path
from typing import Any

from estimator.sheets.looks import cut_rows, unreadable

HIDDEN, SHOWN, CUT_OFF, MISSING = "hidden", "shown", "too low for its words", "missing"

Seen = dict[str, str]
"""What stands at a cell such as F12, at `row 12`, `column F` or `sheet`, in words that two programs write alike."""

TOO_SMALL = 1.5  # points of height, or characters of width
CURRENCY = re.compile(r"\[\$([^\]-]*)(-[^\]]*)?\]")
COLOUR = re.compile(r"\[[A-Za-z]+\d*\]")
NO_INK = re.compile(r'[_*].|["\\\s]')


def seen(path: Path) -> dict[str, Seen]:
    """Every sheet by its name; none where the file is no workbook or a damaged one: `read` says what is wrong with it."""
    from openpyxl import load_workbook

    data = path.read_bytes()
    try:
        values, formulas = (load_workbook(BytesIO(data), data_only=only) for only in (True, False))
    except Exception:  # the reading library raises whatever its parsing meets in a damaged part
        return {}
    return {sheet.title: dict(_sheet(sheet, formulas[sheet.title])) for sheet in values.worksheets}


def _sheet(values: Any, formulas: Any) -> Iterator[tuple[str, str]]:
    for shown, typed in zip(values.iter_rows(), formulas.iter_rows(), strict=True):
        for cell, formula in zip(shown, typed, strict=True):
            if formula.value not in (None, ""):
                yield cell.coordinate, _told(cell, formula)
    if values.sheet_state != "visible":
        yield "sheet", HIDDEN
    hidden = [n for n, row in values.row_dimensions.items() if row.hidden or _flat(row.height)]
    yield from ((f"row {n}", HIDDEN) for n in hidden)
    yield from ((f"row {n}", CUT_OFF) for n in cut_rows(values) if n not in hidden)
    if any(values.conditional_formatting):
        yield "sheet's colors", "set by rules"
    yield from _columns(values)


def _columns(sheet: Any) -> Iterator[tuple[str, str]]:
    """The hidden columns that lie within what is written; programs group those beyond."""
    from openpyxl.utils import get_column_letter

    for column in sheet.column_dimensions.values():
        if column.hidden or _flat(column.width):
            last = min(column.max or 0, sheet.max_column)
            yield from ((f"column {get_column_letter(n)}", HIDDEN) for n in range(column.min or 1, last + 1))


def _flat(size: float | None) -> bool:
    """So low or narrow that nothing can be read in it."""
    return size is not None and size < TOO_SMALL


def _told(cell: Any, formula: Any) -> str:
    value = cell.value
    text = f"{value:.10g}" if isinstance(value, int | float) and not isinstance(value, bool) else str(value or "")
    if isinstance(value, int | float | date):
        look = as_shown(cell.number_format)
        text += f" as {look}" if look != "general" else ""
    if formula.data_type == "f":
        text += " " + "".join(str(formula.value).split())
    return f"{text} {unreadable(cell)}".rstrip()


def as_shown(number_format: str) -> str:
    """How a number above zero is shown, whichever program wrote the format.

    >>> as_shown('"$"#,##0.00'), as_shown('[$$-409]#,##0.00;[RED]-[$$-409]#,##0.00')
    ('$#,##0.00', '$#,##0.00')
    """
    first = number_format.split(";")[0]
    return NO_INK.sub("", COLOUR.sub("", CURRENCY.sub(r"\1", first))).lower()

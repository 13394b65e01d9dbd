"""A workbook in, what its reader sees out: each cell's value, its formula, how its number is shown, and what cannot be seen.

Merged cells count by their words, which stand in the first of them.
"""

import re
import zipfile
from collections.abc import Iterator
from datetime import date
from io import BytesIO
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

from estimator.disk.whole import read_bytes
from estimator.sheets.legibility import cut_rows, unreadable
from estimator.sheets.read import used

PLAIN_FOOT = re.compile(r"&\[?(?:Page|Pages|P|N|[LCR]|\d+|K[0-9A-F]{6}|\"[^\"]*\")\]?", re.IGNORECASE)
"""Marks of a page's head or foot that put in its number or its look."""
HIDDEN, SHOWN, CUT_OFF, MISSING = "hidden", "shown", "too low for its words", "missing"

Seen = dict[str, str]
"""What stands at a cell such as F12, at `row 12`, `column F` or `sheet`, in words that two programs write alike."""

TOO_SMALL = 1.5  # points of height, or characters of width
CURRENCY = re.compile(r"\[\$([^\]-]*)(-[^\]]*)?\]")
COLOUR = re.compile(r"\[[A-Za-z]+\d*\]")
NO_INK = re.compile(r'[_*].|["\\\s]')


def cell_texts(path: Path) -> dict[str, Seen]:
    """Every sheet by its name; none where the file is no workbook or a damaged one: `read` says what is wrong with it."""
    from openpyxl import load_workbook

    data = read_bytes(path)
    try:
        values, formulas = (load_workbook(BytesIO(data), data_only=only) for only in (True, False))
        sheets = {sheet.title: dict(_sheet(sheet, formulas[sheet.title])) for sheet in values.worksheets}
        return {**sheets, **around(data)}
    except Exception:  # the reading library raises whatever its parsing meets in a damaged part
        return {}


def around(data: bytes) -> dict[str, Seen]:
    """What lies over the cells or behind them: words in boxes, titles of charts, pictures, links, programs; nothing where there is none."""
    found: Seen = {}
    with zipfile.ZipFile(BytesIO(data)) as parts:
        names = parts.namelist()
        drawn = [n for n in names if re.fullmatch(r"xl/(drawings/[^/]+\.xml|charts/chart[^/]*\.xml)", n)]
        for name in drawn:
            root = ElementTree.fromstring(parts.read(name))
            chart = "/charts/" in name
            words = [" ".join(t.text or "" for t in box.iter(f"{DRAWN}t")) for box in _boxes(root, chart)]
            if text := " | ".join(sorted(w.strip() for w in words if w.strip())):
                found[f"{'chart' if chart else 'words drawn'} {len(found) + 1}"] = text
        pictures = [n for n in names if n.startswith("xl/media/")]
        if pictures:
            found["pictures"] = str(len(pictures))
        for what, pattern in BEHIND.items():
            if any(re.match(pattern, name) for name in names):
                found[what] = SHOWN
    return {"the file": found} if found else {}


def _boxes(root: ElementTree.Element, chart: bool) -> Iterator[ElementTree.Element]:
    """Shapes with words in a drawing; the title and axis titles of a chart."""
    if chart:
        yield from (e for e in root.iter() if e.tag.endswith("}title"))
    else:
        yield from (e for e in root.iter() if e.tag.endswith("}txBody"))


DRAWN = "{http://schemas.openxmlformats.org/drawingml/2006/main}"
BEHIND: dict[str, str] = {
    "programs": r"xl/vbaProject",
    "links to other files": r"xl/externalLinks/",
    "other objects": r"xl/(embeddings|ctrlProps|activeX|oleObjects)/",
    "data from elsewhere": r"xl/(connections|queryTables|pivotTables|pivotCache)",
}


def _sheet(values: Any, formulas: Any) -> Iterator[tuple[str, str]]:
    row, column = used(values, formulas)
    rows = (sheet.iter_rows(max_row=row, max_col=column) for sheet in (values, formulas))
    for shown, typed in zip(*rows, strict=True):
        for cell, formula in zip(shown, typed, strict=True):
            if formula.value not in (None, ""):
                yield cell.coordinate, _told(cell, formula)
            if formula.comment is not None:
                yield f"note at {cell.coordinate}", str(formula.comment.text).strip()
    if values.sheet_state != "visible":
        yield "sheet", HIDDEN
    hidden = [n for n, row in values.row_dimensions.items() if row.hidden or _flat(row.height)]
    yield from ((f"row {n}", HIDDEN) for n in hidden)
    yield from ((f"row {n}", CUT_OFF) for n in cut_rows(values) if n not in hidden)
    for place in ("oddHeader", "oddFooter", "evenHeader", "evenFooter", "firstHeader", "firstFooter"):
        parts = (getattr(getattr(values, place), side).text for side in ("left", "center", "right"))
        if words := PLAIN_FOOT.sub("", " ".join(part for part in parts if part)).strip():
            yield f"page {place}", words
    if values.print_area:
        yield "print area", str(values.print_area)
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

    >>> as_shown('"$"#,##0.00'), as_shown('[$$-409]#,##0.00;[RED]-[$$-409]#,##0.00'), as_shown('0.00;"9"0.00')
    ('$#,##0.00', '$#,##0.00', '0.00 below 0 90.00')
    """
    first, *rest = (
        NO_INK.sub("", COLOUR.sub("", CURRENCY.sub(r"\1", part))).lower() for part in number_format.split(";")
    )
    below = rest[0] if rest else ""
    return first if below.strip("-()") in ("", first) else f"{first} below 0 {below}"

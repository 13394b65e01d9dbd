"""The bytes of an xlsx we wrote in; nothing out, or BrokenBook with everything that is not as it should be."""

import io
import re
import zipfile
from typing import Any
from xml.etree import ElementTree

from estimator.sheets.book import Book, Formula

ALLOWED_PARTS = (
    r"\[Content_Types\]\.xml", r"_rels/\.rels", r"docProps/(app|core)\.xml",
    r"xl/(workbook|styles|sharedStrings)\.xml", r"xl/theme/theme1\.xml", r"xl/_rels/workbook\.xml\.rels",
    r"xl/worksheets/sheet\d+\.xml", r"xl/worksheets/_rels/sheet\d+\.xml\.rels",
    r"xl/drawings/drawing\d+\.xml", r"xl/drawings/_rels/drawing\d+\.xml\.rels", r"xl/charts/chart\d+\.xml",
    r"xl/media/image\d+\.(png|jpeg)",
)  # fmt: skip
"""Every part a file of ours may hold: no comments, no links, no macros, no printer settings, no custom XML."""

FORBIDDEN_MARKS = {
    ("TargetMode", "External"), ("state", "hidden"), ("state", "veryHidden"), ("hidden", "1"), ("hidden", "true"),
}  # fmt: skip
FORBIDDEN_ELEMENTS = ("legacyDrawing", "oleObject", "ddeLink")
FORMULAS = ("f", "formula", "formula1", "formula2", "definedName")
FORBIDDEN_FUNCTIONS = ("HYPERLINK(", "WEBSERVICE(", "INDIRECT(")
"""Looked for in formulas and in what parts of the file say to each other alone: what people wrote may hold any word."""


QUOTED = re.compile(r"'[^']*'|\"[^\"]*\"")
"""A sheet's name or a text inside a formula."""


class BrokenBook(RuntimeError):
    """What was written does not read back as it should: a fault of the program, never of its user."""

    def __init__(self, faults: list[str]) -> None:
        super().__init__("; ".join(faults))
        self.faults = tuple(faults)


def verify(data: bytes, book: Book) -> None:
    """Read the file back and compare. Errors: BrokenBook."""
    faults = [*parts_not_allowed(data), *_differences(data, book)]
    if faults:
        raise BrokenBook(faults)


def parts_not_allowed(data: bytes) -> list[str]:
    """Parts, links, hidden things and names of persons that a file of ours may not hold."""
    faults = []
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        for name in archive.namelist():
            if not any(re.fullmatch(allowed, name) for allowed in ALLOWED_PARTS):
                faults.append(f"part {name} does not belong in the file")
            elif name.endswith((".xml", ".rels")):
                faults += [f"{name} holds {what}" for what in _forbidden(archive.read(name))]
        core = archive.read("docProps/core.xml").decode("utf-8")
        if re.search(r"<(dc:creator|cp:lastModifiedBy)>[^<]+<", core):
            faults.append("docProps/core.xml names a person")
    return faults


def _forbidden(part: bytes) -> list[str]:
    """Marks, elements and functions of one part that no file of ours holds, each once, in order."""
    found: list[str] = []
    for element in ElementTree.fromstring(part).iter():
        tag = _bare(element.tag)
        marks = ((_bare(name), value) for name, value in element.items())
        found += [f'{name}="{value}"' for name, value in marks if (name, value) in FORBIDDEN_MARKS]
        found += [f"<{tag}"] if tag in FORBIDDEN_ELEMENTS else []
        formula = QUOTED.sub("", element.text or "").upper() if tag in FORMULAS else ""
        found += [word for word in FORBIDDEN_FUNCTIONS if word in formula]
    return list(dict.fromkeys(found))


def _bare(name: str) -> str:
    """An XML name without its namespace."""
    return name.rpartition("}")[2]


def _differences(data: bytes, book: Book) -> list[str]:
    formulas, values = _grids(data, values=False), _grids(data, values=True)
    wanted = [sheet.name for sheet in book.sheets]
    if list(formulas) != wanted:
        return [f"sheets are {list(formulas)}, not {wanted}"]
    faults: list[str] = []
    for sheet in book.sheets:
        for r, row in enumerate(sheet.rows, start=1):
            column = 1
            for cell in row.cells:
                shown = _at(values[sheet.name], r, column)
                typed = _at(formulas[sheet.name], r, column)
                if not _same(cell.value, shown, typed):
                    faults.append(f"{sheet.name} row {r} column {column}: {cell.value!r} reads back as {shown!r}")
                column += cell.span
    return faults


Grid = list[tuple[Any, ...]]


def _grids(data: bytes, values: bool) -> dict[str, Grid]:
    """Each sheet's cells, row by row. Streamed: the look of cells, merged ones above all, is not built up again."""
    from openpyxl import load_workbook

    book = load_workbook(io.BytesIO(data), read_only=True, data_only=values)
    for sheet in book.worksheets:
        sheet.reset_dimensions()  # what the file says of its own size is not to be trusted
    return {sheet.title: list(sheet.iter_rows(values_only=True)) for sheet in book.worksheets}


def _at(grid: Grid, row: int, column: int) -> Any:
    """A cell's value, rows and columns from 1; None beyond what is there."""
    return grid[row - 1][column - 1] if row <= len(grid) and column <= len(grid[row - 1]) else None


def _same(meant: Any, shown: Any, typed: Any) -> bool:
    if meant is None or meant == "":
        return shown is None
    if isinstance(meant, Formula):
        return typed == meant.text and _same(meant.value, shown, shown)
    if isinstance(meant, str):
        return bool(shown == meant)
    if hasattr(meant, "isoformat"):
        return bool(shown == meant.isoformat())
    return isinstance(shown, int | float) and abs(float(meant) - float(shown)) < 1e-9

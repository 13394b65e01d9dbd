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


SUSPECT = (
    b"external",
    b"hidden",
    b"legacydrawing",
    b"oleobject",
    b"ddelink",
    b"hyperlink(",
    b"webservice(",
    b"indirect(",
)
"""A part in which none of these stands holds nothing forbidden; one in which it does is read element by element."""

QUOTED = re.compile(r"'[^']*'|\"[^\"]*\"")
"""A sheet's name or a text inside a formula."""


class BrokenBook(RuntimeError):
    """What was written does not read back as it should: a fault of the program, never of its user."""

    def __init__(self, faults: list[str]) -> None:
        super().__init__("; ".join(faults))
        self.faults = tuple(faults)


def verify(data: bytes, book: Book) -> None:
    """Read the file back and compare. Errors: BrokenBook."""
    faults = [*parts_not_allowed(data), *_differences(read_back(data), book)]
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
    in_small = part.lower()
    if not any(word in in_small for word in SUSPECT):
        return []
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


Shown = tuple[str | float | None, str]
"""What a cell shows, and its formula with the = before it; without a formula nothing."""
Grid = dict[tuple[int, int], Shown]
"""The cells of a sheet that hold something, by row and column from 1."""


def read_back(data: bytes) -> dict[str, Grid]:
    """Return each sheet's cells from the parts of the file themselves, as ECMA-376 (part 1, 18.3 and 18.4) has them, in order."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        parts = set(archive.namelist())
        texts = _texts(archive.read(TEXTS)) if TEXTS in parts else []
        files = {one.get("Id"): one.get("Target", "") for one in ElementTree.fromstring(archive.read(LINKS))}
        sheets = ElementTree.fromstring(archive.read(WORKBOOK)).iter(f"{MAIN}sheet")
        return {sheet.get("name", ""): _grid(archive.read(f"xl/{files[sheet.get(LINK)]}"), texts) for sheet in sheets}


WORKBOOK, LINKS, TEXTS = "xl/workbook.xml", "xl/_rels/workbook.xml.rels", "xl/sharedStrings.xml"
MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
LINK = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}id"
ESCAPED = re.compile("_x005F(_x[0-9A-Fa-f]{4}_)")
"""How a text is kept that itself looks like a code for a letter."""


def _texts(part: bytes) -> list[str]:
    found = ElementTree.fromstring(part).iter(f"{MAIN}si")
    return [ESCAPED.sub(r"\1", "".join(t.text or "" for t in one.iter(f"{MAIN}t"))) for one in found]


def _grid(part: bytes, texts: list[str]) -> Grid:
    grid: Grid = {}
    for row in ElementTree.fromstring(part).iter(f"{MAIN}row"):
        for cell in row:
            formula, value = cell.find(f"{MAIN}f"), cell.find(f"{MAIN}v")
            if value is not None and value.text:
                typed = f"={formula.text}" if formula is not None else ""
                grid[_place(cell.get("r", ""))] = _shown(value.text, cell.get("t", "n"), texts), typed
    return grid


def _shown(value: str, kind: str, texts: list[str]) -> str | float:
    return texts[int(value)] if kind == "s" else float(value) if kind == "n" else value


def _place(name: str) -> tuple[int, int]:
    """Return row and column, from 1.

    >>> _place("AB12")
    (12, 28)
    """
    letters = name.rstrip("0123456789")
    column = 0
    for letter in letters:
        column = column * 26 + ord(letter) - 64
    return int(name[len(letters) :]), column


EMPTY: Shown = None, ""


def _differences(grids: dict[str, Grid], book: Book) -> list[str]:
    wanted = [sheet.name for sheet in book.sheets]
    if list(grids) != wanted:
        return [f"sheets are {list(grids)}, not {wanted}"]
    faults: list[str] = []
    for sheet in book.sheets:
        grid = grids[sheet.name]
        for r, row in enumerate(sheet.rows, start=1):
            column = 1
            for cell in row.cells:
                shown, typed = grid.get((r, column), EMPTY)
                if not _same(cell.value, shown, typed):
                    faults.append(f"{sheet.name} row {r} column {column}: {cell.value!r} reads back as {shown!r}")
                column += cell.span
    return faults


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

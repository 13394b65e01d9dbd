"""The office program (LibreOffice): many files in by one start, each worked out anew or printed, out; and what stands in them."""

import re
import subprocess
from collections import Counter
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import Literal

from openpyxl import load_workbook

RECALCULATE_ALWAYS = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""
LONGEST_S = 900
LONG_WORD = 18  # a longer one may be broken over two lines
Cells = dict[tuple[str, str], object]


def converted(files: Iterable[Path], kind: Literal["xlsx", "pdf"], out: Path) -> None:
    """Write each file into `out`, every formula worked out anew, from a profile of its own that does not trust stored values."""
    profile = out / "profile"
    (profile / "user").mkdir(parents=True, exist_ok=True)
    (profile / "user" / "registrymodifications.xcu").write_text(RECALCULATE_ALWAYS, encoding="utf-8")
    start = [
        "soffice",
        f"-env:UserInstallation={profile.as_uri()}",
        "--headless",
        "--convert-to",
        kind,
        "--outdir",
        out,
    ]
    subprocess.run([*start, *files], check=True, capture_output=True, timeout=LONGEST_S)


def text_of(page: Path, order: Literal["layout", "raw"] = "layout") -> str:
    """Return the text of a printed file: as it lies on the page, or in the order it was drawn."""
    return subprocess.run(
        ["pdftotext", f"-{order}", page, "-"], check=True, capture_output=True, text=True, timeout=LONGEST_S
    ).stdout


def faults_in(text: str) -> list[str]:
    """What an office program shows for a column that is too narrow and for a formula that went wrong."""
    return [sign for sign in ("###", "#REF", "#VALUE", "#NAME", "Err:") if sign in text]


@cache  # the file does not change once it is written
def cells(path: Path, values: bool = True) -> Cells:
    """What stands in each cell of a workbook, by sheet and cell: its value, or its formula."""
    book = load_workbook(path, read_only=True, data_only=values)
    found = ((sheet.title, cell) for sheet in book for row in sheet.iter_rows() for cell in row)
    return {(sheet, cell.coordinate): cell.value for sheet, cell in found if cell.value is not None}


@cache
def formulas(path: Path) -> Cells:
    """The formulas of a workbook, by sheet and cell."""
    return {at: text for at, text in cells(path, values=False).items() if str(text).startswith("=")}


def parts(text: str) -> list[str]:
    """Words, parted at hyphens and between brackets too, where a line may be broken."""
    return [word for word in re.split(r"[\s\-]+|(?<=\))(?=\()", text) if word]


def clipped(file: Path, page: Path) -> dict[str, dict[str, int]]:
    """Words of cells that are missing on paper, by sheet: what does not fit its cell is not drawn."""
    on_paper = Counter(parts(text_of(page, "raw")))
    in_cells: dict[str, Counter[str]] = {}
    for (sheet, _), value in cells(file).items():
        if isinstance(value, str):
            in_cells.setdefault(sheet, Counter()).update(w for w in parts(value) if len(w) < LONG_WORD)
    missing = {
        sheet: {w: n - on_paper[w] for w, n in words.items() if n > on_paper[w]} for sheet, words in in_cells.items()
    }
    return {sheet: words for sheet, words in missing.items() if words}

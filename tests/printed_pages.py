"""A book in, on how many pages each of its sheets is printed out, as its file turns them: one a sheet and one more a break."""

import html
import io
import re
import zipfile

from estimator.sheets.book import Book
from estimator.sheets.write import write


def printed_pages(book: Book) -> dict[str, int]:
    """Return the pages of each sheet by its name, sheets that are hidden left out."""
    with zipfile.ZipFile(io.BytesIO(write(book))) as parts:
        sheets = re.findall(r'<sheet name="([^"]*)"([^>]*)>', parts.read("xl/workbook.xml").decode())
        texts = [parts.read(f"xl/worksheets/sheet{n}.xml").decode() for n in range(1, len(sheets) + 1)]
    assert len(sheets) == len(book.sheets)
    found = zip(sheets, texts, strict=True)
    return {html.unescape(name): 1 + _breaks(text) for (name, how), text in found if "hidden" not in how.lower()}


def _breaks(text: str) -> int:
    rows = re.search("<rowBreaks.*?</rowBreaks>", text)
    return rows[0].count("<brk ") if rows else 0

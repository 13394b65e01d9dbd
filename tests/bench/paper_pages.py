"""Pages and words of the demo's papers, printed by an office program: the table of docs/papers.md."""

import subprocess
import tempfile
from pathlib import Path

from estimator import demo
from estimator.cli.priced_job import priced
from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.office import office
from estimator.sheets.book import Book
from estimator.sheets.write import write

JOB = Path(demo.__file__).parent / "job.toml"


def paper_pages() -> list[str]:
    """Return the rows of the table; needs an office program and poppler's tools."""
    quote = priced(JOB, None).quote
    books = {
        "homeowner, English": homeowner(quote, "en_US"),
        "homeowner, Spanish": homeowner(quote, "es_US"),
        "crew": crew(quote, "en_US"),
        "office": office(quote),
    }
    out = [
        "| paper of the demo | printed pages | words printed | of these the law's and at the foot |",
        "|---|---|---|---|",
    ]
    with tempfile.TemporaryDirectory() as folder:
        for name, book in books.items():
            path = Path(folder) / "book.xlsx"
            path.write_bytes(write(book))
            subprocess.run(
                ["soffice", "--headless", "--convert-to", "pdf", "--outdir", folder, str(path)],
                capture_output=True,
                check=True,
            )
            pdf = str(path.with_suffix(".pdf"))
            info = subprocess.run(["pdfinfo", pdf], capture_output=True, text=True, check=True).stdout
            words = subprocess.run(["pdftotext", pdf, "-"], capture_output=True, text=True, check=True).stdout
            pages = next(line.split()[-1] for line in info.splitlines() if line.startswith("Pages"))
            foot = int(pages) * _letters(f"{book.sheets[0].footer_left} {' '.join(book.sheets[0].page_words)}")
            out.append(f"| {name} | {pages} | {_letters(words):,} | {_by_law(book):,} + {foot:,} |")
    return out


def _by_law(book: Book) -> int:
    """Words of the form of the right to cancel, its headings and lines to fill in among them, and of the sentence beside the signatures."""
    form = [sheet for sheet in book.sheets if any(c.style == "law" for row in sheet.rows for c in row.cells)]
    return sum(
        _letters(str(cell.value))
        for sheet in book.sheets
        for row in sheet.rows
        for cell in row.cells
        if sheet in form or cell.style == "cancel"
    )


def _letters(text: str) -> int:
    """Words that have a letter in them; amounts and numbers are not words."""
    return sum(any(c.isalpha() for c in word) for word in text.split())

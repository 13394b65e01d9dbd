"""LibreOffice recalculates every formula of the homeowner's, the office's and the crew's file and agrees to the cent."""

import io
import re
import subprocess
from decimal import Decimal
from pathlib import Path

import pytest
import xlsxwriter
from openpyxl import load_workbook

from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.insurer_page import insurer_page
from estimator.papers.office import office, workings
from estimator.papers.reports import inspection_report
from estimator.sheets.write import write
from estimator.tables import demo_folder, read_tables
from tests.engine.office_program import cells, converted, faults_in, formulas, text_of
from tests.made_up.quote import example_quote

PAPERS = ("home-en", "home-es", "office", "workings", "crew")
REPORTS = {"inspection": inspection_report, "insurer": insurer_page}
MARKS = {"x": True, "X": True, "no": False, 0: False, " ": False, None: False}
"""What somebody puts into a box of the agreement, and whether it counts."""


def planted(value: float) -> bytes:
    """A file whose only formula carries a value that is wrong unless it is 42."""
    out = io.BytesIO()
    book = xlsxwriter.Workbook(out, {"in_memory": True})
    sheet = book.add_worksheet("One")
    sheet.write_number(0, 0, 6)
    sheet.write_formula(0, 1, "=A1*7", None, value)
    book.close()
    return out.getvalue()


def papers() -> dict[str, bytes]:
    quote = example_quote()
    tables = read_tables(demo_folder(), quote.day).tables
    assert tables is not None
    books = {
        "home-en": homeowner(quote, "en_US"),
        "home-es": homeowner(quote, "es_US"),
        "office": office(quote, tables),
        "workings": workings(quote, tables),
        "crew": crew(quote, "es_US", tables=tables),
    }
    return {name: write(books[name]) for name in PAPERS}


def row_of(path: Path, sheet: str, column: str, text: str) -> int:
    """The last row of a sheet in which the cell of this column ends with this text."""
    found = ((at, value) for (name, at), value in cells(path).items() if name == sheet and at.startswith(column))
    return max(int(at[1:]) for at, value in found if str(value).endswith(text))


def typed_in(path: Path, sheet: str, cell: str, value: object) -> bytes:
    """The file after somebody typed this into a cell."""
    book = load_workbook(path)
    book[sheet][cell].value = value
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The papers, and what was typed into them; beside them `worked/` and `printed/`."""
    place = tmp_path_factory.mktemp("papers")
    for name, data in papers().items():
        (place / f"{name}.xlsx").write_bytes(data)
    home, behind = place / "home-en.xlsx", place / "workings.xlsx"
    box, rate = f"A{row_of(home, 'Agreement', 'B', '(cleanout)')}", f"E{row_of(behind, 'Costs A', 'A', 'own')}"
    assert cells(behind)["Costs A", rate] == 0.4
    changed = {f"marked-{n}": typed_in(home, "Agreement", box, mark) for n, mark in enumerate(MARKS)}
    changed |= {"tried": typed_in(behind, "Costs A", rate, 0.35), "planted": planted(999.0)}
    for name, data in changed.items():
        (place / f"{name}.xlsx").write_bytes(data)
    converted(sorted(place.glob("*.xlsx")), "xlsx", place / "worked")
    for name, book in REPORTS.items():
        (place / f"{name}.xlsx").write_bytes(write(book(example_quote(), "en_US")))
    shown = [path for path in sorted(place.glob("*.xlsx")) if path.stem not in changed]
    converted(shown, "pdf", place / "printed")
    return place


def test_the_profile_is_one_that_recalculates(folder: Path) -> None:
    assert cells(folder / "worked" / "planted.xlsx")["One", "B1"] == 42


def test_every_formula_agrees_to_the_cent(folder: Path) -> None:
    count = 0
    for name in PAPERS:
        ours, theirs = cells(folder / f"{name}.xlsx"), cells(folder / "worked" / f"{name}.xlsx")
        for at in formulas(folder / f"{name}.xlsx"):
            off = abs(Decimal(str(round(theirs[at], 6))) - Decimal(str(round(ours[at], 6))))
            assert off < Decimal("0.005"), f"{name} {at}"
            count += 1
    assert count > 20


def test_a_rate_tried_by_the_office_moves_the_total_as_the_program_would(folder: Path) -> None:
    """Margin 40 → 35 %: 8,601.80 × 1.10 ÷ 0.65 = 14,556.89, rounded up to the next 25, and the rest as it was. [computed]"""
    path = folder / "worked" / "tried.xlsx"
    own, total = (cells(path)["Costs A", f"F{row_of(path, 'Costs A', 'A', text)}"] for text in ("own", "Total"))
    assert round(own, 2) == 14556.89
    assert total == 14575 + 750  # 15,769.97 was rounded up to 15,775; the example's 750 on top stand as they are


@pytest.mark.parametrize("mark", MARKS)
def test_a_box_that_is_marked_is_counted(folder: Path, mark: object) -> None:
    """A cleanout of 250, where the box holds an x; a no is no. [by hand]"""
    path = folder / "worked" / f"marked-{list(MARKS).index(mark)}.xlsx"
    assert cells(path)["Agreement", f"C{row_of(path, 'Agreement', 'B', '(cleanout)') + 2}"] == (
        250 if MARKS[mark] else 0
    )


def test_nothing_shows_as_hashes(folder: Path) -> None:
    pages = sorted((folder / "printed").glob("*.pdf"))
    assert len(pages) == len(PAPERS) + len(REPORTS)
    assert [(page.name, found) for page in pages if (found := faults_in(text_of(page)))] == []


@pytest.mark.parametrize("name", REPORTS)
def test_a_short_report_is_one_page_and_so_one_page_wide(folder: Path, name: str) -> None:
    page = folder / "printed" / f"{name}.pdf"
    said = subprocess.run(["pdfinfo", page], check=True, capture_output=True, text=True).stdout
    assert re.search(r"Pages:\s+1\b", said)
    assert re.search(r"612 x 792 pts \(letter\)", said)

"""A quote of twelve options and one of a hundred and fifty lines, from their notes to printed pages in an office program.

Nothing is clipped, nothing shows as hashes, every sheet begins a page, and each page begins where the file says.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest
from openpyxl import load_workbook

from estimator.fieldnotes import read_job
from estimator.model.offer import Quote
from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.office import office, workings
from estimator.pipeline import run
from estimator.quote.recommend import is_visit
from estimator.sheets.book import Book
from estimator.sheets.paging import parted_blocks
from estimator.sheets.write import write
from estimator.tables import demo_folder, read_tables
from estimator.tables.tables import Tables
from tests.engine.large_houses import many_lines, twelve_options
from tests.engine.office_program import clipped, converted, faults_in, text_of

HOUSES: dict[str, Callable[[Path], Path]] = {"twelve": twelve_options, "many": many_lines}
PAPERS: dict[str, Callable[[Quote, Tables], Book]] = {
    "home-en": lambda quote, tables: homeowner(quote, "en_US"),
    "home-es": lambda quote, tables: homeowner(quote, "es_US"),
    "crew": lambda quote, tables: crew(quote, "en_US", tables=tables),
    "office": lambda quote, tables: office(quote, tables),
    "workings": lambda quote, tables: workings(quote, tables),
}
ALL = [f"{house}-{paper}" for house in HOUSES for paper in PAPERS]


@dataclass(frozen=True)
class Printed:
    """A book, its file, the text of every page that the office program printed, and the row breaks of each sheet."""

    book: Book
    file: Path
    pages: tuple[str, ...]
    breaks: list[list[int]]


@pytest.fixture(scope="module")
def quotes(tmp_path_factory: pytest.TempPathFactory) -> dict[str, tuple[Quote, Tables]]:
    out = {}
    for name, build in HOUSES.items():
        job = read_job(build(tmp_path_factory.mktemp(name))).job
        assert job is not None
        tables = read_tables(demo_folder(), job.day).tables
        assert tables is not None
        quote = run(job, tables, job.day).quote
        assert quote is not None
        out[name] = (quote, tables)
    return out


@pytest.fixture(scope="module")
def printed(
    quotes: dict[str, tuple[Quote, Tables]], tmp_path_factory: pytest.TempPathFactory
) -> Callable[[str], Printed]:
    place = tmp_path_factory.mktemp("large")
    books = {f"{h}-{p}": make(*quotes[h]) for h in HOUSES for p, make in PAPERS.items()}
    for name, book in books.items():
        (place / f"{name}.xlsx").write_bytes(write(book))
    converted(sorted(place.glob("*.xlsx")), "pdf", place)

    @cache
    def one(name: str) -> Printed:
        text = text_of(place / f"{name}.pdf")
        breaks = [[b.id for b in sheet.row_breaks.brk] for sheet in load_workbook(place / f"{name}.xlsx")]
        return Printed(books[name], place / f"{name}.xlsx", tuple(text.split("\f")[:-1]), breaks)

    return one


def test_there_are_twelve_options_and_a_hundred_and_fifty_printed_lines(
    quotes: dict[str, tuple[Quote, Tables]],
) -> None:
    repairs = [option for option in quotes["twelve"][0].options if not is_visit(option)]
    assert len(repairs) == 12  # and the visit that makes firm what is not
    sheet = next(s for s in homeowner(quotes["many"][0], "en_US").sheets if s.name == "Option A")
    lines = [row for row in sheet.rows if len(row.cells) == 3 and row.cells[2].style == "money"]
    assert len(lines) >= 150


@pytest.mark.parametrize("name", ALL)
def test_nothing_shows_as_hashes_or_an_error(printed: Callable[[str], Printed], name: str) -> None:
    assert faults_in("\n".join(printed(name).pages)) == []


@pytest.mark.parametrize("name", ALL)
def test_every_word_of_every_cell_stands_on_a_page(printed: Callable[[str], Printed], name: str) -> None:
    one = printed(name)
    assert clipped(one.file, one.file.with_suffix(".pdf")) == {}


@pytest.mark.parametrize("name", ALL)
def test_every_page_begins_where_the_file_says(printed: Callable[[str], Printed], name: str) -> None:
    """One page a sheet and one more a break: were anything wider or higher than its page, there would be more."""
    one = printed(name)
    assert len(one.pages) == sum(1 + len(breaks) for breaks in one.breaks)


@pytest.mark.parametrize("name", ["twelve-home-en", "twelve-home-es", "many-home-en", "many-home-es"])
def test_each_option_of_the_first_sheet_is_whole_on_its_page(printed: Callable[[str], Printed], name: str) -> None:
    one = printed(name)
    assert parted_blocks(one.book.sheets[0].rows, one.breaks[0]) == 0


def test_the_head_of_a_long_table_stands_on_each_of_its_pages(printed: Callable[[str], Printed]) -> None:
    with_lines = [page for page in printed("many-home-en").pages if re.search(r"^\s*a mirror", page, re.MULTILINE)]
    assert len(with_lines) >= 3
    assert all(re.search(r"Work\s+Quantity\s+Amount", page) for page in with_lines)


def test_more_options_than_a_table_can_hold_are_three_sheets(printed: Callable[[str], Printed]) -> None:
    tables = [s for s in printed("twelve-home-en").book.sheets if s.name.startswith("Compare options")]
    assert [s.name for s in tables] == ["Compare options A–D", "Compare options E–H", "Compare options I–L"]

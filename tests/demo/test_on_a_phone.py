"""The homeowner's workbook as a phone shows it: three columns, each picture no wider than they are, each price and heading in them.

*Compare options* alone is wider, a column an option; each of its prices stands on the first sheet too.
"""

import io
from pathlib import Path

import pytest
from openpyxl import load_workbook

from estimator import demo
from estimator.cli.priced_job import priced
from estimator.papers.homeowner import homeowner
from estimator.sheets.fit import column_px
from estimator.sheets.write import PAGE_WIDTH_PX, write

HERE = Path(__file__).parents[1] / "jobs"
JOBS = (
    Path(demo.__file__).parent / "job.toml",
    *(HERE / name / "job.toml" for name in ("pecan", "hidden-leak", "alder")),
)
COLUMNS = 3
FIRST_PX = 75 * 7 + COLUMNS * 5
"""Three columns of 75 letters in all: they can be read on a phone held upright."""
WIDE = ("Compare options", "Comparar opciones")
TO_FILL_IN = {"Bid 2", "Bid 3", "Otro 2", "Otro 3"}
"""Heads of empty columns, for the prices of other bidders: they are written in on paper."""


def opened(path: Path, language: str):
    quote = priced(path, None).quote
    assert quote is not None
    return load_workbook(io.BytesIO(write(homeowner(quote, language))), data_only=True)


def width_px(sheet) -> int:
    dims = sheet.column_dimensions.values()
    return sum(column_px(d.width) * (min(d.max, COLUMNS) - d.min + 1) for d in dims if d.min <= COLUMNS)


def amounts(sheet) -> set[float]:
    return {float(c.value) for row in sheet.iter_rows() for c in row if isinstance(c.value, int | float)}


@pytest.mark.parametrize("language", ["en_US", "es_US"])
@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.parent.name)
def test_every_amount_heading_and_picture_stands_in_columns_a_to_c(path: Path, language: str) -> None:
    book = opened(path, language)
    narrow = [sheet for sheet in book if not sheet.title.startswith(WIDE)]
    assert len(narrow) >= 4
    for sheet in narrow:
        beyond = {c.value for row in sheet.iter_rows(min_col=COLUMNS + 1) for c in row if c.value is not None}
        assert beyond <= TO_FILL_IN, (sheet.title, beyond)
        assert width_px(sheet) <= (FIRST_PX if sheet is book.worksheets[0] else PAGE_WIDTH_PX), sheet.title
        for picture in sheet._images:
            assert picture.anchor.to.col < COLUMNS, (sheet.title, "a picture wider than the columns")


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.parent.name)
def test_each_price_of_the_wide_table_stands_on_the_first_sheet(path: Path) -> None:
    book = opened(path, "en_US")
    for sheet in (s for s in book if s.title.startswith(WIDE)):
        assert amounts(sheet) <= amounts(book.worksheets[0])

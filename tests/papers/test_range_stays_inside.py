"""The range of cost and days is on the office's sheet and on no other paper, in neither language."""

import io
import re
import zipfile
from collections.abc import Callable
from dataclasses import replace

import pytest
from openpyxl import load_workbook

from estimator.model.job import WaterTest
from estimator.model.likely_range import LikelyRange
from estimator.model.offer import Quote
from estimator.papers.budget_letter import budget_letter
from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.insurer_page import insurer_page
from estimator.papers.message import message
from estimator.papers.office import workings
from estimator.papers.reports import inspection_report, water_test_report
from estimator.sheets.book import Book
from estimator.sheets.write import write
from tests.made_up.quote import example_quote

COSTS, DAYS = (6271.31, 6272.33, 6273.35, 6274.39), (61.31, 62.33, 63.35, 64.39)
LEAKS = ("RANGEdriver", *map(str, COSTS), *map(str, DAYS), "27.17", "19.73", "43.19", "5557771", "7331")
PAPERS: tuple[Callable[[Quote, str], Book], ...] = (
    homeowner,
    water_test_report,
    inspection_report,
    budget_letter,
    insurer_page,
    crew,
)


def odd_range() -> LikelyRange:
    percents = (10, 50, 80, 90)
    return LikelyRange(
        seed=5557771, draws=7331, cost=dict(zip(percents, COSTS, strict=True)), days=dict(zip(percents, DAYS, strict=True)),
        mean_cost=6272.33, drivers=(("RANGEdriver", 100.0),), confidence_percent=80.0, contingency_needed_percent=27.17,
        contingency_percent=19.73, held_chance_percent=43.19, curve=tuple(zip(percents, COSTS, DAYS, strict=True)),
    )  # fmt: skip


@pytest.fixture(name="quote")
def _quote() -> Quote:
    plain = example_quote()
    test = WaterTest(section="under slab", covers=("main",), date=plain.day, readings=((0.0, 0.0), (20.0, 1.5)))
    plain = replace(plain, job=replace(plain.job, water_tests=(test,)))
    return replace(plain, options=tuple(replace(o, likely_range=odd_range()) for o in plain.options))


def inside(data: bytes) -> str:
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        return "\n".join(archive.read(name).decode("utf-8", "replace") for name in archive.namelist())


def found(text: str) -> list[str]:
    return [leak for leak in LEAKS if re.search(rf"(?<![\d.]){re.escape(leak)}(?!\d)", text.replace(",", ""))]


@pytest.mark.parametrize("language", ["en_US", "es_US"])
@pytest.mark.parametrize("paper", PAPERS)
def test_no_other_paper_says_a_word_of_the_range(
    paper: Callable[[Quote, str], Book], language: str, quote: Quote
) -> None:
    assert found(inside(write(paper(quote, language)))) == []
    assert found(message(quote, language)) == []


def test_the_office_reads_the_range_and_what_the_tables_lack_in_red(quote: Quote) -> None:
    data = write(workings(quote))
    assert set(found(inside(data))) >= {"RANGEdriver", "6271.31", "62.33", "5557771"}
    sheet = load_workbook(io.BytesIO(data))["Range"]
    red = [str(c.value) for row in sheet.iter_rows() for c in row if c.font.color and c.font.color.rgb == "FFA61B1B"]
    assert red == ["A contingency of 27.2 % would hold in 80 of 100 such jobs; the tables give 19.73 %, which holds in 43 of 100."] * 2  # fmt: skip


def test_a_quote_without_a_range_has_the_sheet_all_the_same() -> None:
    sheet = load_workbook(io.BytesIO(write(workings(example_quote()))))["Range"]
    texts = [str(c.value) for row in sheet.iter_rows() for c in row if c.value]
    assert not [t for t in texts if "contingency" in t]
    assert "Bad day" in texts

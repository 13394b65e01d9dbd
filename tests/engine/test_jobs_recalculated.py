"""Whole jobs, from their notes to every paper in both languages: LibreOffice agrees with each formula and prints no hashes."""

from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.demo import __file__ as demo
from estimator.fieldnotes import read_job
from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.insurer_page import insurer_page
from estimator.papers.office import office, workings
from estimator.pipeline import run
from estimator.sheets.write import write
from estimator.tables import demo_folder, read_tables
from tests.engine.office_program import cells, clipped, converted, faults_in, formulas, text_of

NAMES = (
    "alder",
    "maple",
    "pecan",
    "hidden-leak",
    "j01-hickory",
    "j02-walnut",
    "j05-alderwood",
    "j06-poplar",
    "j09-sycamore",
    "j10-chestnut",
    "j12-cedar",
)
JOBS = Path(__file__).parent.parent / "jobs"


def job_files() -> Iterator[Path]:
    yield from (JOBS / name / "job.toml" for name in NAMES)
    yield Path(demo).parent / "job.toml"


def papers(path: Path) -> Iterator[tuple[str, bytes]]:
    """Every workbook of one job, by a name of its own."""
    job = read_job(path).job
    assert job is not None, path
    tables = read_tables(demo_folder(), job.day).tables
    assert tables is not None
    quote = run(job, tables, job.day).quote
    assert quote is not None
    name = path.parent.name
    for language in ("en_US", "es_US"):
        yield f"{name}-home-{language}.xlsx", write(homeowner(quote, language))
    yield f"{name}-crew.xlsx", write(crew(quote, "es_US", tables=tables))
    yield f"{name}-insurer.xlsx", write(insurer_page(quote, "en_US"))
    yield f"{name}-office.xlsx", write(office(quote, tables))
    yield f"{name}-workings.xlsx", write(workings(quote, tables))


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """All workbooks, and beside them `out/` with each recalculated and printed, in one start of the office program each."""
    place = tmp_path_factory.mktemp("papers")
    for path in job_files():
        for name, data in papers(path):
            (place / name).write_bytes(data)
    every = sorted(place.glob("*.xlsx"))
    converted([path for path in every if formulas(path)], "xlsx", place / "out")
    converted(every, "pdf", place / "out")
    return place


def test_every_formula_of_every_paper_agrees_to_the_cent(folder: Path) -> None:
    count = 0
    for path in sorted((folder / "out").glob("*.xlsx")):
        shown, worked = cells(folder / path.name), cells(path)
        for at, text in formulas(folder / path.name).items():
            ours, theirs = shown[at], worked[at]
            assert abs(Decimal(str(round(ours, 6))) - Decimal(str(round(theirs, 6)))) < Decimal("0.005"), (
                f"{path.name} {at}: {text} is {theirs}, not {ours}"
            )
            count += 1
    assert count > 500


def test_no_page_shows_hashes_or_an_error(folder: Path) -> None:
    pages = sorted((folder / "out").glob("*.pdf"))
    assert len(pages) == len(list(folder.glob("*.xlsx")))
    for page in pages:
        assert faults_in(text_of(page)) == [], page.name


def test_no_text_is_clipped_every_word_of_every_cell_stands_on_a_page(folder: Path) -> None:
    for path in sorted(folder.glob("*.xlsx")):
        assert clipped(path, folder / "out" / path.with_suffix(".pdf").name) == {}, path.name


def test_the_total_of_each_option_is_the_same_in_the_office_s_file(folder: Path) -> None:
    for path in folder.glob("*-office.xlsx"):
        front = {at: value for (sheet, at), value in cells(path).items() if sheet == "INTERNAL"}
        shown = [
            value
            for at, value in front.items()
            if at.startswith("B") and isinstance(value, int | float) and str(front.get(f"A{at[1:]}"))[1:3] == "  "
        ]
        home = cells(path.with_name(path.name.replace("-office", "-home-en_US")))
        pages = [
            (sheet, at[1:])
            for (sheet, at), value in home.items()
            if sheet.startswith("Option ") and at.startswith("A") and value in ("Total", "Estimate, not firm")
        ]
        prices = [home[sheet, f"C{row}"] for sheet, row in pages]
        assert prices and sorted(shown) == sorted(prices), path.name  # a visit stands on the page of its option

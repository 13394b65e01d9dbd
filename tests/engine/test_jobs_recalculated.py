"""Whole jobs, from their notes to every paper in both languages: LibreOffice agrees with each formula and prints no hashes."""

import io
import re
import subprocess
from collections import Counter
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path

import pytest
from openpyxl import load_workbook

from estimator.demo import __file__ as demo
from estimator.fieldnotes import read_job
from estimator.papers.crew import crew
from estimator.papers.homeowner import homeowner
from estimator.papers.insurer_page import insurer_page
from estimator.papers.office import office, workings
from estimator.pipeline import run
from estimator.sheets.write import write
from estimator.tables import demo_folder, read_tables

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
LONG_WORD = 18  # a longer one may be broken over two lines
JOBS = Path(__file__).parent.parent / "jobs"
RECALCULATE_ALWAYS = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""


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


Cells = dict[tuple[str, str], object]


def cells(path: Path, values: bool = True) -> Cells:
    """What stands in each cell of a workbook, by sheet and cell: its value, or its formula."""
    book = load_workbook(path, read_only=True, data_only=values)
    found = ((sheet.title, cell) for sheet in book for row in sheet.iter_rows() for cell in row)
    return {(sheet, cell.coordinate): cell.value for sheet, cell in found if cell.value is not None}


def formulas(path: Path) -> Cells:
    return {at: text for at, text in cells(path, values=False).items() if str(text).startswith("=")}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """All workbooks, and beside them `out/` with each recalculated and printed, in one start of the office program each."""
    place = tmp_path_factory.mktemp("papers")
    for path in job_files():
        for name, data in papers(path):
            (place / name).write_bytes(data)
    profile = place / "profile"
    (profile / "user").mkdir(parents=True)
    (profile / "user" / "registrymodifications.xcu").write_text(RECALCULATE_ALWAYS, encoding="utf-8")
    every = sorted(place.glob("*.xlsx"))
    for kind, books in (("xlsx", [path for path in every if formulas(path)]), ("pdf", every)):
        command = [
            "soffice",
            f"-env:UserInstallation={profile.as_uri()}",
            "--headless",
            "--convert-to",
            kind,
            "--outdir",
            str(place / "out"),
        ]
        subprocess.run([*command, *map(str, books)], check=True, capture_output=True, timeout=900)
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
        text = subprocess.run(
            ["pdftotext", "-layout", str(page), "-"], check=True, capture_output=True, text=True
        ).stdout
        for sign in ("###", "#REF", "#VALUE", "#NAME", "Err:"):
            assert sign not in text, f"{page.name} {sign}"


def parts(text: str) -> list[str]:
    """Words, parted at hyphens and between brackets too, where a line may be broken."""
    return [word for word in re.split(r"[\s\-]+|(?<=\))(?=\()", text) if word]


def test_no_text_is_clipped_every_word_of_every_cell_stands_on_a_page(folder: Path) -> None:
    """What does not fit its cell is not drawn, and so is missing from the printed page."""
    for path in sorted(folder.glob("*.xlsx")):
        printed = subprocess.run(
            ["pdftotext", "-raw", str(folder / "out" / path.with_suffix(".pdf").name), "-"],
            check=True,
            capture_output=True,
            text=True,
        ).stdout
        on_paper = Counter(parts(printed))
        in_cells: dict[str, Counter[str]] = {}
        for (sheet, _), value in cells(path).items():
            if isinstance(value, str):
                in_cells.setdefault(sheet, Counter()).update(w for w in parts(value) if len(w) < LONG_WORD)
        for sheet, words in in_cells.items():
            missing = {word: count - on_paper[word] for word, count in words.items() if count > on_paper[word]}
            assert not missing, f"{path.name} {sheet}: {missing}"


def test_the_total_of_each_option_is_the_same_in_the_office_s_file(folder: Path) -> None:
    for path in folder.glob("*-office.xlsx"):
        front = load_workbook(io.BytesIO(path.read_bytes()), data_only=True)["INTERNAL"]
        home = load_workbook(folder / path.name.replace("-office", "-home-en_US"), data_only=True)
        pages = [sheet for sheet in home.worksheets if sheet.title.startswith("Option ")]
        totals = ("Total", "Estimate, not firm")
        prices = [row[2].value for sheet in pages for row in sheet.iter_rows() if row[0].value in totals]
        shown = [
            row[1].value
            for row in front.iter_rows()
            if isinstance(row[1].value, int | float) and str(row[0].value)[1:3] == "  "
        ]
        assert prices and sorted(shown) == sorted(prices), path.name  # a visit stands on the page of its option

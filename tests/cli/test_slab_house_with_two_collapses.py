"""A slab house filmed from both ends, with two collapses between and a gas line over the drain: what its papers say of it.

Depth by hand: center 2 ft 3 in, less 2 in to the top of a 4 in pipe, less 8 in, is 1 ft 5 in to the gas line.
"""

from pathlib import Path

import pytest
from openpyxl import load_workbook
from typer.testing import CliRunner

from estimator.cli.app import build

JOB = """
[job]
demo = true
number = "2026-001"
date = 2026-11-30
prepared_by = "R. Ortiz"
[customer]
name = "A. Vega"
site = "7 Made-Up Ln"
[house]
built = 1983
floor = "slab, tendons unknown"
slab_above_grade = "8 in"
soil = "firm clay"
jurisdiction = "texas lump sum"
sewer = "city"
[site]
machine = true
competent_person = "R. Ortiz"
[[line]]
name = "main"
size = "4 in"
pipe = "cast iron"
filmed = true
log = "main.txt"
ends = "city main"
"""
LOG = """front cleanout to house, riser 2ft
2 yard
5 depth 42in from lawn
9.5 slab edge
10 under tile
12 gas line 8in above pipe
14 depth 27in from tile
22-26 sag 50%
41 collapse cannot pass, soil seen
pass hall toilet, with flow, riser 22in
zero at 58
10 hole size of a half dollar, dirt
16 collapse cannot pass
"""
GAS = ("GAS LINE at the drain", "8 in above the drain", "expose it by hand", "911")


@pytest.fixture
def job(tmp_path: Path) -> Path:
    (tmp_path / "main.txt").write_text(LOG)
    (tmp_path / "job.toml").write_text(JOB)
    return tmp_path / "job.toml"


def said(*args: str) -> str:
    done = CliRunner().invoke(build(list(args)), list(args), env={"COLUMNS": "200"})
    assert done.exit_code == 0, done.output
    return " ".join(done.stdout.split())


def sheets(folder: Path, name: str) -> dict[str, list[str]]:
    (file,) = folder.rglob(name)
    book = load_workbook(file)
    return {
        sheet.title: [str(cell.value) for row in sheet.iter_rows() for cell in row if cell.value not in ("", None)]
        for sheet in book
    }


@pytest.mark.parametrize("screen", [("check",), ("options",), ("site", "marks")], ids=" ".join)
def test_a_gas_line_over_the_drain_comes_first_on_the_screen(job: Path, screen: tuple[str, ...]) -> None:
    command, *rest = screen
    text = said(command, str(job), *rest)
    assert text.startswith(GAS[0]) and all(word in text[:260] for word in GAS), text[:260]


def test_the_crew_reads_the_gas_lines_own_depth_and_the_homeowner_reads_of_it_first(job: Path) -> None:
    said("quote", str(job))
    book = job.parent / "crew.xlsx"
    said("crew", str(job), "--out", str(book), "--option", "B")
    crew = sheets(job.parent, "crew.xlsx")
    assert all(texts[0].startswith(GAS[0]) for texts in crew.values())
    row = next(text for texts in crew.values() for text in texts if "CROSSING" in text)
    assert "8 in above the drain" in row and "about 1 ft 5 in deep, not measured" in row
    inspection = next(iter(sheets(job.parent, "Inspection report*.xlsx").values()))
    assert inspection[0].startswith(GAS[0])
    homeowner = sheets(job.parent, "Drain quote*.xlsx")
    assert homeowner["Your pipe"][0].startswith(GAS[0])
    inspected = next(text for text in inspection if "from front cleanout" in text)
    assert "39 ft from front cleanout" in inspected and "from hall toilet" in inspected


def test_no_access_reaches_past_a_collapse_and_nobody_is_sent_to_the_end_he_came_from(job: Path) -> None:
    tests = said("site", str(job), "tests")
    reaches = tests.split("Camera: which access first")[1].split("Before you inflate")[0]
    assert "39 ft" in reaches and "14 ft 2 in" in reaches and "56 ft" not in reaches
    checked = said("check", str(job))
    assert checked.count("come up to this from both ends: dig to see") == 2
    assert "Come in from the other end" not in checked


def test_a_crew_file_without_a_competent_person_is_not_called_a_crews_book(job: Path) -> None:
    job.write_text(JOB.replace('competent_person = "R. Ortiz"\n', ""))
    said("quote", str(job))
    text = said("crew", str(job), "--out", str(job.parent / "crew.xlsx"), "--option", "C")
    assert text.startswith("No crew sheet yet for option C") and "competent person" in text

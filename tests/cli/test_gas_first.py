"""Somebody smells gas, or a line that may be gas runs through a drain: on every screen, site sheet and office sheet that comes before anything else."""

import json
import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator.cli.app import build
from estimator.papers.office import office, workings

HOUSE = Path(__file__).parents[1] / "cases" / "houses" / "gas-smell-beside-a-crack"
SAYS = ("GAS SMELL", "leave the house", "911", "gas company")


def said(folder: Path, *args: str) -> str:
    done = CliRunner().invoke(build(list(args)), list(args), env={"COLUMNS": "80"})
    return " ".join(done.stdout.split())


@pytest.fixture
def job(tmp_path: Path) -> Path:
    shutil.copytree(HOUSE, tmp_path / "house")
    return tmp_path / "house" / "job.toml"


SCREENS = (
    ("check",), ("options",), ("compare",), ("unknowns",), ("explain", "A1"),
    *(("site", sheet) for sheet in ("tests", "water", "levels", "marks", "grade", "cleanout", "plan")),
)  # fmt: skip


@pytest.mark.parametrize("screen", SCREENS, ids=" ".join)
def test_gas_comes_first_on_the_screen(job: Path, screen: tuple[str, ...]) -> None:
    command, *rest = screen
    text = said(job.parent, command, str(job), *rest)
    assert text.startswith(SAYS[0]) and all(word in text[:200] for word in SAYS), text[:200]


def test_a_site_sheet_says_it_as_data_too(job: Path) -> None:
    data = json.loads(CliRunner().invoke(build(["site"]), ["site", str(job), "tests", "--json"]).stdout)
    assert "911" in data["first"][0]


@pytest.mark.parametrize("screen", [("check",), ("options",), ("site", "tests")], ids=" ".join)
def test_a_line_through_the_drain_comes_first_on_the_screen_too(tmp_path: Path, screen: tuple[str, ...]) -> None:
    """Stop, leave the tool, call from outside: common practice for gas lines bored through drains."""
    shutil.copytree(HOUSE.parent / "gas-line-through-the-drain", tmp_path / "house")
    command, *rest = screen
    text = said(tmp_path, command, str(tmp_path / "house" / "job.toml"), *rest)
    assert text.startswith("STOP: another line runs through this drain") and "911" in text[:200], text[:200]


def test_what_stops_every_way_is_said_once_for_all_places(tmp_path: Path) -> None:
    shutil.copytree(HOUSE.parent / "gas-line-through-the-drain", tmp_path / "house")
    text = said(tmp_path, "options", str(tmp_path / "house" / "job.toml"))
    assert text.count("(utility-in-the-bore)") == 1
    assert text.index("No way of repair can be offered") < text.index("What it means")


def test_gas_comes_first_on_every_office_sheet(job: Path) -> None:
    from estimator.cli.priced_job import priced

    run = priced(job, None, None, None)
    for book in (office(run.quote, run.tables), workings(run.quote, run.tables)):
        for sheet in book.sheets:
            first = next(cell for row in sheet.rows for cell in row.cells if cell.value)
            assert "911" in str(first.value), sheet.name


def test_nothing_is_said_of_gas_once_the_gas_company_has_cleared_the_house(job: Path) -> None:
    cleared = (
        '\n[[approval]]\nwhat = "gas company report"\nby = "R. Example"\non = 2026-11-28\ncovers = ["gas-smell"]\n'
    )
    job.write_text(job.read_text() + cleared)
    for screen in SCREENS:
        assert "GAS SMELL" not in said(job.parent, screen[0], str(job), *screen[1:])

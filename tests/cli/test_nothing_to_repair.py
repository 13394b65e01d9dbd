"""A clean house: said honestly, a report and no offer, no failure; and never said while something is still open."""

import json
import shutil
from pathlib import Path

import pytest
from openpyxl import load_workbook
from typer.testing import CliRunner

from estimator.cli.app import build

JOBS = Path(__file__).parents[1] / "jobs"


def typed(*words: object):
    words = tuple(map(str, words))
    return CliRunner().invoke(build(words), list(words), env={"COLUMNS": "80"})


def test_options_say_that_there_is_nothing_to_repair() -> None:
    result = typed("options", JOBS / "clean-line" / "job.toml")
    assert result.exit_code == 0
    assert result.stdout.startswith("There is nothing to repair.")
    assert "$" not in result.stdout


def test_as_json_there_is_no_need_and_nothing_against_anything() -> None:
    found = json.loads(typed("options", JOBS / "clean-line" / "job.toml", "--json").stdout)
    assert found["needs"] == []


@pytest.mark.parametrize(("language", "word"), [("en_US", "We found no damage"), ("es_US", "No encontramos daño")])
def test_quote_writes_an_inspection_report_and_sells_nothing(tmp_path: Path, language: str, word: str) -> None:
    job = shutil.copytree(JOBS / "clean-line", tmp_path / "clean") / "job.toml"
    result = typed("quote", job, "--language", language)
    assert result.exit_code == 0
    assert "no offer" in result.stdout
    files = {
        path.name: path
        for path in tmp_path.rglob("*")
        if path.suffix in (".xlsx", ".txt", ".json") and "r1" in path.parts
    }
    kinds = {name.split(" clean-line")[0] for name in files}
    assert kinds >= {"Message", "Record"}
    assert not {"Drain quote", "Presupuesto de drenaje", "Office", "Crew", "Budget letter"} & kinds
    report = next(path for name, path in files.items() if name.startswith(("Inspection", "Informe de insp")))
    said = " ".join(str(cell) for sheet in load_workbook(report) for row in sheet.values for cell in row)
    assert word in said
    assert "$" not in said


def test_a_second_quote_of_a_clean_house_writes_nothing_new(tmp_path: Path) -> None:
    job = shutil.copytree(JOBS / "clean-line", tmp_path / "clean") / "job.toml"
    typed("quote", job)
    assert "nothing was written" in typed("quote", job).stdout


def test_a_test_that_proves_nothing_leaves_the_house_open() -> None:
    result = typed("options", JOBS / "hidden-leak-near-not-sealed" / "job.toml")
    assert result.exit_code == 0
    assert "There is nothing to repair." not in result.stdout
    assert "still open" in result.stdout


def test_a_utility_in_the_bore_is_no_clean_house() -> None:
    result = typed("options", JOBS / "gas-in-the-drain" / "job.toml")
    assert result.exit_code == 1
    assert "No way of repair can be offered" in result.stdout

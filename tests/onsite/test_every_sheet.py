"""Every sheet for the site comes on the terminal, as a workbook and as JSON, in both languages, and all three say the same."""

import io
import json
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from estimator.cli.app import build
from estimator.cli.commands.site import SHEETS

AFTER = """
[[lift]]
name = "front east corner"
from_walls = { "front wall" = "0", "east wall" = "0" }
raised = "2 in"

[[lift]]
name = "back east corner"
from_walls = { "front wall" = "40 ft", "east wall" = "0" }
raised = "1/2 in"

[[callback]]
on = 2027-03-02
method = "tunnel"
cause = "our work"
cost = 185
what = "slow tub"
"""


def run(*words: object) -> Result:
    texts = [str(word) for word in words]
    return CliRunner().invoke(build(texts), texts, env={"COLUMNS": "80"})


@pytest.fixture(scope="module", name="house")
def _house(issued, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("sheets") / "one"
    job: Path = issued(folder)
    assert run("quote", job, "--accepted", "C", "--on", "2026-11-20").exit_code == 0
    assert run("quote", job, "--done", "--on", "2026-11-27").exit_code == 0
    (folder / "job-after.toml").write_text(AFTER, encoding="utf-8")
    return job


@pytest.mark.parametrize("name", SHEETS)
def test_all_three_forms_say_the_same(house: Path, tmp_path: Path, name: str) -> None:
    at = house.parent if name == "callbacks" else house
    book = tmp_path / "sheet.xlsx"
    shown = run("site", at, name, "--out", book)
    assert shown.exit_code == 0, shown.output
    assert max(map(len, shown.stdout.splitlines())) <= 80
    data = json.loads(run("site", at, name, "--json").stdout)
    assert data["sheet"] == name
    first = " ".join(shown.stdout.split("\n\n")[0].split())
    assert first == f"{data['title']} {data['answer']}"
    cells = texts_of(book)
    assert data["answer"] in cells
    for block in data["blocks"]:
        assert any(block["heading"] in cell for cell in cells)


def texts_of(book: Path) -> set[str]:
    from openpyxl import load_workbook

    found = load_workbook(io.BytesIO(book.read_bytes()))
    assert len(found.sheetnames) == 1
    return {str(value) for row in found.worksheets[0].iter_rows(values_only=True) for value in row if value is not None}


@pytest.mark.parametrize("name", SHEETS)
def test_every_heading_and_sentence_is_said_in_spanish(house: Path, name: str) -> None:
    at = house.parent if name == "callbacks" else house
    english, spanish = (
        json.loads(run("site", at, name, "--json", "--language", language).stdout) for language in ("en_US", "es_US")
    )
    assert len(english["blocks"]) == len(spanish["blocks"])
    assert english["answer"] != spanish["answer"]
    for one, other in zip(english["blocks"], spanish["blocks"], strict=True):
        assert one["heading"] != other["heading"]
        assert not set(one["lines"]) & set(other["lines"])

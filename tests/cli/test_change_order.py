"""`estimator changes --order`: from what was signed to what it is now, from the records alone."""

import shutil
from pathlib import Path

import openpyxl
import pytest
from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build


def _typed(*words: object):
    typed = [*map(str, words)]
    return CliRunner().invoke(build(typed), typed)


@pytest.fixture(name="job", scope="module")
def _job(issued, tmp_path_factory):
    """The demo, its option A accepted, then a wider hole in the notes, then the second revision."""
    folder = tmp_path_factory.mktemp("larkspur")
    job = issued(folder)
    assert _typed("quote", job, "--accepted", "A", "--on", "2026-11-20").exit_code == 0
    early = _typed("changes", job, "--order", folder / "early.xlsx")
    assert (early.exit_code, (folder / "early.xlsx").exists()) == (1, False)
    assert "no revision came after it" in " ".join(early.stderr.split())
    notes = (folder / "yard.txt").read_text("utf-8")
    assert notes.count("roots 40%") == 1
    (folder / "yard.txt").write_text(notes.replace("roots 40%", "roots 60%"), "utf-8")
    text = job.read_text("utf-8")
    job.write_text(text.replace("lived_in = true", "lived_in = false"), "utf-8")
    assert _typed("quote", job).exit_code == 0
    return job


def test_a_change_order_is_written_in_the_languages_of_the_job(job, tmp_path):
    result = _typed("changes", job, "--order", tmp_path / "order.xlsx")
    assert result.exit_code == 0, result.output
    book = openpyxl.load_workbook(tmp_path / "order.xlsx", data_only=True)
    assert book.sheetnames == ["Change order", "Orden de cambio"]
    words = [str(value) for row in book["Change order"].values for value in row if value is not None]
    assert any(word.startswith("2026-131 r1, November 20, 2026") for word in words)
    assert any(word.startswith("2026-131 r2, ") for word in words)


def test_one_language_can_be_asked_for(job, tmp_path):
    _typed("changes", job, "--order", tmp_path / "order.xlsx", "--language", "es_US")
    assert openpyxl.load_workbook(tmp_path / "order.xlsx").sheetnames == ["Orden de cambio"]


def test_nothing_is_written_over(job, tmp_path):
    (tmp_path / "order.xlsx").write_text("mine")
    assert _typed("changes", job, "--order", tmp_path / "order.xlsx").exit_code == 1
    assert (tmp_path / "order.xlsx").read_text() == "mine"


def test_changes_speak_spanish(job):
    said = _typed("changes", job, "--language", "es_US").stdout
    assert "las notas, palabra por palabra" in said
    assert "What was found" not in said


def test_roots_that_moved_and_a_longer_lining_are_an_ordinary_change_order(tmp_path):
    """The spot in the yard stands 2 ft farther, one on the main 3 ft: the same options, though every length is another."""
    for name in demo.FILES:
        shutil.copyfile(Path(demo.__file__).parent / name, tmp_path / name)
    job = tmp_path / "job.toml"
    assert _typed("quote", job).exit_code == 0
    assert _typed("quote", job, "--accepted", "A", "--on", "2026-11-20").exit_code == 0
    yard, main = tmp_path / "yard.txt", tmp_path / "main.txt"
    yard.write_text(yard.read_text("utf-8").replace("22.4 ", "24.4 "), "utf-8")
    main.write_text(main.read_text("utf-8").replace("16.8-24.2 ", "16.8-27.2 "), "utf-8")
    assert _typed("quote", job).exit_code == 0
    result = _typed("changes", job, "--order", tmp_path / "order.xlsx")
    assert result.exit_code == 0, result.output
    told = _typed("changes", job)
    assert told.stdout.splitlines().count("A: Line the pipe from inside") == 1, "named once above its lines"
    assert "not offered" not in next(row for row in told.stdout.splitlines() if row.startswith("A: Line"))

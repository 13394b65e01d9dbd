"""`unknowns`: what moves each price, the most first, with what to find out; as text, in Spanish and as JSON."""

import json
import shutil
from decimal import Decimal
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build

NOTES = Path(demo.__file__).parent


@pytest.fixture(name="job")
def _job(tmp_path: Path) -> Path:
    for name in demo.FILES:
        shutil.copyfile(NOTES / name, tmp_path / name)
    return tmp_path / "job.toml"


def said(*words: object) -> str:
    texts = [str(word) for word in words]
    done = CliRunner().invoke(build(texts), texts, env={"COLUMNS": "80"})
    assert done.exit_code == 0, done.stderr
    return done.stdout


def test_each_option_has_its_unknowns_sorted_by_dollars_with_a_question_each(job: Path) -> None:
    found = json.loads(said("unknowns", job, "--json"))
    assert [entry["option"] for entry in found] == ["A", "B", "C", "D"]
    for entry in found:
        swings = [Decimal(one["swing"]) for one in entry["unknowns"]]
        assert swings and swings == sorted(swings, reverse=True)
        assert all(one["find out"] and Decimal(one["high"]) > Decimal(one["low"]) for one in entry["unknowns"])


def test_a_lining_hangs_on_the_old_pipe_and_a_dig_on_the_ground(job: Path) -> None:
    by_option = {
        e["option"]: " ".join(u["what"] for u in e["unknowns"]) for e in json.loads(said("unknowns", job, "--json"))
    }
    assert "holds its shape" in by_option["A"]
    assert "ground" in by_option["D"] and "holds its shape" not in by_option["D"]


def test_the_table_stays_within_the_window_in_both_languages(job: Path) -> None:
    english, spanish = said("unknowns", job), said("unknowns", job, "--language", "es_US")
    assert "what to find out" in english
    assert "what to find out" not in spanish
    assert all(len(line) <= 80 for line in (english + spanish).splitlines())

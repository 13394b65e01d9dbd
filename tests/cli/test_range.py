"""`options --range` and the range on the record: for the office, told again the same, and never without its warning."""

import json
import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from estimator import demo
from estimator.cli.app import build

NOTES = Path(demo.__file__).parent


def run(*words: object) -> Result:
    texts = [str(word) for word in words]
    return CliRunner().invoke(build(texts), texts, env={"COLUMNS": "80"})


@pytest.fixture(name="job")
def _job(tmp_path: Path) -> Path:
    for name in demo.FILES:
        shutil.copyfile(NOTES / name, tmp_path / name)
    return tmp_path / "job.toml"


def test_the_range_is_shown_only_when_asked_for_and_says_never_to_send_it(job: Path) -> None:
    plain, asked = run("options", job), run("options", job, "--range")
    assert "contingency" not in plain.stdout
    assert "never send this" in asked.stdout
    assert asked.stdout.startswith(plain.stdout)
    for words in ("in 90", "crew days", "What moves it", "A contingency of", "the tables give"):
        assert words in " ".join(asked.stdout.split()), words


def test_the_same_job_draws_the_same_on_screen_on_the_record_and_again(job: Path) -> None:
    shown = json.loads(run("options", job, "--range", "--json").stdout)
    assert run("quote", job).exit_code == 0
    kept = json.loads(next(job.with_suffix("").rglob("Record*.json")).read_text("utf-8"))
    assert kept["seed"] == shown["options"][0]["likely_range"]["seed"]
    assert [o["likely_range"] for o in kept["quote"]["options"]] == [o["likely_range"] for o in shown["options"]]
    assert "byte for byte" in run("quote", job, "--again", "r1").stdout

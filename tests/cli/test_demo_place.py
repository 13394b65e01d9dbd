"""A real customer at the invented place is told of it by `check`, before any quote; a demo's names are nobody's defaults."""

import shutil
from datetime import date
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build
from estimator.cli.interview.begin import known_before

NOTES = Path(demo.__file__).parent


@pytest.fixture(name="job")
def _job(tmp_path: Path) -> Path:
    (tmp_path / "demo").mkdir()
    for name in demo.FILES:
        shutil.copyfile(NOTES / name, tmp_path / "demo" / name)
    return tmp_path / "demo" / "job.toml"


def test_check_names_the_invented_place_of_a_job_that_is_no_trial(job: Path) -> None:
    words = ["check", str(job)]
    assert CliRunner().invoke(build(words), words).exit_code == 0
    job.write_text(job.read_text("utf-8").replace("demo = true", "demo = false"), "utf-8")
    checked = CliRunner().invoke(build(words), words)
    assert checked.exit_code == 1
    assert "quote/demo-place" in checked.stderr


def test_names_of_a_demo_beside_the_new_job_are_no_defaults(job: Path) -> None:
    new, today = job.parent.parent / "new" / "job.toml", date(2026, 11, 25)
    assert known_before(new, None, today).last == {}
    job.write_text(job.read_text("utf-8").replace("demo = true", "demo = false"), "utf-8")
    assert known_before(new, None, today).last["job"]["prepared_by"] == "Ines Calloway"

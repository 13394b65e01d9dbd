"""A new revision follows the acceptance it comes after: an earlier day typed is refused, and nothing is written."""

import shutil
from pathlib import Path

from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build


def _typed(*words: str):
    return CliRunner().invoke(build(words), words)


def test_a_day_before_the_acceptance_is_refused(tmp_path):
    house = tmp_path / "house"
    shutil.copytree(Path(demo.__file__).parent, house)
    job = str(house / "job.toml")
    assert _typed("quote", job).exit_code == 0
    for letter in "ABCDEF":
        if _typed("quote", job, "--accepted", letter, "--on", "2026-11-25").exit_code == 0:
            break
    else:
        raise AssertionError("no option could be accepted, so nothing was shown")
    before = sorted(house.rglob("*"))
    run = _typed("quote", job, "--on", "2026-11-24")
    assert run.exit_code == 1
    assert "(records/quoted-too-early)" in run.output
    assert sorted(house.rglob("*")) == before

"""A sound house, and one where nothing may be done: reports are written, nothing is priced, and the exit code is 0."""

import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator.cli.app import build

JOBS = Path(__file__).parent.parent / "jobs"


def ran(*typed: str):
    return CliRunner().invoke(build(list(typed)), list(typed), env={"COLUMNS": "200"})


def quoted(name: str, tmp_path: Path):
    job = shutil.copytree(JOBS / name, tmp_path / name, ignore=shutil.ignore_patterns("job")) / "job.toml"
    result = ran("quote", str(job))
    sent = sorted(path.name.split(" ")[0] for path in job.parent.rglob("to send/*"))
    inside = sorted(path.name.split(" ")[0] for path in job.parent.rglob("internal/*"))
    return result, sent, inside, job


def test_a_line_in_the_bore_gives_a_stop_notice_and_the_report_and_no_quote(tmp_path) -> None:
    result, sent, inside, job = quoted("gas-in-the-drain", tmp_path)
    assert result.exit_code == 0, result.output
    assert sent == ["Inspection", "Message", "STOP"]
    assert inside == ["Record"]
    assert "drop a wish" not in result.output and "reports only" in result.output
    again = ran("quote", str(job), "--again", "r1")
    assert again.exit_code == 0 and "byte for byte" in again.output


def test_a_sound_house_gives_reports_and_no_quote(tmp_path) -> None:
    result, sent, inside, _ = quoted("clean-line", tmp_path)
    assert result.exit_code == 0, result.output
    assert sent == ["Inspection", "Message", "Water"]
    assert inside == ["Record"]


@pytest.mark.parametrize("words", ["still picture", "Run water", "Take the level"])
def test_nobody_is_sent_back_into_a_line_with_another_s_pipe_in_it(tmp_path, words: str) -> None:
    job = JOBS / "gas-in-the-drain" / "job.toml"
    result = ran("check", str(job))
    assert result.exit_code == 0 and "Whose line is it?" in result.output
    asked = result.output.split("To find out")[1]
    assert words not in asked

"""Every problem of the command line in its exact words: tests/broken/cli-…/words.txt is typed, expected.txt is said."""

import os
import re
import shutil
from datetime import date
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator import demo
from estimator.cli.app import build
from estimator.cli.problems import PROBLEMS

BROKEN = Path(__file__).parents[1] / "broken"
NOTES = Path(demo.__file__).parent

CLEAN = """
job = { number = "1", date = 2026-11-18, prepared_by = "Ines Calloway", demo = true }
customer = { name = "Wren Castellane", site = "417 Larkspur Court" }
house = { floor = "slab", jurisdiction = "demo" }
line = [ { name = "yard", size = "4 in", pipe = "PVC", zero = "access", log = "clean.txt" } ]
"""
CLEAN_LOG = "pass front cleanout to street, with flow, riser 1ft\n1 yard lawn\n30 stop reached main\n"

ONLY_WARNED = ("cli/no-picture", "cli/not-a-picture", "cli/day-to-come", "cli/still-invented")
PICTURE = {"cli/no-picture": "photo 3 hole.jpg", "cli/not-a-picture": "photo 3 junk.jpg"}


def _stop(*_):
    raise KeyboardInterrupt


@pytest.mark.parametrize("code", [kind.code for kind in PROBLEMS])
def test_a_problem_of_the_command_line_comes_out_in_its_exact_words(code, tmp_path, monkeypatch):
    """How many lines the demo's options have is not part of the words."""
    monkeypatch.setattr("estimator.cli.views.screen.WIDEST", 1000)
    for name in demo.FILES:
        shutil.copyfile(NOTES / name, tmp_path / name)
    (tmp_path / "broken.toml").write_text("[job\n")
    (tmp_path / "clean.toml").write_text(CLEAN)
    (tmp_path / "clean.txt").write_text(CLEAN_LOG)
    (tmp_path / "main.txt").write_text(
        (NOTES / "main.txt").read_text().replace("photo 3", PICTURE.get(code, "photo 3"))
    )
    (tmp_path / "junk.jpg").write_bytes(b"no picture")
    if code == "cli/still-invented":
        text = (tmp_path / "job.toml").read_text().replace("demo = true", "demo = false")
        (tmp_path / "job.toml").write_text(text.replace('jurisdiction = "demo"', 'jurisdiction = "no sales tax"'))
    if code == "cli/own-settings":
        (tmp_path / "settings.toml").write_text('prices = "here"\n')
        monkeypatch.setenv("ESTIMATOR_SETTINGS", str(tmp_path / "settings.toml"))
    if code == "cli/stopped-half-way":
        monkeypatch.setattr("estimator.cli.repricing.reprice", _stop)
    if code == "cli/interview-open":
        monkeypatch.setattr("estimator.cli.interview.job_file.taken", lambda file: False)
    if code == "cli/day-to-come":
        monkeypatch.setattr("estimator.cli.clock.today", lambda: date(2026, 11, 19))
        issue = ["quote", str(tmp_path / "job.toml"), "--on", "2026-11-18"]
        assert CliRunner().invoke(build(issue), issue).exit_code == 0
    case = BROKEN / code.replace("/", "-")
    stands_for = {
        "JOB": tmp_path / "job.toml",
        "BROKEN": tmp_path / "broken.toml",
        "CLEAN": tmp_path / "clean.toml",
        "FOLDER": tmp_path,
    }
    words = [str(stands_for.get(word, word)) for word in (case / "words.txt").read_text("utf-8").split()]
    result = CliRunner().invoke(build(words), words, env={"COLUMNS": "1000"})
    printed = re.sub(r"A1 to .*\.  ", "A1 to ….  ", result.stderr.replace(str(tmp_path), "FOLDER"))
    printed = "".join(line for line in printed.splitlines(keepends=True) if not line.startswith("main.txt"))
    if os.environ.get("ESTIMATOR_WRITE_EXPECTED"):
        (case / "expected.txt").write_text(printed, "utf-8")
    assert result.exit_code == (0 if code in ONLY_WARNED else 130 if code == "cli/stopped-half-way" else 1)
    assert printed == (case / "expected.txt").read_text("utf-8")
    assert f"({code})" in printed

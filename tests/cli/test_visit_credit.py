"""From a visit that was signed to the repair that it is credited to, over revisions, money and the word that it was lost."""

import json
import shutil
from decimal import Decimal
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator.cli.app import build

VISIT = """
[[option]]
do = "add"
name = "Clean first"
repairs = [{ method = "clean", line = "yard" }]
"""
SAID = "Credit for the visit of November 20, 2026"


def _typed(*words: object) -> str:
    typed = [*map(str, words)]
    done = CliRunner().invoke(build(typed), typed, env={"COLUMNS": "120"})
    assert done.exit_code == 0, done.output
    return done.stdout


@pytest.fixture(name="signed", scope="module")
def _signed(issued, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo with a cleaning as option E: written as r2 and signed. No tax is charged; it costs 700, half of it is 350."""
    job = issued(tmp_path_factory.mktemp("signed"))
    job.write_text(job.read_text("utf-8") + VISIT, "utf-8")
    _typed("quote", job)
    _typed("quote", job, "--accepted", "E", "--on", "2026-11-20")
    return job


@pytest.fixture(name="job")
def _job(signed: Path, tmp_path: Path) -> Path:
    shutil.copytree(signed.parent, tmp_path, dirs_exist_ok=True)
    return tmp_path / signed.name


def _totals(job: Path, number: int) -> dict[str, Decimal]:
    (path,) = job.with_suffix("").glob(f"r{number}/internal/*.json")
    options = json.loads(path.read_text("utf-8"))["quote"]["options"]
    return {option["letter"]: Decimal(option["price"]["total"]) for option in options}


def _less(job: Path, older: int, newer: int) -> list[Decimal]:
    before, after = _totals(job, older), _totals(job, newer)
    return [before[letter] - after[letter] for letter in "ABCDE"]


def test_a_signed_visit_comes_off_each_repair_once_and_off_no_visit(job: Path) -> None:
    said = _typed("quote", job)
    assert f"{SAID}: 50% of $700, $350.00 off each repair." in said
    assert _totals(job, 2)["E"] == 700
    assert _less(job, 2, 3) == [350, 350, 350, 350, 0]
    assert "Nothing changed since r3" in _typed("quote", job)
    again = _typed("quote", job, "--again", "r3")
    assert "byte for byte" in again
    assert "−$350" in _typed("changes", job).replace("-$350", "−$350")
    _typed("quote", job, "--accepted", "A", "--on", "2026-11-21")
    assert "Nothing changed since r3" in _typed("quote", job)


def test_what_was_paid_of_it_counts_where_money_is_noted_and_the_repair_does_not_pay_it_again(job: Path) -> None:
    """Paid 200 of 700: half of 200 is 100. The 500 left and the repair are owed together."""
    _typed("money", job, "--paid", "done", "--amount", "200", "--on", "2026-11-25")
    assert f"{SAID}: 50% of $200, $100.00 off" in _typed("quote", job)
    _typed("quote", job, "--accepted", "A", "--on", "2026-11-26")
    owed = _totals(job, 2)["A"] - 100 + 500
    assert f"Still owed: ${owed:,.2f}" in _typed("money", job)
    _typed("money", job, "--paid", "done", "--amount", "50", "--on", "2026-11-27")  # for the repair: its credit stays
    assert f"Still owed: ${owed - 50:,.2f}" in _typed("money", job)
    assert "Nothing changed since r3" in _typed("quote", job)


def test_a_visit_that_was_lost_is_credited_to_nothing(job: Path) -> None:
    _typed("quote", job, "--lost", "they sold the house", "--on", "2026-11-23")
    assert "Nothing changed since r2" in _typed("quote", job)

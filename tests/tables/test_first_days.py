"""Which of two rows of one name counts is told, and what is written down for later is named; advice fits its table."""

from datetime import date

import pytest
from typer.testing import CliRunner

from estimator.cli.app import build
from estimator.tables import demo_folder
from estimator.tables.later_rows import Waiting, waiting
from tests.tables.workbench import demo, reading, with_edits

LATER = ("materials | pipe-2 | copied as | pipe-2", "materials | pipe-2 | last from | 2027-01-01")
BLANK = ("materials | pipe-2 | copied as | pipe-2", "materials | pipe-2 | last from | ")


def test_a_new_price_without_a_first_day_is_told_not_to_count(tmp_path):
    found = reading(with_edits(tmp_path, BLANK))
    assert [problem.code for problem in found.problems] == ["tables/no-first-day"]
    assert found.tables is not None
    assert found.tables.material("pipe-2").starts == date(2026, 1, 1)


def test_a_row_of_a_later_day_below_the_old_one_is_no_problem_but_is_named(tmp_path):
    found = reading(with_edits(tmp_path, LATER))
    assert found.problems == ()
    assert found.tables is not None
    assert waiting(found.tables) == (Waiting(date(2027, 1, 1), "materials", "pipe-2"),)
    assert waiting(found.tables.on(date(2027, 1, 1))) == ()
    assert waiting(demo()) == ()


def test_tables_check_names_what_begins_later(tmp_path):
    words = ["tables", "check", str(with_edits(tmp_path, LATER)), "--on", "2026-11-25"]
    checked = CliRunner().invoke(build(words), words)
    assert checked.exit_code == 0, checked.output
    assert "waiting to begin on 2027-01-01: pipe-2 in materials" in checked.stdout


@pytest.mark.parametrize(
    ("edit", "off_helps"),
    [
        ("materials | pipe-2 | cost | ten", True),
        ("materials | pipe-2 | cost | ", True),
        ("settings | stale_price_days | value | ten", False),
        ("roles | helper | wage | ten", False),
        ("roles | helper | wage | ", False),
        ("roles | helper | wage | 0", False),
        ("production | daily set-up | likely | ten", False),
    ],
)
def test_setting_a_row_off_is_advised_only_where_a_firm_may_do_without_it(tmp_path, edit, off_helps):
    found = reading(with_edits(tmp_path, [edit])).problems
    assert found
    assert ("active" in str(found[0].write)) is off_helps


def test_a_day_before_the_tables_begin_is_one_message_with_the_day_they_hold_from():
    found = reading(demo_folder(), date(2025, 6, 1))
    assert found.tables is None
    assert [problem.code for problem in found.problems] == ["tables/before-they-begin"]
    assert "2026-01-01" in str(found.problems[0].wrong)


def test_a_few_rows_that_begin_later_hide_nothing(tmp_path):
    found = reading(with_edits(tmp_path, ["materials | pipe-2 | from | 2027-01-01"]))
    assert {problem.code for problem in found.problems} >= {"tables/not-yet"}

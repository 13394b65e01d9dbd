"""A firm's figures held against its own tables as they were, and against the invented ones: doubled, swapped, sorted without them."""

from dataclasses import replace
from pathlib import Path

import pytest
from typer.testing import CliRunner

from estimator.cli.app import build
from estimator.tables import Tables, read_tables
from estimator.takeoff.quantities import FACTS
from estimator.works.methods import names
from tests.tables.workbench import DAY, UNITS, demo, with_edits

OWN = ["materials | sand | cost | 40", "materials | pipe-3 | cost | 3.10", "materials | pipe-4 | cost | 4.60"]
"""Prices of the firm's own, in the list before."""


def held(folder: Path, edits: list[str], before: Tables | None) -> list[tuple[str, str]]:
    found = read_tables(with_edits(folder, edits), DAY, UNITS, FACTS, names(), before)
    assert found.tables is not None
    return [(problem.code, problem.place.cell) for problem in found.problems]


@pytest.fixture(name="before")
def _before(tmp_path: Path) -> Tables:
    (tmp_path / "old").mkdir()
    tables = read_tables(with_edits(tmp_path / "old", OWN), DAY, UNITS, FACTS, names()).tables
    assert tables is not None
    return tables


def test_a_price_that_doubles_from_one_list_to_the_next_is_asked_about_and_a_rise_is_not(
    before: Tables, tmp_path: Path
) -> None:
    assert held(tmp_path, ["materials | sand | cost | 80", *OWN[1:]], before) == [
        ("tables/far-from-before", "row 29, cost")
    ]
    (tmp_path / "rise").mkdir()
    assert held(tmp_path / "rise", ["materials | sand | cost | 60", *OWN[1:]], before) == []


def test_what_was_answered_in_the_note_is_not_asked_again(before: Tables, tmp_path: Path) -> None:
    edits = ["materials | sand | cost | 80", "materials | sand | note | checked 80: new quarry", *OWN[1:]]
    assert held(tmp_path, edits, before) == []


def test_two_prices_in_one_anothers_rows_are_asked_about(before: Tables, tmp_path: Path) -> None:
    swapped = [OWN[0], "materials | pipe-3 | cost | 4.60", "materials | pipe-4 | cost | 3.10"]
    assert held(tmp_path, swapped, before) == [("tables/changed-places", "row 3, cost")]


def test_among_a_firms_many_new_prices_two_that_are_anothers_invented_one_by_chance_are_not_asked_about(
    tmp_path: Path,
) -> None:
    """Against the invented figures only: 2 of 5 that differ. Where 2 of 2 do, it is a swap."""
    two = ["materials | pipe-3 | cost | 4.2", "materials | pipe-4 | cost | 2.9"]
    more = ["materials | pipe-2 | cost | 1.7", "materials | pipe-6 | cost | 9", "materials | sand | cost | 30"]
    for name, edits in (("two", two), ("five", [*two, *more])):
        (tmp_path / name).mkdir()
        found = held(tmp_path / name, edits, None)
        assert found == ([("tables/changed-places", "row 3, cost")] if name == "two" else [])


def test_an_older_row_kept_for_old_quotes_is_held_against_what_it_was_itself(tmp_path: Path) -> None:
    """Sand at 28 until the spring, then 60: the row of 28 stands in both lists and is not asked about."""
    row = next(row for row in demo().rows["materials"] if row.item == "sand")
    later = replace(row, starts=DAY.replace(month=3), cost=row.cost * 2)
    before = replace(demo(), rows={**demo().rows, "materials": (*demo().rows["materials"], later)})
    edits = ["materials | sand | copied as | sand", f"materials | sand | last from | {later.starts}"]
    found = held(tmp_path, edits, before)
    assert found == [
        ("tables/far-from-before", f"row {len(demo().rows['materials']) + 2}, cost")
    ]  # the later one: 28 for 56


def test_check_and_changes_ask_of_the_tables_before(tmp_path: Path) -> None:
    (tmp_path / "a").mkdir()
    old = with_edits(tmp_path / "a", OWN)
    (tmp_path / "b").mkdir()
    new = with_edits(tmp_path / "b", ["materials | sand | cost | 80", *OWN[1:]])
    ask = "what it was before"
    assert ask not in said("check", new)
    assert ask in said("check", new, "--before", old)
    assert ask in said("changes", old, new)
    assert ask in said("check", new, in_use=old)
    assert ask not in said("check", old, in_use=old)


def said(*words: object, in_use: Path | None = None) -> str:
    typed = ["tables", *map(str, words), "--on", DAY.isoformat()]
    env = {"ESTIMATOR_TABLES": str(in_use)} if in_use else {}
    return " ".join(CliRunner().invoke(build(typed), typed, env=env).output.split())

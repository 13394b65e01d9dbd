"""What moved between two sets of tables, and tables kept in a record."""

import csv
import json
from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

from estimator.diagnosis import diagnose
from estimator.fieldnotes import read_job
from estimator.scopes.candidates import repairs
from estimator.tables import Tables
from estimator.tables.changes import changes
from estimator.tables.invented_rows import fingerprint
from tests.tables.workbench import DAY, demo, edited, reading, with_edits


def test_the_same_tables_have_no_changes() -> None:
    assert changes(demo(), demo()) == ()


def test_a_dearer_pipe_is_named_with_its_share(tmp_path: Path) -> None:
    new = reading(with_edits(tmp_path, ["materials | pipe-4 | cost | 4.41"])).tables
    assert new is not None
    assert [str(c) for c in changes(demo(), new)] == ["materials: pipe-4, cost: 4.2 -> 4.41 (+5.0 %)"]


def test_a_row_set_out_of_use_is_gone_and_a_copy_is_new(tmp_path: Path) -> None:
    edits = ["contingency | over_fill | active | no", "extras | rock | copied as | boulders"]
    new = reading(with_edits(tmp_path, edits)).tables
    assert new is not None
    assert [str(c) for c in changes(demo(), new)] == ["contingency: over_fill is gone", "extras: boulders is new"]


def test_a_newer_row_of_the_same_name_is_the_price_from_its_day_on(tmp_path: Path) -> None:
    target = edited(
        tmp_path,
        "pricing.csv",
        "sub,25,15,no,2026-01-01,yes,,office,2026-11-02\n",
        "sub,25,15,no,2026-01-01,yes,,office,2026-11-02\nsub,28,15,no,2026-12-01,yes,,owner,2026-11-20\n",
    )
    tables = reading(target).tables
    assert tables is not None
    assert tables.price_class("sub").margin_percent == 25
    assert tables.on(date(2026, 11, 30)).price_class("sub").margin_percent == 25
    later = tables.on(date(2026, 12, 1))
    assert later.price_class("sub").margin_percent == 28
    assert [str(c) for c in changes(tables, later)] == ["pricing: sub, margin_percent: 25 -> 28 (+12.0 %)"]


def test_tables_come_back_from_a_record_as_they_were() -> None:
    data = json.loads(json.dumps(demo().to_data()))
    back = Tables.from_data(data)
    assert back.rows == demo().rows
    assert (back.day, back.fingerprint, back.source) == (DAY, demo().fingerprint, demo().source)
    assert fingerprint(back.rows) == demo().fingerprint
    assert isinstance(back.material("pipe-4").cost, Decimal)


def test_a_record_from_before_a_column_was_added_is_still_read() -> None:
    data = json.loads(json.dumps(demo().to_data()))
    at = data["columns"]["recipes"].index("once")
    data["columns"]["recipes"].pop(at)
    for row in data["rows"]["recipes"]:
        row.pop(at)
    back = Tables.from_data(data)
    assert not any(recipe.once for recipe in back.recipes)


def test_settings_changed_for_one_job_leave_the_set_alone() -> None:
    changed = demo().with_settings({"small_parts_percent": "7.5"})
    assert (changed.number("small_parts_percent"), demo().number("small_parts_percent")) == (7.5, 5.0)


def test_a_price_says_itself_not_how_it_was_spelled() -> None:
    pipe = demo().material("pipe-4")
    spelled = replace(pipe, cost=Decimal("4.200"))
    rows = {**demo().rows, "materials": tuple(spelled if r is pipe else r for r in demo().rows["materials"])}
    assert fingerprint(rows) == demo().fingerprint


def test_a_price_for_a_pack_is_divided_by_the_program(tmp_path: Path) -> None:
    """A stick of 10 ft for 42.00 is 4.20 a foot; a box of 30 for 100.00 is 3.333333 each [computed]."""
    edits = ["materials | pipe-4 | cost | 42", "materials | pipe-4 | price_for | 10"]
    edits += ["materials | hanger | cost | 100", "materials | hanger | price_for | 30"]
    tables = reading(with_edits(tmp_path, edits)).tables
    assert tables is not None
    assert tables.material("pipe-4").unit_cost == Decimal("4.2")
    assert str(tables.material("hanger").unit_cost) == "3.333333"
    assert tables.material("coupling").unit_cost == tables.material("coupling").cost


def test_a_price_for_nothing_is_refused(tmp_path: Path) -> None:
    problems = reading(with_edits(tmp_path, ["materials | pipe-4 | price_for | 0"])).problems
    assert [problem.code for problem in problems] == ["tables/negative"]


def test_a_set_from_before_a_column_came_is_read_as_it_was(tmp_path: Path) -> None:
    target = with_edits(tmp_path, ["materials | pipe-4 | price_for | "])
    with (target / "materials.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.reader(file))
    at = rows[0].index("price_for")
    with (target / "materials.csv").open("w", encoding="utf-8", newline="") as file:
        csv.writer(file, lineterminator="\n").writerows([[*row[:at], *row[at + 1 :]] for row in rows])
    tables = reading(target).tables
    assert tables is not None and tables.fingerprint == demo().fingerprint


def test_a_way_of_repair_set_out_of_use_is_not_offered(tmp_path: Path) -> None:
    """A firm without a bursting rig sets the row of burst to active no, and quotes the trench."""
    job = read_job(Path(__file__).parents[1] / "jobs" / "j10-chestnut" / "job.toml").job
    tables = reading(with_edits(tmp_path, ["methods | burst | active | no"])).tables
    assert job is not None and tables is not None
    assert tables.methods_off == {"burst"} and demo().methods_off == frozenset()
    ways = {repair.method for repair in repairs(job, diagnose(job, tables), tables).repairs}
    assert "burst" not in ways and "trench" in ways
    assert "burst" in {repair.method for repair in repairs(job, diagnose(job, demo()), demo()).repairs}

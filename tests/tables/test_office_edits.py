"""Edits as an office makes them, in every table and of every kind: each ends as named, the same price, or a change that is shown.

The damage is done to the cells of the demo set; what comes out is one of: a problem at that row; rows that say the very same; a
difference that `tables changes` would tell. A figure that is wrong by a decimal point, a unit or a row must be named.
"""

import csv
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal
from functools import cache
from io import BytesIO
from pathlib import Path

import pytest
from openpyxl import load_workbook

from estimator.diagnosis import diagnose
from estimator.fieldnotes import read_job
from estimator.model.problem import Level
from estimator.pipeline import run
from estimator.scopes.candidates import repairs
from estimator.tables.changes import changes, changes_to_come
from estimator.tables.check_settings import CHOICES
from estimator.tables.check_view import Known
from estimator.tables.checked import read_raw
from estimator.tables.columns import Column, columns
from estimator.tables.csv_folder import read_folder
from estimator.tables.raw import CellValue, RawTables
from estimator.tables.read import TablesReading, demo_folder, demo_rows, demo_settings
from estimator.tables.rows import NO_NUMBER, TABLES
from estimator.takeoff.liner import CURES
from estimator.takeoff.quantities import FACTS
from estimator.takeoff.tunnel_fill import FILLS
from estimator.works.methods import names
from tests.tables.workbench import DAY, UNITS, demo, demo_bytes, edited, laid_over, reading, with_edits

FIGURES = (
    "roles",
    "crews",
    "materials",
    "equipment",
    "subs_and_fees",
    "production",
    "recipes",
    "pricing",
    "soils",
    "extras",
)
JOBS = Path(__file__).parents[1] / "jobs"


@cache
def raw() -> RawTables:
    return read_folder(demo_folder())[0]


def again(tables: RawTables) -> TablesReading:
    return read_raw(tables, (), DAY, Known(UNITS, FACTS, names(), demo_settings(), demo_rows()))


def with_cell(table: str, row: int, column: str, value: CellValue, tables: RawTables | None = None) -> RawTables:
    tables = tables or raw()
    before = tables.tables[table]
    at = before.headers.index(column)
    rows = list(before.rows)
    cells = list(rows[row].cells)
    cells[at] = value
    rows[row] = replace(rows[row], cells=tuple(cells))
    return RawTables(tables.file, {**tables.tables, table: replace(before, rows=tuple(rows))})


def cell(table: str, row: int, column: str) -> str:
    before = raw().tables[table]
    return str(before.rows[row].cells[before.headers.index(column)])


def shown(found: TablesReading) -> bool:
    """The tables differ, and the difference is told."""
    return found.tables is not None and bool(changes(demo(), found.tables) or changes_to_come(demo(), found.tables))


def money_or_time(table: str) -> Iterator[Column]:
    for column in columns(table):
        if column.amount and column.name not in ("order", "pack", "price_for"):
            yield column


SLIPS = [
    pytest.param(lambda x: x * 100, id="cents for dollars"),
    pytest.param(lambda x: x * 10, id="a decimal point to the right"),
    pytest.param(lambda x: x / 10, id="a decimal point to the left"),
    pytest.param(lambda x: x * 60, id="minutes for hours"),
    pytest.param(lambda x: x * 173, id="a month for an hour"),
    pytest.param(lambda x: x * 5, id="a roll for a foot"),
]


def everywhere(change: Callable[[str], str | None]) -> tuple[RawTables, list[tuple[str, int, Column]]]:
    """Every figure of the tables of money and time changed at once, and where: each cell must answer for itself."""
    tables, where = raw(), []
    for table in FIGURES:
        for column in money_or_time(table):
            for row in range(len(raw().tables[table].rows)):
                value = change(cell(table, row, column.header))
                if value is not None:
                    tables = with_cell(table, row, column.header, value, tables)
                    where.append((table, row, column))
    return tables, where


@pytest.mark.parametrize("slip", SLIPS)
def test_a_figure_wrong_by_its_unit_or_its_point_is_named(slip: Callable[[Decimal], Decimal]) -> None:
    tables, where = everywhere(lambda text: f"{slip(Decimal(text)):f}" if text and Decimal(text) else None)
    found = again(tables).problems
    problems = {(p.place.table, p.place.cell) for p in found}
    lost = {(p.place.table, p.place.cell.partition(",")[0]) for p in found if p.level is Level.ERROR}
    assert len(where) > 500
    for table, row, column in where:
        number = raw().tables[table].rows[row].number
        at = (table, f"row {number}, {column.header}")
        assert at in problems or (table, f"row {number}") in lost, at


def test_a_zero_where_something_is_paid_or_counted_is_named() -> None:
    tables, where = everywhere(lambda text: "0" if text and Decimal(text) else None)
    problems = {(p.place.table, p.place.cell.partition(",")[0]) for p in again(tables).problems}
    for table, row, column in where:
        number = raw().tables[table].rows[row].number
        assert (table, f"row {number}") in problems, (table, number, column.header)


@pytest.mark.parametrize("table", sorted(TABLES))
@pytest.mark.parametrize("what", ["emptied", "its neighbor's"])
def test_any_cell_emptied_or_pasted_over_is_named_or_shown_or_says_the_same(table: str, what: str) -> None:
    """Each column in a row of its own, so that each answers for itself."""
    before, tables, where = raw().tables[table], raw(), []
    for at, header in enumerate(before.headers):
        row = at % len(before.rows)
        value = "" if what == "emptied" else cell(table, row - 1, header)
        if value != cell(table, row, header):
            tables = with_cell(table, row, header, value, tables)
            where.append((row, header))
    found = again(tables)
    told = {(c.table, c.column) for c in changes(demo(), found.tables)} if found.tables else set()
    whole = any(c.what != "moved" for c in changes(demo(), found.tables)) if found.tables else False
    silent = ("note", "changed_by", "changed_on", "from", "starts", "min", "max", "why", "covers")
    for row, header in where:
        number = before.rows[row].number
        at_row = any(p.place.table == table and p.place.cell.startswith(f"row {number}") for p in found.problems)
        errors_elsewhere = found.tables is None and header != before.headers[0]
        at_row = at_row or (header == before.headers[0] and any(p.place.table == table for p in found.problems))
        assert at_row or whole or (table, header) in told or header in silent or errors_elsewhere, (row, header)


def test_a_copied_row_is_named_in_every_table() -> None:
    copied = {
        name: replace(table, rows=(*table.rows, replace(table.rows[-1], number=len(table.rows) + 2)))
        for name, table in raw().tables.items()
    }
    found = again(RawTables(raw().file, copied))
    assert {p.place.table for p in found.problems if p.code == "tables/twice"} == set(TABLES)


@pytest.mark.parametrize("table", sorted(TABLES))
def test_a_row_deleted_or_switched_off_is_named_or_shown(table: str) -> None:
    before = raw().tables[table]
    less = again(RawTables(raw().file, {**raw().tables, table: replace(before, rows=before.rows[:-1])}))
    assert less.problems or shown(less)
    off = again(with_cell(table, len(before.rows) - 1, "active", "no"))
    assert off.problems or shown(off)


@pytest.mark.parametrize(("table", "column"), [("materials", "cost"), ("subs_and_fees", "cost"), ("production", "likely"), ("equipment", "cost")])  # fmt: skip
@pytest.mark.parametrize("step", [1, -1])
def test_a_column_pasted_one_row_off_is_named(table: str, column: str, step: int) -> None:
    tables, count = raw(), len(raw().tables[table].rows)
    for row in range(max(0, -step), min(count, count - step)):
        value = cell(table, row + step, column)
        tables = with_cell(table, row, column, value, tables)
        if column == "likely":
            for other in ("low", "high"):
                tables = with_cell(table, row, other, cell(table, row + step, other), tables)
    assert any(p.code == "tables/shifted" for p in again(tables).problems)


def test_a_row_of_next_year_is_told_by_changes_in_every_table() -> None:
    day, tables = DAY + timedelta(days=60), {}
    for name, before in raw().tables.items():
        cells = list(before.rows[-1].cells)
        cells[before.headers.index("from")] = day.isoformat()
        cells[before.headers.index("active")] = "no"
        later = replace(before.rows[-1], number=len(before.rows) + 2, cells=tuple(cells))
        tables[name] = replace(before, rows=(*before.rows, later))
    found = again(RawTables(raw().file, tables)).tables
    assert found is not None
    assert changes(demo(), found) == ()
    told = changes_to_come(demo(), found)
    assert sorted((c.table, c.what, c.starts) for c in told) == [(table, "gone", day) for table in sorted(TABLES)]
    assert str(told[0]).startswith(f"from {day}: ")


@pytest.mark.parametrize(
    ("typed", "format_", "read"),
    [(0.0825, "0.00%", 8.25), (8.25, "0.00", 8.25), ("8.25%", "@", 8.25), (0.1, "0%", 10)],
)
def test_a_percent_is_read_as_the_sheet_shows_it(tmp_path: Path, typed: object, format_: str, read: float) -> None:
    book = load_workbook(BytesIO(demo_bytes()))
    for sheet, name, column in (("places", "demo", "tax_percent"), ("materials", "pipe-4", "waste_percent"), ("settings", "small_parts_percent", "value")):  # fmt: skip
        heads = [c.value for c in book[sheet][1]]
        row = next(c.row for c in book[sheet]["A"] if c.value == name)
        there = book[sheet].cell(row, heads.index(column) + 1)
        there.value, there.number_format = typed, format_
    book.save(tmp_path / "prices.xlsx")
    tables = reading(tmp_path / "prices.xlsx").tables
    assert tables is not None
    assert float(tables.place("demo").tax_percent or 0) == read
    assert float(tables.material("pipe-4").waste_percent) == read
    assert tables.number("small_parts_percent") == read


def test_a_percent_typed_as_a_share_is_named_wherever_a_percent_stands() -> None:
    tables, where = raw(), []
    for table in TABLES:
        for column in (c for c in columns(table) if c.percent):
            for row in range(len(raw().tables[table].rows)):
                text = cell(table, row, column.header)
                if text and Decimal(text) > 1:
                    tables = with_cell(table, row, column.header, f"{Decimal(text) / 100:f}", tables)
                    where.append((table, f"row {raw().tables[table].rows[row].number}, {column.header}"))
    for row, setting in enumerate(demo().settings):
        if setting.unit == "percent" and Decimal(setting.value) > 1:
            tables = with_cell("settings", row, "value", f"{Decimal(setting.value) / 100:f}", tables)
            where.append(("settings", f"row {setting.cell_row}, value"))
    problems = {(p.place.table, p.place.cell) for p in again(tables).problems}
    assert [at for at in where if at not in problems] == []


@pytest.mark.parametrize("times", [Decimal(10), Decimal("0.1")])
def test_a_setting_ten_times_too_large_or_too_small_is_named(times: Decimal) -> None:
    tables, where = raw(), []
    for row, setting in enumerate(demo().settings):
        if setting.unit not in NO_NUMBER and Decimal(setting.value):
            tables = with_cell("settings", row, "value", f"{Decimal(setting.value) * times:f}", tables)
            where.append(setting.cell_row)
    problems = {p.place.cell for p in again(tables).problems if p.place.table == "settings"}
    assert [row for row in where if f"row {row}, value" not in problems] == []


def test_a_figure_that_was_looked_at_is_not_asked_about_again_but_another_is(tmp_path: Path) -> None:
    edits = [
        "roles | helper | wage | 121.5",
        "roles | helper | note | Checked 121.50: union",
        "roles | laborer | wage | 121.5",
    ]
    found = reading(with_edits(tmp_path, edits)).problems
    assert [(p.code, p.place.cell) for p in found] == [("tables/far-from-before", "row 4, wage")]
    edits[1] = "roles | helper | note | checked 12"
    (tmp_path / "two").mkdir()
    found = reading(with_edits(tmp_path / "two", edits)).problems
    assert [p.code for p in found] == ["tables/far-from-before"] * 2


# ── dated rows replace the row they follow ────────────────────────────────────────────────────


def test_a_later_recipe_row_with_another_quantity_or_fact_replaces_the_one_it_follows(tmp_path: Path) -> None:
    target = edited(
        tmp_path,
        "recipes.csv",
        "new pipe,material,pipe-{size},,1,,,,2026-01-01,yes,,office,2026-11-02\n",
        "new pipe,material,pipe-{size},,1,,,,2026-01-01,yes,,office,2026-11-02\n"
        "new pipe,material,pipe-{size},,1.1,,not inside_work,,2026-06-01,yes,,office,2026-11-02\n",
    )
    tables = reading(target).tables
    assert tables is not None
    mine = [r for r in tables.recipes if (r.work_item, r.ref) == ("new pipe", "pipe-{size}")]
    assert [(r.per, r.when) for r in mine] == [(1.1, ("not inside_work",))]
    assert len(tables.on(date(2026, 5, 1)).recipes) == len(demo().recipes)
    assert [r.per for r in tables.on(date(2026, 5, 1)).recipes if r in tables.rows["recipes"] and r.ref == "pipe-{size}" and r.work_item == "new pipe"] == [1]  # fmt: skip


def test_one_of_two_recipes_of_one_thing_renewed_leaves_the_other(tmp_path: Path) -> None:
    rows = [r for r in demo().recipes if (r.work_item, r.ref) == ("tunnel", "tunnel dig")]
    assert len(rows) > 1
    target = laid_over(tmp_path)
    with (target / "recipes.csv").open(encoding="utf-8", newline="") as file:
        heads, *lines = csv.reader(file)
    mine = next(line for line in lines if line[0] == "tunnel" and line[2] == "tunnel dig")
    new = list(mine)
    new[heads.index("from")], new[heads.index("per")] = "2026-06-01", "1.07"
    with (target / "recipes.csv").open("w", encoding="utf-8", newline="") as file:
        csv.writer(file, lineterminator="\n").writerows([heads, *lines, new])
    tables = reading(target).tables
    assert tables is not None
    now = [r for r in tables.recipes if (r.work_item, r.ref) == ("tunnel", "tunnel dig")]
    assert len(now) == len(rows)
    assert {r.per for r in now if (r.quantity, r.when) == (rows[0].quantity, rows[0].when)} == {1.07}
    assert [r for r in now if r.per != 1.07] == rows[1:]


def test_a_later_factor_for_other_tasks_replaces_the_one_of_its_fact(tmp_path: Path) -> None:
    edits = [
        "factors | wet | copied as | wet",
        "factors | wet | last from | 2026-06-01",
        "factors | wet | tasks | pothole",
    ]
    tables = reading(with_edits(tmp_path, edits)).tables
    assert tables is not None
    assert [f.tasks for f in tables.factors if f.fact == "wet"] == [("hand dig", "hand dig inside", "machine dig", "tunnel dig", "pothole")]  # fmt: skip


# ── a line out of use closes the way that needs it ────────────────────────────────────────────


def test_lining_out_of_use_is_never_sold_without_its_line(tmp_path: Path) -> None:
    job = read_job(JOBS / "j07-oak" / "job.toml").job if (JOBS / "j07-oak").exists() else None
    folders = [f for f in sorted(JOBS.iterdir()) if (f / "job.toml").exists()]
    for folder in folders if job is None else []:
        job = read_job(folder / "job.toml").job
        ways = {r.method for r in repairs(job, diagnose(job, demo()), demo()).repairs} if job else set()
        if job and "reline" in ways:
            break
    assert job is not None
    tables = reading(with_edits(tmp_path, ["work_items | lining | active | no"])).tables
    assert tables is not None
    result = run(job, tables, job.day)
    assert "reline" not in {r.method for r in result.offers.repairs}
    assert "line-out-of-use" in {v.rule for v in result.offers.verdicts}


@pytest.mark.parametrize("key", sorted(CHOICES))
def test_a_setting_of_a_few_words_takes_no_other(tmp_path: Path, key: str) -> None:
    found = reading(with_edits(tmp_path, [f"settings | {key} | value | porridge"]))
    assert [p.code for p in found.problems] == ["tables/choice"]


def test_the_words_a_setting_may_be_are_those_the_takeoff_reads() -> None:
    assert CHOICES["tunnel_fill"] == tuple(FILLS)
    assert CHOICES["liner_cure"] == tuple(CURES)


def test_a_price_for_ten_that_is_one_of_one_is_named(tmp_path: Path) -> None:
    """$4.20 a foot and a stick of ten: a tenth of the price."""
    found = reading(with_edits(tmp_path, ["materials | pipe-4 | price_for | 10"]))
    assert [p.code for p in found.problems] == ["tables/far-from-before"]

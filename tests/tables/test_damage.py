"""Whatever is no valid value of its column, put into any cell: a named problem, or the very same tables and so the same price."""

from dataclasses import fields, replace
from datetime import date
from functools import cache

from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.sheets.fault import Fault
from estimator.tables.check_view import Known
from estimator.tables.checked import read_raw
from estimator.tables.columns import Column, columns
from estimator.tables.csv_folder import read_folder
from estimator.tables.raw import CellValue, RawTables
from estimator.tables.read import TablesReading, demo_folder, demo_settings
from estimator.tables.rows import NO_NUMBER, TABLES
from estimator.takeoff.quantities import FACTS
from estimator.works.methods import names
from tests.tables.workbench import DAY, UNITS, demo

REMARKS = ("note", "changed_by", "changed_on")  # columns no price hangs on

NO_NUMBERS: tuple[CellValue, ...] = (
    "call supplier", "24,5", "1.165,50", "1e3", "24.50.1", "--5", "0x10", "½", "٣", "12 ft", "NaN", "inf", "=2+2", "$", "-", "1,23,4",
    True, False, date(2026, 4, 20), float("nan"), float("inf"), Fault("error", "#N/A"), Fault("uncalculated", "=A1"),
    Fault("merged", "B2:B3"), "#REF!", "-1", -0.01, 10_000_001, "",
)  # fmt: skip
BY_KIND: dict[str, tuple[CellValue, ...]] = {
    "number": NO_NUMBERS,
    "dollars": NO_NUMBERS,
    "whole": (*NO_NUMBERS, "2.5", 2.5),
    "yes/no": ("maybe", "1", 1, 0, "y", "ja", "", Fault("error", "#VALUE!"), date(2026, 1, 1)),
    "day": ("11/25/2026", "2026-13-01", "2026-02-30", 46000, 1.5, "soon", "20261125", True, Fault("error", "#N/A")),
    "text": (
        True,
        False,
        date(2026, 4, 20),
        Fault("error", "#N/A"),
        Fault("merged", "A1:B2"),
        "#N/A",
        Fault("uncalculated", "=A1"),
    ),
    "words": (True, date(2026, 4, 20), Fault("error", "#N/A"), "no such word"),
}


@cache
def raw() -> RawTables:
    return read_folder(demo_folder())[0]


def bad_values(column: Column) -> tuple[CellValue, ...]:
    """What the column does not take; an unknown word too where it has a list or refers to a table."""
    values = BY_KIND[column.kind]
    if column.kind == "text" and (column.choices or column.refers or column.name in ("quantity", "fact")):
        values = (*values, "no such word")
    if column.least is None:
        values = tuple(v for v in values if v not in ("-1", -0.01))
    if column.name == "value":  # a setting may be a text, a day or a number: tested below
        values = (Fault("error", "#N/A"), Fault("merged", "A1:B2"), Fault("uncalculated", "=A1"), "#N/A")
    if column.empty:
        values = tuple(v for v in values if v != "")
    return values


def damage(table: str, row: int, column: str, value: CellValue) -> RawTables:
    before = raw().tables[table]
    header = next(c.header for c in columns(table) if c.name == column)
    headers = before.headers if header in before.headers else (*before.headers, header)  # an optional one joins
    gap: tuple[CellValue, ...] = ("",) * (len(headers) - len(before.headers))
    rows = [replace(r, cells=(*r.cells, *gap)) for r in before.rows]
    cells = list(rows[row].cells)
    cells[headers.index(header)] = value
    rows[row] = replace(rows[row], cells=tuple(cells))
    return RawTables(raw().file, {**raw().tables, table: replace(before, headers=headers, rows=tuple(rows))})


def read_again(tables: RawTables) -> TablesReading:
    return read_raw(tables, (), DAY, Known(UNITS, FACTS, names(), demo_settings()))


@st.composite
def damages(draw: st.DrawFn) -> tuple[str, int, Column, CellValue]:
    table = draw(st.sampled_from(sorted(TABLES)))
    row = draw(st.integers(0, len(raw().tables[table].rows) - 1))
    column = draw(st.sampled_from([c for c in columns(table) if c.name not in REMARKS]))
    return table, row, column, draw(st.sampled_from(bad_values(column)))


@settings(max_examples=200, deadline=None)
@given(damages())
def test_a_value_its_column_does_not_take_is_a_problem_or_changes_no_price(
    damaged: tuple[str, int, Column, CellValue],
) -> None:
    table, row, column, value = damaged
    reading = read_again(damage(table, row, column.name, value))
    if reading.tables is None:
        number = raw().tables[table].rows[row].number
        assert any(p.place.table == table and f"row {number}" in p.place.cell for p in reading.problems)
    else:
        assert priced_rows(reading) == priced_rows(TablesReading(demo(), ()))


def priced_rows(reading: TablesReading) -> dict[str, list[tuple[object, ...]]]:
    """Every value a price can hang on."""
    assert reading.tables is not None
    names = {t: [f.name for f in fields(TABLES[t][0]) if f.name not in REMARKS] for t in TABLES}
    return {t: [tuple(getattr(row, n) for n in names[t]) for row in reading.tables.rows[t]] for t in TABLES}


def test_every_number_cell_of_the_demo_refuses_a_word() -> None:
    """One value in every cell that a price is made of, none left to chance."""
    for table in (
        "roles",
        "crews",
        "materials",
        "equipment",
        "subs_and_fees",
        "production",
        "factors",
        "pricing",
        "contingency",
    ):
        for column in (c for c in columns(table) if c.amount):
            for row in range(0, len(raw().tables[table].rows), 7):
                assert read_again(damage(table, row, column.name, "call supplier")).tables is None


def test_a_setting_that_is_a_number_refuses_what_is_none() -> None:
    for row, setting in enumerate(demo().rows["settings"]):
        if getattr(setting, "unit") not in NO_NUMBER and row % 9 == 0:  # noqa: B009
            for value in ("often", "24,5", Fault("error", "#N/A"), date(2026, 4, 20), ""):
                assert read_again(damage("settings", row, "value", value)).tables is None

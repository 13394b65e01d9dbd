"""The one workbook of all tables: the same rows there and back, and the help the office was promised in it."""

import csv
from io import BytesIO
from pathlib import Path

import pytest
from openpyxl import load_workbook
from openpyxl.worksheet.worksheet import Worksheet
from typer.testing import CliRunner

from estimator.cli.app import build
from estimator.tables.as_workbook import workbook
from estimator.tables.columns import columns
from estimator.tables.rows import TABLES
from estimator.tables.table_owners import OWNERS
from estimator.wording.say import say
from tests.tables.workbench import demo, demo_bytes, edited, laid_over, reading, with_edits


@pytest.fixture(scope="module")
def book() -> dict[str, Worksheet]:
    return {sheet.title: sheet for sheet in load_workbook(BytesIO(demo_bytes())).worksheets}


def test_csv_to_workbook_and_back_changes_nothing(tmp_path: Path) -> None:
    path = tmp_path / "prices.xlsx"
    path.write_bytes(demo_bytes())
    back = reading(path)
    assert back.problems == () and back.tables is not None
    assert back.tables.rows == demo().rows
    assert back.tables.fingerprint == demo().fingerprint


def test_the_same_tables_give_the_same_bytes() -> None:
    assert workbook(demo()) == demo_bytes()


def test_every_table_has_a_sheet_behind_the_cover(book: dict[str, Worksheet]) -> None:
    assert list(book) == ["start here", *OWNERS]
    assert set(OWNERS) == set(TABLES)


def test_headers_stay_in_sight_and_say_what_they_mean(book: dict[str, Worksheet]) -> None:
    for table in TABLES:
        assert book[table].freeze_panes == "B2"
        notes = {cell.value: cell.comment.text for cell in book[table][1] if cell.comment}
        for column in columns(table):
            assert column.note in notes[column.header]


def test_every_column_that_refers_to_a_table_offers_its_rows(book: dict[str, Worksheet]) -> None:
    for table in TABLES:
        offered = {str(rule.sqref).split(":")[0]: rule.formula1 for rule in book[table].data_validations.dataValidation}
        headers = {cell.value: cell.column_letter for cell in book[table][1]}
        for column in columns(table):
            if column.refers:
                assert f"{column.refers}!$A$2" in offered[f"{headers[column.header]}2"]
    refs = {str(r.sqref): r.formula1 for r in book["recipes"].data_validations.dataValidation}
    assert any("production" in f and "materials" in f and "equipment" in f for f in refs.values())


def test_worked_out_cells_are_locked_and_prices_are_not(book: dict[str, Worksheet]) -> None:
    roles = book["roles"]
    assert roles.protection.sheet and not roles.protection.password
    assert (roles["A2"].value, roles["B2"].value, roles["C2"].value) == ("lead plumber", 38, 32)
    assert roles["F1"].value == "(an hour costs)" and roles["F2"].protection.locked
    assert not roles["B2"].protection.locked
    assert load_workbook(BytesIO(demo_bytes()), data_only=True)["roles"]["F2"].value == 50.16  # 38 × 1.32 [computed]


def test_the_tables_the_arithmetic_hangs_on_are_locked_without_a_password(book: dict[str, Worksheet]) -> None:
    for table, (keeper, _) in OWNERS.items():
        assert bool(book[table].protection.sheet) == (keeper == "with care" or table in ("roles", "pricing"))
        if keeper == "with care":
            assert book[table]["B2"].protection.locked


def test_empty_cells_and_old_prices_are_marked(book: dict[str, Worksheet]) -> None:
    rules = [
        rule.formula[0] for area in book["materials"].conditional_formatting for rule in area.rules if rule.formula
    ]
    assert 'AND($A2<>"",$F2="")' in rules
    assert 'AND($K2<>"",TODAY()-$K2>180)' in rules  # the setting stale_price_days


def test_the_cover_says_where_the_price_of_a_coupling_is(book: dict[str, Worksheet]) -> None:
    line = next(row for row in book["start here"].iter_rows(values_only=True) if row[0] == "coupling")
    cell = str(line[2])
    assert cell.startswith("materials!F")
    assert book["materials"][cell.partition("!")[2]].value == 24


def test_a_price_typed_into_the_workbook_is_the_new_price(tmp_path: Path) -> None:
    changed = load_workbook(BytesIO(demo_bytes()))
    changed["materials"]["F4"] = 4.35
    changed.save(tmp_path / "prices.xlsx")
    tables = reading(tmp_path / "prices.xlsx").tables
    assert tables is not None and str(tables.material("pipe-4").cost) == "4.35"
    assert tables.fingerprint != demo().fingerprint


def test_sorting_a_sheet_changes_no_fingerprint(tmp_path: Path) -> None:
    target = laid_over(tmp_path)
    head, *rows = (target / "materials.csv").read_text("utf-8").splitlines()
    (target / "materials.csv").write_text("\n".join([head, *reversed(rows)]) + "\n", "utf-8")
    tables = reading(target).tables
    assert tables is not None and tables.fingerprint == demo().fingerprint


def test_what_spreadsheet_programs_do_to_csv_files_is_taken(tmp_path: Path) -> None:
    """A byte order mark, semicolons, CRLF, $ signs and thousands commas (what common spreadsheet programs write)."""
    target = edited(
        tmp_path,
        "equipment.csv",
        "small excavator,excavadora chica,day,320,",
        'small excavator,excavadora chica,day,"$1,320.00",',
    )
    plain = reading(target).tables
    assert plain is not None and plain.equipment("excavator").cost == 1320
    with (target / "pricing.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.reader(file))
    with (target / "pricing.csv").open("w", encoding="utf-8-sig", newline="") as file:
        csv.writer(file, delimiter=";", lineterminator="\r\n").writerows(rows)
    assert (target / "pricing.csv").read_bytes().startswith(b"\xef\xbb\xbfclass;")
    tables = reading(target).tables
    assert tables is not None and tables.fingerprint == plain.fingerprint


def test_a_cell_of_several_names_offers_the_list_and_takes_more_than_one(book: dict[str, Worksheet]) -> None:
    headers = {cell.value: cell.column_letter for cell in book["factors"][1]}
    rules = {str(r.sqref).split(":")[0]: r for r in book["factors"].data_validations.dataValidation}
    assert not rules[f"{headers['tasks']}2"].showErrorMessage
    tax = {str(r.sqref): r.formula1 for r in book["work_items"].data_validations.dataValidation}
    assert any(formula.startswith("tax_classes!$B$2") for formula in tax.values())


def test_the_hour_worked_out_in_the_sheet_is_the_programs(tmp_path: Path) -> None:
    """52 weeks paid and 48 worked: 22 × 1.32 × 52 ÷ 48 = 31.46 [computed]."""
    lines = ["roles | helper | paid_hours | 2080", "roles | helper | worked_hours | 1920"]
    tables = reading(with_edits(tmp_path, lines)).tables
    assert tables is not None
    sheet = load_workbook(BytesIO(workbook(tables)), data_only=True)["roles"]
    assert round(sheet["F3"].value, 2) == float(round(tables.role("helper").hour, 2)) == 31.46


def test_csv_to_workbook_to_csv_changes_no_row(tmp_path: Path) -> None:
    (tmp_path / "prices.xlsx").write_bytes(demo_bytes())
    words = ["tables", "folder", str(tmp_path / "back"), "--tables", str(tmp_path / "prices.xlsx")]
    run = CliRunner().invoke(build(words), [*words, "--on", "2026-11-25"])
    assert run.exit_code == 0, run.output
    back = reading(tmp_path / "back")
    assert back.problems == () and back.tables is not None
    assert (back.tables.rows, back.tables.fingerprint) == (demo().rows, demo().fingerprint)
    assert sorted(p.name for p in tmp_path.iterdir()) == ["back", "prices.xlsx"]


def test_the_workbook_in_spanish_says_cover_and_notes_in_it_and_is_read_as_the_same_tables(tmp_path: Path) -> None:
    path = tmp_path / "precios.xlsx"
    path.write_bytes(workbook(demo(), lambda text: say(text, "es_US")))
    book = load_workbook(path)
    lines = {str(cell.value) for row in book.worksheets[0].iter_rows() for cell in row if cell.value}
    assert {"Tablas de precios", "Estas las lleva la oficina"} <= lines and "The office keeps these" not in lines
    note = book["roles"]["B1"].comment
    assert note is not None and "dólares por hora" in note.text and "no puede estar vacío" in note.text
    assert [c.value for c in book["roles"][1]][:2] == ["role", "wage"]
    found = reading(path)
    assert found.problems == () and found.tables is not None and found.tables.fingerprint == demo().fingerprint

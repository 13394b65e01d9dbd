"""The tables' workbook opened, recalculated and saved by LibreOffice, then read back: the same rows, the same prices."""

from decimal import Decimal
from io import BytesIO
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.engine.office_program import converted
from tests.tables.workbench import demo, demo_bytes, reading


@pytest.fixture(scope="module")
def handed_out(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo's workbook as it is, with a formula, and with one that goes wrong; beside them `saved/`."""
    folder = tmp_path_factory.mktemp("handed out")
    (folder / "as it is.xlsx").write_bytes(demo_bytes())
    for name, sheet, cell, formula in (("raised", "materials", "F4", "=4.2*1.05"), ("wrong", "roles", "B2", "=1/0")):
        book = load_workbook(BytesIO(demo_bytes()))
        book[sheet][cell] = formula
        book.save(folder / f"{name}.xlsx")
    converted(sorted(folder.glob("*.xlsx")), "xlsx", folder / "saved")
    return folder


def test_opened_and_saved_unchanged_it_is_the_same_set_of_tables(handed_out: Path) -> None:
    back = reading(handed_out / "saved" / "as it is.xlsx")
    assert back.problems == ()
    assert back.tables is not None
    assert back.tables.rows == demo().rows
    assert back.tables.fingerprint == demo().fingerprint


def test_a_formula_of_the_office_is_read_as_its_value(handed_out: Path) -> None:
    assert demo().material("pipe-4").cost == Decimal("4.2")
    assert [p.code for p in reading(handed_out / "raised.xlsx").problems] == ["tables/not-calculated"]
    back = reading(handed_out / "saved" / "raised.xlsx")
    assert back.problems == () and back.tables is not None
    assert back.tables.material("pipe-4").cost == Decimal("4.41")  # 4.20 × 1.05 [computed]
    assert back.tables.fingerprint != demo().fingerprint


def test_an_error_in_a_formula_is_named_with_its_cell(handed_out: Path) -> None:
    problems = reading(handed_out / "saved" / "wrong.xlsx").problems
    assert [(p.code, str(p.place)) for p in problems] == [("tables/error-value", "wrong.xlsx [roles] B2")]

"""The tables' workbook opened, recalculated and saved by LibreOffice, then read back: the same rows, the same prices."""

import subprocess
from decimal import Decimal
from io import BytesIO
from pathlib import Path

import pytest
from openpyxl import load_workbook

from tests.tables.workbench import demo, demo_bytes, reading

LONGEST_S = 600  # a first start builds a profile


def saved_by_office(path: Path, folder: Path) -> Path:
    """The workbook as the office program saves it, formulas calculated, from a profile of its own."""
    out = folder / "saved"
    profile = (folder / "profile").as_uri()
    command = ["soffice", f"-env:UserInstallation={profile}", "--headless", "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", str(out), str(path)]  # fmt: skip
    done = subprocess.run(command, capture_output=True, text=True, timeout=LONGEST_S, check=False)
    assert (out / path.name).exists(), done.stdout + done.stderr
    return out / path.name


@pytest.fixture
def handed_out(tmp_path: Path) -> Path:
    path = tmp_path / "prices.xlsx"
    path.write_bytes(demo_bytes())
    return path


def test_opened_and_saved_unchanged_it_is_the_same_set_of_tables(handed_out: Path, tmp_path: Path) -> None:
    back = reading(saved_by_office(handed_out, tmp_path))
    assert back.problems == ()
    assert back.tables is not None
    assert back.tables.rows == demo().rows
    assert back.tables.fingerprint == demo().fingerprint


def test_a_formula_of_the_office_is_read_as_its_value(tmp_path: Path) -> None:
    book = load_workbook(BytesIO(demo_bytes()))
    sheet = book["materials"]
    assert (sheet["A4"].value, sheet["F4"].value) == ("pipe-4", 4.2)
    sheet["F4"] = "=4.2*1.05"
    path = tmp_path / "prices.xlsx"
    book.save(path)
    assert [p.code for p in reading(path).problems] == ["tables/not-calculated"]
    back = reading(saved_by_office(path, tmp_path))
    assert back.problems == () and back.tables is not None
    assert back.tables.material("pipe-4").cost == Decimal("4.41")  # 4.20 × 1.05 [computed]
    assert back.tables.fingerprint != demo().fingerprint


def test_an_error_in_a_formula_is_named_with_its_cell(tmp_path: Path) -> None:
    book = load_workbook(BytesIO(demo_bytes()))
    book["roles"]["B2"] = "=1/0"
    path = tmp_path / "prices.xlsx"
    book.save(path)
    problems = reading(saved_by_office(path, tmp_path)).problems
    assert [(p.code, str(p.place)) for p in problems] == [("tables/error-value", "prices.xlsx [roles] B2")]

"""A workbook that came back: as issued, saved again with the figures untouched, or with cells that were changed."""

from io import BytesIO
from pathlib import Path

import openpyxl
import pytest
from openpyxl.styles import Font

from estimator.model.problem import CannotGoOn
from estimator.records.issue import Made, issue
from estimator.records.verify import verify

NAME = "Drain quote r1 - 417 Larkspur Court.xlsx"


def _workbook(total: object, bold: bool = False) -> bytes:
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = "Option A"
    sheet.append(["Coming and going", total])
    sheet["A1"].font = Font(bold=bold)
    out = BytesIO()
    book.save(out)
    return out.getvalue()


@pytest.fixture(name="folder")
def _folder(tmp_path, quote, inputs) -> Path:
    issue(tmp_path / "job", quote, inputs, lambda number: Made(quote, {f"to send/{NAME}": _workbook(4200)}))
    return tmp_path / "job"


def test_a_file_with_the_issued_bytes_is_as_issued(folder, tmp_path):
    (tmp_path / "back.xlsx").write_bytes((folder / "r1" / "to send" / NAME).read_bytes())
    found = verify(folder, tmp_path / "back.xlsx")
    assert (found.revision.number, found.same_bytes, found.cells) == (1, True, ())


def test_a_file_saved_again_with_the_same_figures_has_no_differing_cell(folder, tmp_path):
    (tmp_path / NAME).write_bytes(_workbook(4200.0, bold=True))
    found = verify(folder, tmp_path / NAME)
    assert (found.same_bytes, found.cells) == (False, ())


def test_a_changed_total_is_named_with_its_cell(folder, tmp_path):
    (tmp_path / NAME).write_bytes(_workbook(3200))
    (cell,) = verify(folder, tmp_path / NAME).cells
    assert (cell.sheet, cell.cell, cell.issued, cell.now) == ("Option A", "B1", "4200", "3200")


def test_a_cent_is_a_difference(folder, tmp_path):
    (tmp_path / NAME).write_bytes(_workbook(4200.01))
    assert [cell.now for cell in verify(folder, tmp_path / NAME).cells] == ["4200.01"]


def test_a_workbook_with_other_sheets_was_never_issued(folder, tmp_path):
    openpyxl.Workbook().save(tmp_path / "other.xlsx")
    with pytest.raises(CannotGoOn, match="none that was sent"):
        verify(folder, tmp_path / "other.xlsx")


@pytest.mark.parametrize("data", [b"", b"no workbook", b"PK\x03\x04"])
def test_a_file_that_is_no_workbook_is_a_problem(folder, tmp_path, data):
    (tmp_path / "back.xlsx").write_bytes(data)
    with pytest.raises(CannotGoOn):
        verify(folder, tmp_path / "back.xlsx")


def test_a_missing_file_is_a_problem(folder, tmp_path):
    with pytest.raises(CannotGoOn):
        verify(folder, tmp_path / "nowhere.xlsx")

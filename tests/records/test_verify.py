"""A workbook that came back: as issued, saved again with the figures untouched, or with cells that were changed."""

from io import BytesIO
from pathlib import Path

import openpyxl
import pytest
from openpyxl.formatting.rule import CellIsRule
from openpyxl.styles import Font, PatternFill
from openpyxl.styles.colors import Color

from estimator.model.problem import CannotGoOn
from estimator.papers.homeowner import homeowner
from estimator.records.issue import Made, issue
from estimator.records.verify import verify
from estimator.sheets.write import write
from tests.made_up.quote import example_quote

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


def _altered(folder: Path, file: Path, change) -> list[tuple[str, str, str]]:
    book = openpyxl.load_workbook(folder / "r1" / "to send" / NAME)
    change(book)
    book.save(file)
    return [(cell.cell, cell.issued, cell.now) for cell in verify(folder, file).cells]


@pytest.fixture(name="letter")
def _letter(tmp_path, quote, inputs) -> Path:
    """A workbook with words in merged cells and a total in dollars, as the agreements have them."""
    book = openpyxl.Workbook()
    sheet = book.active
    sheet["A1"], sheet["A2"], sheet["B3"] = "Total", "Four thousand dollars", 4200
    sheet.merge_cells("A2:B2")
    sheet["B3"].number_format = '"$"#,##0.00'
    sheet["B4"] = "=B3"
    book.create_sheet("Option A")
    out = BytesIO()
    book.save(out)
    issue(tmp_path / "letter", quote, inputs, lambda number: Made(quote, {f"to send/{NAME}": out.getvalue()}))
    return tmp_path / "letter"


def test_words_in_merged_cells_count(letter, tmp_path):
    def change(book):
        book.active["A2"] = "Three thousand dollars"

    assert _altered(letter, tmp_path / NAME, change) == [("A2", "Four thousand dollars", "Three thousand dollars")]


def test_a_total_shown_otherwise_counts(letter, tmp_path):
    def change(book):
        book.active["B3"].number_format = '"$3,200.00"'

    assert _altered(letter, tmp_path / NAME, change) == [("B3", "4200 as $#,##0.00", "4200 as $3,200.00")]


def test_a_dollar_format_written_by_another_program_is_the_same(letter, tmp_path):
    def change(book):
        book.active["B3"].number_format = "[$$-409]#,##0.00;[RED]-[$$-409]#,##0.00"

    assert _altered(letter, tmp_path / NAME, change) == []


def test_a_formula_typed_over_counts(letter, tmp_path):
    def change(book):
        book.active["B4"] = "=B3-1000"

    assert [at for at, *_ in _altered(letter, tmp_path / NAME, change)] == ["B4"]


@pytest.mark.parametrize(
    ("what", "hide"),
    [
        ("row 2", lambda sheet: setattr(sheet.row_dimensions[2], "hidden", True)),
        ("row 3", lambda sheet: setattr(sheet.row_dimensions[3], "height", 1)),
        ("column B", lambda sheet: setattr(sheet.column_dimensions["B"], "hidden", True)),
    ],
)
def test_what_is_hidden_now_is_named(letter, tmp_path, what, hide):
    assert _altered(letter, tmp_path / NAME, lambda book: hide(book.active)) == [(what, "shown", "hidden")]


def test_a_hidden_sheet_is_named(letter, tmp_path):
    def change(book):
        book.active = 1
        book["Sheet"].sheet_state = "hidden"

    assert _altered(letter, tmp_path / NAME, change) == [("sheet", "shown", "hidden")]


@pytest.mark.parametrize(
    ("font", "told"),
    [
        (Font(color="FFFFFFFF"), "Total hidden by its color"),
        (Font(color=Color(theme=0)), "Total hidden by its color"),
        (Font(color="FFF0F0F0"), "Total hidden by its color"),
        (Font(size=1), "Total too small to read"),
    ],
)
def test_words_that_cannot_be_read_any_more_are_named(letter, tmp_path, font, told):
    def change(book):
        book.active["A1"].font = font

    assert _altered(letter, tmp_path / NAME, change) == [("A1", "Total", told)]


def test_ground_in_the_color_of_the_words_and_a_format_without_text_hide_too(letter, tmp_path):
    def change(book):
        book.active["A1"].fill = PatternFill("solid", fgColor="FF000000")
        book.active["A2"].number_format = ";;;"

    assert [now for *_, now in _altered(letter, tmp_path / NAME, change)] == [
        "Total hidden by its color",
        "Four thousand dollars hidden by its format",
    ]


def test_a_color_that_can_be_read_is_no_difference(letter, tmp_path):
    def change(book):
        book.active["A1"].font = Font(color="FF777777", size=8)

    assert _altered(letter, tmp_path / NAME, change) == []


def test_a_row_too_low_for_its_words_and_colors_set_by_rules_are_named(letter, tmp_path):
    def change(book):
        book.active.row_dimensions[1].height = 4
        book.active.conditional_formatting.add("A1", CellIsRule(operator="equal", formula=["1"]))

    assert _altered(letter, tmp_path / NAME, change) == [
        ("row 1", "shown", "too low for its words"),
        ("sheet's colors", "shown", "set by rules"),
    ]


def test_a_sheet_taken_out_or_put_in_is_named(letter, tmp_path):
    def taken_out(book):
        del book["Option A"]

    def put_in(book):
        book.create_sheet("Option B")

    assert _altered(letter, tmp_path / NAME, taken_out) == [("sheet", "shown", "missing")]
    assert _altered(letter, tmp_path / NAME, put_in) == [("sheet", "missing", "shown")]


def test_a_formula_that_the_saving_program_did_not_calculate_is_no_difference(letter, tmp_path):
    issued = letter / "r1" / "to send" / NAME
    with_value = issued.read_bytes()
    book = openpyxl.load_workbook(BytesIO(with_value))
    assert _altered(letter, tmp_path / NAME, lambda book: None) == []
    assert book.active["B4"].value == "=B3"


def test_a_sheet_with_boxes_that_was_taken_out_is_named_too(tmp_path, quote, inputs):
    data = write(homeowner(example_quote(), "en_US"))
    issue(tmp_path / "whole", quote, inputs, lambda number: Made(quote, {f"to send/{NAME}": data}))

    def change(book):
        del book["Option B"]

    assert _altered(tmp_path / "whole", tmp_path / NAME, change) == [("sheet", "shown", "missing")]

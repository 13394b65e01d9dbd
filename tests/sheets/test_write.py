"""A Book becomes the same bytes each time, with formula and value together, and nothing that does not belong in it."""

import io
import zipfile
from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from openpyxl import Workbook, load_workbook
from openpyxl.comments import Comment

from estimator.sheets.book import Book, Cell, Chart, Formula, Row, Series, Sheet
from estimator.sheets.fit import MOST_ROW_PT
from estimator.sheets.verify import BrokenBook, parts_not_allowed, verify
from estimator.sheets.write import CannotWrite, write


def book(*rows: Row, widths: tuple[float, ...] = (20.0, 10.0, 10.0), charts: tuple[Chart, ...] = ()) -> Book:
    sheet = Sheet(name="One", widths=widths, rows=rows, repeat=(0, 0), footer_left="Smith & Daughter", charts=charts)
    return Book(title="A title", day=date(2026, 11, 18), accent="1F5D57", sheets=(sheet,))


def a_line() -> Row:
    return Row(
        (Cell("pipe"), Cell(Decimal("3.5"), "number"), Cell(Formula("=ROUND(B1*2.01,2)", Decimal("7.04")), "money"))
    )


def read(data: bytes, values: bool) -> Workbook:
    return load_workbook(io.BytesIO(data), data_only=values)


def test_the_same_book_gives_the_same_bytes() -> None:
    assert write(book(a_line())) == write(book(a_line()))


def test_another_day_gives_other_bytes() -> None:
    assert write(book(a_line())) != write(replace(book(a_line()), day=date(2026, 11, 19)))


def test_formula_and_value_stand_together() -> None:
    data = write(book(a_line()))
    assert read(data, values=False)["One"]["C1"].value == "=ROUND(B1*2.01,2)"
    assert read(data, values=True)["One"]["C1"].value == 7.04


def test_a_formula_without_a_value_is_refused() -> None:
    with pytest.raises(ValueError, match="needs its value"):
        Formula("=A1", None)  # type: ignore[arg-type]


@pytest.mark.parametrize("text", ["A1", "=XLOOKUP(A1,B1,C1)", "=HYPERLINK(A1)", "=[other.xlsx]One!A1", "=INDIRECT(A1)"])
def test_a_formula_that_not_every_program_knows_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="formula"):
        Formula(text, 1.0)


@pytest.mark.parametrize("text", ["=1+1", "+1 house", "-5 Elm St", "@home", "Ana & Bea <b>", "🏠 שלום", "x" * 300])
def test_text_stays_text(text: str) -> None:
    cell = read(write(book(Row((Cell(text, "body", 3),)))), values=False)["One"]["A1"]
    assert (cell.value, cell.data_type) == (text, "s")
    assert bool(cell.quotePrefix) == text.startswith(("=", "+", "-", "@"))


@pytest.mark.parametrize("bad", ["bell\x07", "half \ud83c", "null\x00"])
def test_a_character_that_cannot_be_shown_is_named_with_its_place(bad: str) -> None:
    with pytest.raises(CannotWrite, match=r"One, row 1, column 1: .*U\+"):
        write(book(Row((Cell(bad),))))


def test_a_text_too_long_for_a_row_is_refused_not_clipped() -> None:
    with pytest.raises(ValueError, match="too long for one row"):
        write(book(Row((Cell("word " * 2000),))))


def test_a_row_grows_with_the_lines_of_its_text() -> None:
    data = write(book(Row((Cell("one line"),)), Row((Cell("so many words that they need a good many lines " * 3),))))
    rows = read(data, values=True)["One"].row_dimensions
    assert (rows[1].height or 15) < 25 < rows[2].height < MOST_ROW_PT


def test_a_column_grows_with_a_number_that_would_show_as_hashes() -> None:
    narrow = write(book(Row((Cell(Decimal("1234567.89"), "total"),)), widths=(4.0,)))
    assert read(narrow, values=True)["One"].column_dimensions["A"].width >= 12


def test_it_prints_on_letter_one_page_wide_with_repeated_head_and_page_numbers() -> None:
    sheet = read(write(book(a_line(), widths=(60.0, 30.0, 30.0))), values=True)["One"]
    assert (int(sheet.page_setup.paperSize), sheet.page_setup.orientation) == (1, "portrait")
    assert sheet.sheet_properties.pageSetUpPr.fitToPage is True
    assert (sheet.page_setup.fitToWidth or 1, sheet.page_setup.fitToHeight) == (1, 0)
    assert sheet.print_title_rows == "$1:$1"
    assert "&P" in sheet.oddFooter.right.text and "&N" in sheet.oddFooter.right.text
    assert "Smith && Daughter" in sheet.oddFooter.left.text or "Smith & Daughter" in sheet.oddFooter.left.text
    assert sheet.sheet_view.showGridLines is False


def test_what_the_library_leaves_out_is_no_longer_silent() -> None:
    long = book(Row((Cell("x" * 40_000),)))
    with pytest.raises(ValueError, match="row 1"):
        write(long)


def test_a_chart_carries_words_and_points() -> None:
    series = Series(name="Price", categories=(0, 0, 1, 0), values=(0, 1, 1, 1), colour="1F5D57")
    chart = Chart(kind="bar", title="T", alt="Two bars", series=(series,), row=3, width_px=280)
    rows = (Row((Cell("a"), Cell(1, "number"))), Row((Cell("b"), Cell(2, "number"))))
    with zipfile.ZipFile(io.BytesIO(write(book(*rows, charts=(chart,))))) as archive:
        assert 'descr="Two bars"' in archive.read("xl/drawings/drawing1.xml").decode()
        assert "<c:v>2</c:v>" in archive.read("xl/charts/chart1.xml").decode()


def test_a_chart_without_words_is_refused() -> None:
    with pytest.raises(ValueError, match="cannot see"):
        Chart(kind="bar", title="T", alt="", series=(), row=0)


def test_our_files_hold_only_parts_that_belong_and_name_nobody() -> None:
    assert parts_not_allowed(write(book(a_line()))) == []


def test_a_comment_a_hidden_sheet_a_link_and_an_author_are_found() -> None:
    workbook = Workbook()
    sheet = workbook.active
    sheet["A1"] = "x"
    sheet["A1"].comment = Comment("our cost is 7", "Ines")
    sheet["A2"].hyperlink = "https://example.org"
    workbook.create_sheet("Costs").sheet_state = "hidden"
    workbook.properties.creator = "Ines"
    out = io.BytesIO()
    workbook.save(out)
    faults = " ".join(parts_not_allowed(out.getvalue()))
    for word in ("comments", 'state="hidden"', "External", "names a person"):
        assert word in faults, word


def test_a_street_may_hold_any_words_and_a_formula_may_not() -> None:
    street = 'INDIRECT(Lane) HYPERLINK( TargetMode="External" hidden="1" <oleObject'
    made = book(Row((Cell(street),)))
    footed = replace(made, sheets=(replace(made.sheets[0], footer_left=street[:40]),))
    assert parts_not_allowed(write(footed)) == []
    workbook = Workbook()
    workbook.active["A1"] = "=INDIRECT(B1)"
    workbook.active["A2"] = '=CONCATENATE("WEBSERVICE(",B1)'
    out = io.BytesIO()
    workbook.save(out)
    faults = " ".join(parts_not_allowed(out.getvalue()))
    assert "INDIRECT(" in faults
    assert "WEBSERVICE(" not in faults


def test_a_file_that_reads_back_otherwise_is_not_kept() -> None:
    data = write(book(a_line()))
    with pytest.raises(BrokenBook, match="row 1 column 2"):
        verify(data, book(Row((Cell("pipe"), Cell(Decimal(9), "number"), a_line().cells[2]))))


def test_a_chart_wider_than_its_sheet_is_refused_not_cut() -> None:
    series = Series(name="Price", categories=(0, 0, 0, 0), values=(0, 1, 0, 1), colour="1F5D57")
    wide = Chart(kind="bar", title="Wide", alt="One bar", series=(series,), row=1, width_px=296)
    with pytest.raises(CannotWrite, match="would be cut"):
        write(book(Row((Cell("a"), Cell(1, "number"))), charts=(wide,)))
    assert write(
        book(Row((Cell("a"), Cell(1, "number"))), charts=(replace(wide, width_px=295),))
    )  # 3 × 5 + 40 × 7 px [computed]

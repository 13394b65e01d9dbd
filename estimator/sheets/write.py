"""A Book in, the bytes of an xlsx out: the same bytes for the same book, read back before they are returned."""

import io
from datetime import date, datetime
from decimal import Decimal
from typing import Any

from estimator.model.say import Say
from estimator.sheets.book import Book, Cell, Formula, Sheet
from estimator.sheets.charts import add_chart, add_picture
from estimator.sheets.fault import CannotWrite, first_unprintable
from estimator.sheets.fit import column_px, column_widths, row_heights
from estimator.sheets.paging import SPARE_PERCENT, page_starts, print_percent
from estimator.sheets.style import FONT, styles
from estimator.sheets.verify import verify

PAGE_WIDTH_PX = 720  # Letter, portrait, less the margins below, at 96 to the inch
LETTER = 1
FOOTER_CHARACTERS = 110  # a footer holds 255, and each & counts twice
FORMULA_STARTS = ("=", "+", "-", "@")
OPTIONS = {"in_memory": True, "strings_to_urls": False, "strings_to_formulas": False}
COLUMNS_MEASURED_IN = {"font_name": FONT, "font_size": 10}
"""Programs count a column's width in digits of this font; one that a computer lacks makes every sheet wider there."""


def done(answer: int | None, where: str) -> None:
    """Raise where the library answers anything but 0: it reports what it left out by number alone."""
    if answer:
        raise CannotWrite(f"{where}: not written (answer {answer})")


class Formats:
    """Cell formats by style, made once each."""

    def __init__(self, workbook: Any, accent: str) -> None:
        self.workbook = workbook
        self.styles = styles(accent)
        self.made: dict[tuple[str, bool, bool], Any] = {}

    def get(self, style: str, open_: bool, quoted: bool) -> Any:
        key = (style, open_, quoted)
        if key not in self.made:
            extra: dict[str, object] = {"locked": False} if open_ else {}
            if quoted:
                extra["quote_prefix"] = True
            self.made[key] = self.workbook.add_format({**self.styles[style], **extra})
        return self.made[key]


def write(book: Book) -> bytes:
    """The workbook as bytes. Errors: CannotWrite for text or layout a workbook cannot carry; BrokenBook when reading back fails."""
    import xlsxwriter

    out = io.BytesIO()
    workbook = xlsxwriter.Workbook(out, {**OPTIONS, "default_format_properties": dict(COLUMNS_MEASURED_IN)})
    workbook.set_properties({"title": book.title, "created": datetime(book.day.year, book.day.month, book.day.day)})  # noqa: DTZ001
    formats = Formats(workbook, book.accent)
    for sheet in book.sheets:
        _sheet(workbook, workbook.add_worksheet(sheet.name), sheet, formats)
    for name, refers in book.names:
        done(workbook.define_name(name, refers), f"name {name}")
    workbook.close()
    data = out.getvalue()
    verify(data, book)
    return data


def pages_of(sheet: Sheet) -> int:
    """Return on how many pages the sheet is printed."""
    heights = row_heights(sheet, styles("000000"))
    size = print_percent(sheet, heights, _full_percent(column_widths(sheet, styles("000000"))))
    return 1 + len(page_starts(sheet, heights, size))


def _full_percent(widths: tuple[float, ...]) -> float:
    """The size at which columns of these widths are as wide as the page."""
    return PAGE_WIDTH_PX / max(1, sum(column_px(w) for w in widths)) * 100


def _sheet(workbook: Any, worksheet: Any, sheet: Sheet, formats: Formats) -> None:
    widths = column_widths(sheet, formats.styles)
    for i, width in enumerate(widths):
        done(worksheet.set_column(i, i, width), f"{sheet.name}, column {i + 1}")
    heights = row_heights(sheet, formats.styles)
    for r, row in enumerate(sheet.rows):
        done(worksheet.set_row(r, heights[r]), f"{sheet.name}, row {r + 1}")
        c = 0
        for cell in row.cells:
            _cell(worksheet, r, c, cell, formats, f"{sheet.name}, row {r + 1}, column {c + 1}")
            c += cell.span
    _print_set_up(worksheet, sheet, widths, heights)
    room = sum(column_px(w) for w in widths)
    for chart in sheet.charts:
        if chart.width_px > room:
            raise CannotWrite(f"{sheet.name}: the chart “{chart.title}” is wider than the sheet and would be cut")
        add_chart(workbook, worksheet, sheet, chart)
    for picture in sheet.pictures:
        add_picture(worksheet, sheet, picture)


def _cell(worksheet: Any, r: int, c: int, cell: Cell, formats: Formats, where: str) -> None:
    text = cell.value if isinstance(cell.value, str) else ""
    if bad := first_unprintable(text):
        raise CannotWrite(
            Say.of("{where}: the text holds a character that cannot be shown ({character})", where=where, character=bad)
        )
    form = formats.get(cell.style, cell.open, text.startswith(FORMULA_STARTS))
    if cell.span > 1:
        done(worksheet.merge_range(r, c, r, c + cell.span - 1, "", form), where)
    done(_value(worksheet, r, c, cell.value, form), where)


def _value(worksheet: Any, r: int, c: int, value: object, form: Any) -> int | None:
    answer: int | None
    match value:
        case None | "":
            answer = worksheet.write_blank(r, c, None, form)
        case Formula():
            shown = float(value.value) if isinstance(value.value, Decimal) else value.value
            answer = worksheet.write_formula(r, c, value.text, form, shown)
        case str():
            answer = worksheet.write_string(r, c, value, form)
        case date():
            answer = worksheet.write_string(r, c, value.isoformat(), form)
        case bool():
            answer = worksheet.write_string(r, c, "yes" if value else "no", form)
        case _:
            answer = worksheet.write_number(r, c, float(value), form)  # type: ignore[arg-type]
    return answer


def _print_set_up(worksheet: Any, sheet: Sheet, widths: tuple[float, ...], heights: tuple[float, ...]) -> None:
    worksheet.set_paper(LETTER)
    worksheet.set_portrait()
    worksheet.set_margins(left=0.5, right=0.5, top=0.4, bottom=0.55)
    worksheet.center_horizontally()
    worksheet.hide_gridlines(2)
    full = _full_percent(widths)
    size = print_percent(sheet, heights, full)
    if size <= full - SPARE_PERCENT:
        worksheet.set_print_scale(int(size))
    else:
        worksheet.fit_to_pages(1, 0)
    last = max([len(sheet.rows) - 1, *(_last_row(chart.row, chart.height_px, sheet) for chart in sheet.charts)])
    done(worksheet.print_area(0, 0, last, len(widths) - 1), f"{sheet.name}, print area")
    if sheet.repeat:
        worksheet.repeat_rows(*sheet.repeat)
    if sheet.freeze_rows:
        worksheet.freeze_panes(sheet.freeze_rows, 0)
    breaks = list(page_starts(sheet, heights, size))
    if breaks:
        worksheet.set_h_pagebreaks(breaks)
    page, of = sheet.page_words
    left = sheet.footer_left[:FOOTER_CHARACTERS].replace("&", "&&")
    done(worksheet.set_footer(f"&L&9{left}&R&9{page} &P {of} &N"), f"{sheet.name}, footer")
    if sheet.tab:
        worksheet.set_tab_color(f"#{sheet.tab.lstrip('#')}")
    if sheet.protect:
        worksheet.protect("", {"format_columns": True, "format_rows": True})


def _last_row(row: int, height_px: int, sheet: Sheet) -> int:
    """The row a chart ends in, where the rows below it are of the usual height."""
    left = float(height_px)
    while left > 0:
        height = sheet.rows[row].height_pt if row < len(sheet.rows) else None
        left -= (height or 15.0) * 96 / 72
        row += 1
    return row - 1

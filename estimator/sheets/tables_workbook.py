"""An EditBook in, the bytes of an xlsx out: frozen headers with notes, lists to choose from, marks, locked cells."""

import io
import math
from collections.abc import Iterable
from datetime import date, datetime
from typing import Any

from estimator.sheets.edit_book import CoverLine, EditBook, EditColumn, EditSheet, Value
from estimator.sheets.write import done

FONT = {"font_name": "Calibri", "font_size": 10.5, "valign": "top"}
FORMATS = {
    "number": "General",
    "dollars": "0.00##",
    "whole": "0",
    "day": "yyyy-mm-dd",
    "text": "General",
    "yes/no": "General",
}
LONGEST_LIST = 255  # letters a list typed into a rule may have
LANDSCAPE_LETTER = 1
HEADER_PT = 21
LINE_PT = 14.5
LETTER = 0.95
"""A letter of running text against a column's unit of width, words broken at the line's end in it."""
COVER_WIDTHS = (34, 72, 24)
WIDTH_A_PAGE = 208.0
"""Columns so wide together, in letters, still print at seven points on a letter sheet laid on its side."""
NOT_PRINTED = ("changed_by", "changed_on")
ALIGN: dict[str, dict[str, object]] = {
    "text": {"align": "left", "indent": 1},
    "yes/no": {"align": "center"},
    "day": {"align": "center"},
}


def write_tables(book: EditBook) -> bytes:
    """The same bytes for the same book. Errors: ValueError where the library leaves something out."""
    import xlsxwriter

    out = io.BytesIO()
    workbook = xlsxwriter.Workbook(out, {"in_memory": True, "strings_to_urls": False, "strings_to_formulas": False})
    workbook.set_properties({"title": book.title, "created": datetime(book.day.year, book.day.month, book.day.day)})  # noqa: DTZ001
    _cover(workbook, workbook.add_worksheet(book.cover_name), book.cover)
    for sheet in book.sheets:
        _sheet(workbook, workbook.add_worksheet(sheet.name), sheet)
    workbook.close()
    return out.getvalue()


def _cover(workbook: Any, sheet: Any, lines: tuple[CoverLine, ...]) -> None:
    styles = {
        "title": {**FONT, "bold": True, "font_size": 17},
        "heading": {**FONT, "bold": True, "font_size": 12.5, "bottom": 1},
        "body": {**FONT, "text_wrap": True},
        "quiet": {**FONT, "font_color": "#5B6770", "text_wrap": True},
    }
    sheet.hide_gridlines(2)
    for c, width in enumerate(COVER_WIDTHS):
        sheet.set_column(c, c, width)
    for r, line in enumerate(lines):
        if len(line.texts) > 1 and line.style == "body":
            sheet.set_row(r, _height(zip(line.texts, COVER_WIDTHS, strict=False)))
        fill = {"bg_color": f"#{line.colour}"} if line.colour else {}
        across = (
            {"text_wrap": False} if len(line.texts) == 1 else {}
        )  # a text alone runs over the empty cells beside it
        style = workbook.add_format({**styles[line.style], **fill, **across})
        for c, text in enumerate(line.texts):
            if line.link and c == len(line.texts) - 1:
                link = workbook.add_format({**styles[line.style], **fill, "font_color": "#1F5FBF", "underline": 1})
                done(sheet.write_url(r, c, f"internal:{line.link}", link, text), f"cover row {r + 1}")
            else:
                done(sheet.write_string(r, c, text, style), f"cover row {r + 1}")
    _print(sheet)


def _print(sheet: Any, width: float = 0.0) -> None:
    """As many pages side by side as letters of seven points ask for, the first column on each."""
    sheet.set_landscape()
    sheet.set_paper(LANDSCAPE_LETTER)
    sheet.fit_to_pages(max(1, math.ceil(width / WIDTH_A_PAGE)), 0)
    if width > WIDTH_A_PAGE:
        sheet.repeat_columns(0)
    sheet.set_margins(0.4, 0.4, 0.5, 0.6)
    sheet.set_footer("&L&A&RPage &P of &N")


def _sheet(workbook: Any, sheet: Any, table: EditSheet) -> None:
    last = len(table.rows) + table.spare_rows
    sheet.freeze_panes(1, 1)
    sheet.set_row(0, HEADER_PT)
    sheet.repeat_rows(0)
    sheet.set_tab_color(f"#{table.tab}")
    locked = table.read_only
    for c, column in enumerate(table.columns):
        style = _style(workbook, column, locked)
        done(sheet.set_column(c, c, column.width, style), f"{table.name}, {column.header}")
        done(
            sheet.write_string(0, c, column.header, _head(workbook, column, table.tab)),
            f"{table.name}, {column.header}",
        )
        if column.note:
            done(
                sheet.write_comment(0, c, column.note, {"x_scale": 2, "y_scale": 0.8}), f"{table.name}, {column.header}"
            )
        _rule(sheet, c, column, last)
        if column.computed:
            _computed(sheet, c, column, style, last)
    for r, row in enumerate(table.rows, start=1):
        wrapped = ((value, column.width) for value, column in zip(row, table.columns, strict=True) if _wraps(column))
        sheet.set_row(r, _height(wrapped))
        for c, value in enumerate(row):
            if not table.columns[c].computed:
                _write(sheet, r, c, value, f"{table.name}, row {r + 1}, {table.columns[c].header}")
    _marks(workbook, sheet, table, last)
    if locked or any(column.computed for column in table.columns):
        allowed = ("format_cells", "format_columns", "format_rows", "sort", "autofilter", "insert_rows", "delete_rows")
        sheet.protect("", dict.fromkeys(allowed, True))
    sheet.autofilter(0, 0, len(table.rows), len(table.columns) - 1)
    printed = [column for column in table.columns if column.header not in NOT_PRINTED]
    sheet.print_area(0, 0, len(table.rows), len(printed) - 1)
    _print(sheet, sum(column.width for column in printed))


def _wraps(column: EditColumn) -> bool:
    return column.kind == "text" and column.width > 30


def _height(cells: Iterable[tuple[Value, float]]) -> float:
    """Points for a row: as many lines as its longest text takes in its column; spreadsheet programs do not all grow rows."""
    lines = (math.ceil(len(str(text)) * LETTER / width) for text, width in cells if isinstance(text, str))
    return LINE_PT * max(1, *lines, 1)


def _head(workbook: Any, column: EditColumn, tab: str) -> Any:
    side = ALIGN.get(column.kind, {"align": "right"})
    look = {**FONT, "bold": True, "bg_color": f"#{tab}", "bottom": 1, "valign": "vcenter", "locked": True}
    return workbook.add_format({**look, **side})


def _style(workbook: Any, column: EditColumn, locked: bool) -> Any:
    look = {
        **FONT,
        **ALIGN.get(column.kind, {}),
        "num_format": FORMATS[column.kind],
        "text_wrap": _wraps(column),
    }
    if column.computed:
        look |= {"font_color": "#5B6770", "bg_color": "#F1F3F4", "locked": True}
    else:
        look |= {"locked": locked}
    return workbook.add_format(look)


def _write(sheet: Any, r: int, c: int, value: Value, where: str) -> None:
    if value is None or value == "":
        return
    if isinstance(value, date):
        done(sheet.write_datetime(r, c, datetime(value.year, value.month, value.day)), where)  # noqa: DTZ001
    elif isinstance(value, str):
        done(sheet.write_string(r, c, value), where)
    else:
        done(sheet.write_number(r, c, value), where)


def _computed(sheet: Any, c: int, column: EditColumn, style: Any, last: int) -> None:
    assert column.computed is not None
    for r in range(1, last + 1):
        values = column.computed.values
        value = values[r - 1] if r <= len(values) else ""
        done(sheet.write_formula(r, c, column.computed.formula.format(row=r + 1), style, value), column.header)


def _rule(sheet: Any, c: int, column: EditColumn, last: int) -> None:
    rule: dict[str, Any] = {"ignore_blank": True, "error_title": column.header, "error_type": "warning"}
    words = ("yes", "no") if column.kind == "yes/no" else tuple(word for word in column.choose if word)
    if column.list_from:
        rule |= {"validate": "list", "source": column.list_from, "error_message": "No row has this name yet."}
        rule |= {"show_error": not column.several}  # a list offers one name; more are typed, commas between
    elif words and len(",".join(words)) <= LONGEST_LIST:
        rule |= {"validate": "list", "source": list(words), "error_message": "Choose one of the list."}
    elif column.kind in ("number", "dollars", "whole") and not column.computed:
        least = column.least if column.least is not None else -10_000_000
        kind = "integer" if column.kind == "whole" else "decimal"
        rule |= {"validate": kind, "criteria": ">=", "value": least, "error_message": f"A number of {least:g} or more."}
    elif column.kind == "day":
        rule |= {
            "validate": "date",
            "criteria": ">=",
            "value": date(1990, 1, 1),
            "error_message": "A day, such as 2026-03-31.",
        }
    else:
        return
    done(sheet.data_validation(1, c, last, c, rule), column.header)


def _marks(workbook: Any, sheet: Any, table: EditSheet, last: int) -> None:
    """Empty cells that must not be empty, prices learned long ago, rows not in use."""
    from xlsxwriter.utility import xl_col_to_name

    empty = workbook.add_format({"bg_color": "#F8CBAD"})
    old = workbook.add_format({"bg_color": "#FFE699"})
    off = workbook.add_format({"font_color": "#A0A7AC", "font_strikeout": True})
    if table.off_column is not None:
        rule = {
            "type": "formula",
            "criteria": f'=${xl_col_to_name(table.off_column)}2="no"',
            "format": off,
            "stop_if_true": True,
        }
        sheet.conditional_format(1, 0, last, len(table.columns) - 1, rule)
    for c, column in enumerate(table.columns):
        name = xl_col_to_name(c)
        if column.needed and c:
            sheet.conditional_format(
                1, c, last, c, {"type": "formula", "criteria": f'=AND($A2<>"",${name}2="")', "format": empty}
            )
        if column.old_after_days is not None:
            criteria = f'=AND(${name}2<>"",TODAY()-${name}2>{column.old_after_days})'
            sheet.conditional_format(1, c, last, c, {"type": "formula", "criteria": criteria, "format": old})

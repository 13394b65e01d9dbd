"""A crew's sheet and an option in; the option's drawing from the side set on it where its first page has room, out."""

from dataclasses import replace

from estimator.model.offer import Option
from estimator.papers.crew_page import PRINT_SCALE, close
from estimator.papers.house_section import house_section
from estimator.papers.letter import Letter
from estimator.papers.page import Page
from estimator.papers.section_view import WIDTH
from estimator.sheets.book import Sheet
from estimator.sheets.fit import column_px, row_heights
from estimator.sheets.paging import PAGE_PT, USED
from estimator.sheets.style import styles
from estimator.sheets.write import PAGE_WIDTH_PX

LARGEST, SMALLEST, POINTS = 1.3, 0.7, 0.75
"""Sizes of the drawing, of that in the homeowner's quote: as large as the page leaves room; points of a pixel."""
AIR_PT = 28.0


def set_drawing(letter: Letter, page: Page, option: Option, *, keep_pt: float = 0.0) -> bool:
    """Set the drawing at the end of the page and return True; False where there is none, or no room for it beside `keep_pt` points."""
    alone = replace(letter, quote=replace(letter.quote, options=(option,)))
    drawn = house_section(alone, short=True)
    if drawn is None:
        return False
    data, height_px, alt = drawn
    wide = sum(map(column_px, page.widths)) / WIDTH
    size = min(LARGEST, wide, (_room_pt(close(letter, page)) - keep_pt) / (height_px * POINTS))
    if size < SMALLEST:
        return False
    page.drawing(data, alt, round(height_px * size))
    return True


def _room_pt(sheet: Sheet) -> float:
    """How much of its first printed page the sheet leaves free, points."""
    scale = min(PRINT_SCALE / 100, PAGE_WIDTH_PX / sum(map(column_px, sheet.widths)))
    return PAGE_PT * USED / scale - sum(row_heights(sheet, styles(sheet.tab))) - AIR_PT

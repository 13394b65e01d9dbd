"""A cell or a sheet as the reading library gives it in, what of its look keeps its words from being read out.

A colour counts as hiding where it can hardly be told from what is behind it: contrast as WCAG 2.2 defines it.
"""

from collections.abc import Iterator
from typing import Any

from estimator.sheets.fit import column_px, wrapped

LEAST_CONTRAST = 1.5  # of 1 (alike) to 21; print that is meant to be read has 3 and more
LEAST_PT = 4.0  # smaller letters are a grey line
CUT = 0.6  # of the height that its words need; programs differ by far less
USUAL_PT, USUAL_WIDTH = 11.0, 8.43  # of letters and of columns, where a file does not say
PADDING_PX = 8
WHITE, BLACK = "FFFFFF", "000000"
THEME = (WHITE, BLACK, "E7E6E6", "44546A", "4472C4", "ED7D31", "A5A5A5", "FFC000", "5B9BD5", "70AD47")
"""The colours of the usual theme in the order in which files number them."""


def unreadable(cell: Any) -> str:
    """Why its words cannot be read; empty where they can."""
    if contrast(_colour(cell.font.color, BLACK), _ground(cell.fill)) < LEAST_CONTRAST:
        return "hidden by its color"
    if (cell.font.sz or USUAL_PT) < LEAST_PT:
        return "too small to read"
    return "hidden by its format" if isinstance(cell.value, str) and _no_text(cell.number_format) else ""


def _no_text(number_format: str) -> bool:
    """The fourth part of a format is for text, and shows none where it is empty."""
    parts = number_format.split(";")
    return len(parts) > 3 and not parts[3].strip()


def contrast(one: str, other: str) -> float:
    """From 1 for the same colour to 21 for black on white.

    >>> round(contrast("000000", "FFFFFF"), 1), round(contrast("FFFFFF", "FFFFFF"), 1)
    (21.0, 1.0)
    """
    dark, light = sorted(map(_luminance, (one, other)))
    return (light + 0.05) / (dark + 0.05)


def _luminance(colour: str) -> float:
    """Relative luminance of RRGGBB. Source: WCAG 2.2, definition of relative luminance."""
    parts = (int(colour[i : i + 2], 16) / 255 for i in (0, 2, 4))
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _ground(fill: Any) -> str:
    return _colour(fill.fgColor, WHITE) if fill.patternType == "solid" else WHITE


def _colour(colour: Any, otherwise: str) -> str:
    """RRGGBB, whichever way the file says it."""
    if colour is None:
        return otherwise
    if colour.type == "theme":
        base = THEME[colour.theme] if colour.theme < len(THEME) else otherwise
        return _tinted(base, colour.tint or 0.0)
    if colour.type == "indexed":
        from openpyxl.styles.colors import COLOR_INDEX

        return COLOR_INDEX[colour.indexed][-6:] if colour.indexed < len(COLOR_INDEX) else otherwise
    return str(colour.rgb)[-6:] if colour.type == "rgb" else otherwise


def _tinted(colour: str, tint: float) -> str:
    """Above 0 nearer to white, below nearer to black."""
    parts = (int(colour[i : i + 2], 16) for i in (0, 2, 4))
    moved = (p + (255 - p) * tint if tint > 0 else p * (1 + tint) for p in parts)
    return "".join(f"{round(p):02X}" for p in moved)


def cut_rows(sheet: Any) -> Iterator[int]:
    """Numbers of the rows that are far lower than their words need."""
    widths = dict(_widths_px(sheet))
    spans = {(area.min_row, area.min_col): area.max_col for area in sheet.merged_cells.ranges}
    for row in sheet.iter_rows():
        height = sheet.row_dimensions[row[0].row].height
        if height is not None and any(height < CUT * _needs_pt(cell, widths, spans) for cell in row):
            yield row[0].row


def _needs_pt(cell: Any, widths: dict[int, int], spans: dict[tuple[int, int], int]) -> float:
    if not isinstance(cell.value, str) or not cell.value.strip():
        return 0.0
    size = float(cell.font.sz or USUAL_PT)
    if not cell.alignment.wrap_text:
        return size
    columns = range(cell.column, spans.get((cell.row, cell.column), cell.column) + 1)
    room = sum(widths.get(c, column_px(USUAL_WIDTH)) for c in columns) - PADDING_PX
    return size * wrapped(cell.value, max(1.0, room), size, bool(cell.font.b))


def _widths_px(sheet: Any) -> Iterator[tuple[int, int]]:
    """Every column that has a width; programs group neighbours that are alike."""
    for column in sheet.column_dimensions.values():
        if column.width is not None:
            last = min(column.max or 0, sheet.max_column)
            yield from ((n, column_px(column.width)) for n in range(column.min or 1, last + 1))

"""Text, style and a width in, the room it takes out: lines of wrapped text, row heights, widths of numbers."""

from collections.abc import Mapping
from decimal import Decimal
from functools import lru_cache

from estimator.model.say import Say
from estimator.sheets.book import Cell, Formula, Sheet
from estimator.sheets.fault import CannotWrite

CELL_PADDING_PX = 6
INDENT_PX = 9
SAFETY = 1.03  # programs round each letter to whole dots of the screen
LINE = 1.22  # from one line of a cell to the next, in sizes of the letters
ROW_AIR_PT = 3.5
MOST_ROW_PT = 409.0  # a row cannot be higher in the file format


def text_width_px(text: str, size_pt: float, bold: bool) -> float:
    """How wide one line of text is drawn, in pixels at 96 to the inch."""
    return letters_wide(text, bold) / 1000 * size_pt * 96 / 72 * SAFETY


def padding_px(style: Mapping[str, object]) -> int:
    """What the sides of a cell and its indent take away, in pixels."""
    return CELL_PADDING_PX + INDENT_PX * int(str(style.get("indent", 0)))


def column_px(width: float) -> int:
    """A column's width in characters, in pixels."""
    return int(width * 7 + 5)


@lru_cache(maxsize=4096)
def wrapped(text: str, width_px: float, size_pt: float, bold: bool) -> int:
    """How many lines the text takes when wrapped at spaces; a word longer than a line is broken.

    >>> wrapped("one two three", 400, 11, False), wrapped("one two three", 40, 11, False)
    (1, 3)
    """
    lines, space = 0, text_width_px(" ", size_pt, bold)
    for paragraph in text.split("\n"):
        lines += 1
        used = 0.0
        for word in paragraph.split(" "):
            wide = text_width_px(word, size_pt, bold)
            if used and used + space + wide > width_px:
                lines += 1
                used = 0.0
            if wide > width_px:
                more = int(wide // width_px)
                lines += more
                wide -= more * width_px
            used += wide + (space if used else 0.0)
    return lines


def shown(value: object, number_format: str) -> str:
    """About what a number looks like in its cell, for measuring."""
    if isinstance(value, Formula):
        value = value.value
    if value is None:
        return ""
    if isinstance(value, int | float | Decimal) and number_format:
        if "$" in number_format:
            return f"${value:,.2f}" if ".00" in number_format else f"${value:,.0f}"
        return f"{float(value) * 100:.1f}%" if "%" in number_format else f"{value:,.2f}"
    return str(value)


def cell_height_pt(cell: Cell, widths: tuple[float, ...], style: Mapping[str, object]) -> float:
    """The height a cell asks for, in points."""
    size = float(str(style["font_size"]))
    text = shown(cell.value, str(style.get("num_format", "")))
    room = sum(column_px(w) for w in widths) - padding_px(style)
    lines = wrapped(text, room, size, bool(style.get("bold"))) if style.get("text_wrap") else 1
    return lines * size * LINE + ROW_AIR_PT


def row_heights(sheet: Sheet, styles: Mapping[str, Mapping[str, object]]) -> tuple[float, ...]:
    """The height of every row, in points. Errors: CannotWrite where a text needs more than a row can be high."""
    out = []
    for index, row in enumerate(sheet.rows):
        height, at = row.height_pt or 0.0, 0
        for cell in row.cells:
            if not row.height_pt:
                height = max(height, cell_height_pt(cell, sheet.widths[at : at + cell.span], styles[cell.style]))
            at += cell.span
        if height > MOST_ROW_PT:
            raise CannotWrite(
                Say.of("{sheet}, row {row}: the text is too long for one row", sheet=sheet.name, row=index + 1)
            )
        out.append(round(height or 6.0, 2))
    return tuple(out)


def column_widths(sheet: Sheet, styles: Mapping[str, Mapping[str, object]]) -> tuple[float, ...]:
    """The columns' widths, widened where a number would not fit and show as ###."""
    widths = list(sheet.widths)
    for row in sheet.rows:
        at = 0
        for cell in row.cells:
            style = styles[cell.style]
            if cell.span == 1 and not style.get("text_wrap"):
                text = shown(cell.value, str(style.get("num_format", "")))
                needs = text_width_px(text, float(str(style["font_size"])), bool(style.get("bold"))) + padding_px(style)
                widths[at] = max(widths[at], round((needs - 5) / 7 + 0.5, 1))
            at += cell.span
    return tuple(widths)


REGULAR = {
    191: "'", 222: "ijl‘’", 260: "|", 278: " !,./:;I[\\]ftÍí", 333: "()-`r¡·“”", 334: "{}", 350: "•", 355: '"', 389: "*",
    400: "°", 469: "^", 500: "Jcksvxyz", 549: "±≈≤≥", 556: "#$0123456789?L_abdeghnopquáéóúñü§«»–€", 584: "+<=>~×−",
    611: "FTZ¿", 667: "&ABEKPSVXYÁÉ", 722: "CDHNRUwÚÑÜ", 737: "©®", 750: "☐", 778: "GOQÓ", 833: "Mm", 834: "½¼¾", 889: "%",
    944: "W", 1000: "—…→", 1015: "@",
}  # fmt: skip
BOLD = {
    238: "'", 278: " ,./I\\ijlÍí‘’", 280: "|", 333: "!()-:;[]`ft¡·", 350: "•", 389: "*r{}", 400: "°", 474: '"', 500: "z“”",
    549: "±≈≤≥", 556: "#$0123456789J_aceksvxyáé§«»–€", 584: "+<=>^~×−", 611: "?FLTZbdghnopqu¿óúñü", 667: "EPSVXYÉ",
    722: "&ABCDHKNRUÁÚÑÜ", 737: "©®", 750: "☐", 778: "GOQwÓ", 833: "M", 834: "½¼¾", 889: "%m", 944: "W", 975: "@", 1000: "—…→",
}  # fmt: skip
ANY_OTHER = 1000
"""A letter that is in neither table: as wide as it is high, which only few are."""

_WIDTHS = tuple({letter: width for width, letters in table.items() for letter in letters} for table in (REGULAR, BOLD))


@lru_cache(maxsize=20_000)
def letters_wide(text: str, bold: bool) -> int:
    """The sum of its letters' widths, in thousandths of their size."""
    table = _WIDTHS[bold]
    return sum(table.get(letter, ANY_OTHER) for letter in text)

"""Cells added one row after another, a Sheet out; every add answers the row's number so that formulas can point at it."""

from dataclasses import replace
from decimal import Decimal
from math import ceil

from estimator.sheets.book import Cell, Chart, Formula, Picture, Row, Sheet


def column_letter(column: int) -> str:
    """A for 0, B for 1; papers have fewer than 26 columns."""
    return chr(ord("A") + column)


def at(column: int, row: int) -> str:
    """The address of a cell, both from 0.

    >>> at(5, 11)
    'F12'
    """
    return f"{column_letter(column)}{row + 1}"


MOST_LINES = 20  # more lines of text than this go on in another row, which a file can hold


def in_rows(text: str, width: float) -> list[str]:
    """A text parted at its spaces into pieces that each fit one row of so many characters' width.

    >>> in_rows("short", 40), [len(part) for part in in_rows("word " * 400, 40)]
    (['short'], [799, 799, 399])
    """
    most = int(width * MOST_LINES)
    parts = []
    while len(text) > most:
        at_space = text.rfind(" ", 0, most)
        cut = at_space if at_space > 0 else most
        parts.append(text[:cut])
        text = text[cut:].lstrip(" ")
    return [*parts, text.rstrip(" ") if parts else text]


MOST_DRAWING_ROW_PT = 60.0


class Page:
    """One sheet in the making."""

    def __init__(self, name: str, widths: tuple[float, ...]) -> None:
        self.name = name
        self.widths = widths
        self.rows: list[Row] = []
        self.charts: list[Chart] = []
        self.pictures: list[Picture] = []

    @property
    def columns(self) -> int:
        return len(self.widths)

    def add(
        self,
        *cells: Cell,
        new_page: bool = False,
        starts: bool = False,
        keep: bool = False,
        height_pt: float | None = None,
    ) -> int:
        """A row; the number it got, from 0."""
        self.rows.append(Row(cells, height_pt, new_page, starts, keep))
        return len(self.rows) - 1

    def line(self, text: str, style: str = "body", new_page: bool = False, starts: bool = False) -> int:
        """A text over the whole width, over several rows where it is too long for one; the number of the first."""
        first, *more = in_rows(text, sum(self.widths))
        row = self.add(Cell(first, style, self.columns), new_page=new_page, starts=starts)
        for part in more:
            self.add(Cell(part, style, self.columns))
        return row

    def heading(self, text: str, new_page: bool = False, starts: bool = False) -> int:
        """A heading over the whole width, with air around it."""
        self.rows.append(Row((), 4.0, new_page, starts))
        row = self.line(text, "heading")
        self.gap(2.0)
        return row

    def gap(self, height_pt: float = 8.0) -> None:
        self.rows.append(Row((), height_pt))

    def pair(self, label: str, value: str, style: str = "value", label_style: str = "label") -> int:
        """A label in the first column and a text over the rest; the number of the first row."""
        first, *more = in_rows(value, sum(self.widths[1:]))
        row = self.add(Cell(label, label_style), Cell(first, style, self.columns - 1))
        for part in more:
            self.add(Cell("", label_style), Cell(part, style, self.columns - 1))
        return row

    def table_row(self, *cells: Cell) -> int:
        """A row of a table; texts too long for one row go on in further rows, each in its column. The number of the first."""
        columns = iter(self.widths)
        widths = [sum(next(columns) for _ in range(cell.span)) for cell in cells]
        parts = [
            in_rows(c.value, w) if isinstance(c.value, str) else [c.value] for c, w in zip(cells, widths, strict=True)
        ]
        first = len(self.rows)
        for number in range(max(map(len, parts))):
            last = number == max(map(len, parts)) - 1
            values = [part[number] if number < len(part) else "" for part in parts]
            self.add(*(replace(cell, value=value) for cell, value in zip(cells, values, strict=True)), keep=not last)
        return first

    def listing(
        self, heading: str, texts: list[str], style: str = "body", mark: str = "•", starts: bool = False
    ) -> None:
        """A heading and its texts, each a row of its own; nothing where there are no texts."""
        if not texts:
            return
        self.line(heading, "bold", starts=starts)
        for text in texts:
            self.line(f"{mark} {text}", style)

    def chart(self, chart: Chart) -> None:
        """A chart over empty rows of its own, here, whatever row it says."""
        self.charts.append(replace(chart, row=len(self.rows)))
        for _ in range(-(-chart.height_px // 20)):
            self.rows.append(Row((), 15.0, keep=True))
        self.rows.append(Row((), 15.0))

    def drawing(self, data: bytes, alt: str, height_px: int) -> None:
        """A picture over empty rows of its own, as many as its height takes."""
        self.pictures.append(Picture(data=data, alt=alt, row=len(self.rows), column=0, height_px=height_px))
        high = height_px * 0.75 + 4
        count = max(1, ceil(high / MOST_DRAWING_ROW_PT))
        for number in range(count):
            self.rows.append(Row((), round(high / count, 2), keep=number < count - 1))

    def picture(self, data: bytes, alt: str, height_px: int) -> None:
        """A picture over empty rows of its own, with its words under it."""
        self.drawing(data, alt, height_px)
        self.line(alt, "quiet")

    def sheet(
        self,
        *,
        footer: str,
        page_words: tuple[str, str],
        repeat: tuple[int, int] | None = None,
        scale: int | None = None,
        smallest: int = 75,
        protect: bool = False,
        tab: str = "",
    ) -> Sheet:
        return Sheet(
            name=self.name,
            widths=self.widths,
            rows=tuple(self.rows),
            repeat=repeat,
            footer_left=footer,
            page_words=page_words,
            scale=scale,
            smallest=smallest,
            protect=protect,
            tab=tab,
            charts=tuple(self.charts),
            pictures=tuple(self.pictures),
        )


LABEL_WIDTH, GRID, GRID_WIDTH = 29.0, 12, 5.4
"""A column of labels, and the narrow ones that two, three or four columns of text share evenly."""


def grid_page(name: str) -> Page:
    """Return an empty page with a column of labels and `GRID` narrow columns."""
    return Page(name, (LABEL_WIDTH, *(GRID_WIDTH for _ in range(GRID))))


def sum_of(cells: list[str], value: Decimal) -> Formula:
    """The sum of single cells, or of one range, with the value the program has for it."""
    return Formula(f"=ROUND(SUM({','.join(cells)}),2)", value)


def run_in(page: Page, label: str, texts: list[str]) -> None:
    """A label and its sentences in one paragraph; nothing where there are none."""
    if texts:
        page.line(f"{label}: {' '.join(map(ended, texts))}", "small")


def ended(text: str) -> str:
    """Return the text with a period where nothing ends it."""
    return text if text.endswith((".", "?", "!")) else f"{text}."

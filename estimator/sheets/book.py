"""A workbook as plain data: sheets of rows of cells, charts and print set-up. Nothing here knows a spreadsheet library."""

import re
from datetime import date
from decimal import Decimal
from typing import Literal

from estimator.model.frozen import Frozen

KNOWN_FUNCTIONS = frozenset(
    {
        "SUM",
        "SUMIF",
        "SUMIFS",
        "SUMPRODUCT",
        "ROUND",
        "ROUNDUP",
        "IF",
        "IFERROR",
        "INDEX",
        "MATCH",
        "MAX",
        "MIN",
        "AND",
        "OR",
        "TEXT",
        "CEILING",
    }
)
"""Functions that every spreadsheet program computes alike; nothing else is written."""


class Formula(Frozen):
    """A formula together with the value the program computed for it, so that a viewer that does not calculate shows it too.

    >>> Formula("=ROUND(B2*C2,2)", Decimal("84.00")).value
    Decimal('84.00')

    Errors: ValueError without a value, without a leading =, or with a function or link that is not everywhere the same.
    """

    text: str
    value: Decimal | float | str

    def __post_init__(self) -> None:
        if self.value is None:
            raise ValueError(f"a formula needs its value: {self.text}")
        if not self.text.startswith("="):
            raise ValueError(f"a formula begins with =: {self.text}")
        unknown = set(re.findall(r"([A-Z][A-Z.]*)\(", self.text)) - KNOWN_FUNCTIONS
        if unknown or "[" in self.text or "|" in self.text:
            raise ValueError(f"not a formula every program knows: {self.text}")


Value = str | int | float | Decimal | date | Formula | None


class Cell(Frozen):
    """A value in a named style over `span` columns; `open` cells may be typed into on a protected sheet."""

    value: Value = None
    style: str = "body"
    span: int = 1
    open: bool = False


class Row(Frozen):
    """Cells from the first column on. `height_pt` None: computed so that nothing is cut.

    `new_page`: a page begins here. `starts`: a block begins that is not parted between pages where one can hold it.
    `keep`: never parted from the next row.
    """

    cells: tuple[Cell, ...] = ()
    height_pt: float | None = None
    new_page: bool = False
    starts: bool = False
    keep: bool = False


class Series(Frozen, kw_only=True):
    """One series of a chart; ranges are (first row, first column, last row, last column), from 0.

    `sheet` names the sheet they are on; empty: the chart's own.
    """

    name: str
    categories: tuple[int, int, int, int]
    values: tuple[int, int, int, int]
    colour: str
    line: bool = True
    width_pt: float = 2.25
    dash: bool = False
    marker: str = ""
    labels: tuple[str, ...] = ()
    sheet: str = ""


class Chart(Frozen, kw_only=True):
    """A native chart that stands over rows left empty for it. `alt` says in words what it shows; it may not be empty."""

    kind: Literal["scatter", "bar", "column", "stacked bar"]
    title: str
    alt: str
    series: tuple[Series, ...]
    row: int
    column: int = 0
    width_px: int = 660
    height_px: int = 280
    x_title: str = ""
    y_title: str = ""
    y_reversed: bool = False
    y_most: float | None = None  # where the axis ends; None: as the spreadsheet program likes
    legend: bool = True
    number_format: str = "General"

    def __post_init__(self) -> None:
        if not self.alt:
            raise ValueError("a chart needs words for those who cannot see it")


class Picture(Frozen, kw_only=True):
    """An image (PNG or JPEG bytes) set at a cell, scaled to a height; `alt` says what it shows."""

    data: bytes
    alt: str
    row: int
    column: int
    height_px: int


class Sheet(Frozen, kw_only=True):
    """One sheet. `widths` are column widths in characters; `repeat` rows (first, last; from 0) head every printed page.

    `scale` is the print size in percent; None: as large as fits one page wide, never above 100. Where that saves a page the
    sheet is printed smaller, down to `smallest` percent.
    """

    name: str
    widths: tuple[float, ...]
    rows: tuple[Row, ...]
    repeat: tuple[int, int] | None = None
    freeze_rows: int = 0
    footer_left: str = ""
    page_words: tuple[str, str] = ("Page", "of")
    scale: int | None = None
    smallest: int = 75
    protect: bool = False
    tab: str = ""  # RRGGBB
    charts: tuple[Chart, ...] = ()
    pictures: tuple[Picture, ...] = ()


class Book(Frozen, kw_only=True):
    """A workbook: its sheets, the day it carries, its title, and the one accent colour its styles are made of."""

    title: str
    day: date
    accent: str
    sheets: tuple[Sheet, ...]
    names: tuple[tuple[str, str], ...] = ()  # defined names, (name, ='Sheet'!$A$1)

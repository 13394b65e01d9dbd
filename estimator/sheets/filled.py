"""A workbook as issued in; the cells a reader may write in, and the sums that count what is marked in them, out."""

import re
from collections.abc import Mapping
from decimal import Decimal
from io import BytesIO
from pathlib import Path
from typing import Any

from estimator.disk.whole import read_bytes
from estimator.model.frozen import Frozen

MARK = "x"
COUNTS_MARKS = re.compile(r'=ROUND\(SUMIF\(([A-Z]+)(\d+):\1(\d+),"x",([A-Z]+)\2:\4\3\),2\)')


def marked(boxes: str, prices: str) -> str:
    """The sum of the prices of the rows whose box is marked with an x, large or small: the one sum a reader's mark moves.

    A box left empty, or with any other word in it, such as no, counts nothing. The text left of a price ends with the row's
    short name in parentheses.

    >>> marked("A12:A13", "C12:C13")
    '=ROUND(SUMIF(A12:A13,"x",C12:C13),2)'
    """
    return f'=ROUND(SUMIF({boxes},"{MARK}",{prices}),2)'


class MarkedSum(Frozen):
    """Such a sum: where it stands, and by box what a mark adds and its short name."""

    cell: str
    adds: Mapping[str, Decimal]
    names: Mapping[str, str]

    def marked(self, written: Mapping[str, str]) -> tuple[str, ...]:
        """The boxes with an x."""
        return tuple(box for box in self.adds if written.get(box, "").strip().lower() == MARK)

    def unclear(self, written: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
        """The boxes with something else in them, and what: a yes, a tick, a no. Only a person can ask what is meant."""
        words = {box: written.get(box, "").strip() for box in self.adds}
        return tuple((box, word) for box, word in words.items() if word and word.lower() != MARK)

    def counted(self, written: Mapping[str, str]) -> Decimal:
        """The sum of what is marked."""
        return sum((self.adds[box] for box in self.marked(written)), Decimal(0))


class ToFill(Frozen):
    """What may be written on one sheet."""

    cells: frozenset[str]
    sums: tuple[MarkedSum, ...]


def to_fill(path: Path) -> dict[str, ToFill]:
    """Of every protected sheet by its name: on one without protection every cell is as good as another."""
    from openpyxl import load_workbook

    data = read_bytes(path)
    values, formulas = (load_workbook(BytesIO(data), data_only=only) for only in (True, False))
    return {s.title: _of(s, formulas[s.title]) for s in values.worksheets if s.protection.sheet}


def _of(values: Any, formulas: Any) -> ToFill:
    cells = [cell for row in formulas.iter_rows() for cell in row]
    open_cells = frozenset(cell.coordinate for cell in cells if not cell.protection.locked)
    found = [(cell.coordinate, match) for cell in cells if (match := COUNTS_MARKS.fullmatch(str(cell.value or "")))]
    return ToFill(open_cells, tuple(_sum(values, at, match) for at, match in found))


def _sum(values: Any, at: str, match: re.Match[str]) -> MarkedSum:
    boxes, first, last, prices = match.groups()
    rows = {f"{boxes}{row}": values[f"{prices}{row}"] for row in range(int(first), int(last) + 1)}
    adds = {box: Decimal(str(price.value)) for box, price in rows.items()}
    names = {box: short_name(str(price.offset(column=-1).value)) for box, price in rows.items()}
    return MarkedSum(at, adds, names)


def short_name(text: str) -> str:
    """Return the last words in parentheses.

    >>> short_name("A cleanout (two-way) at the wall (cleanout)")
    'cleanout'
    """
    return text.rstrip(")").rpartition("(")[2]

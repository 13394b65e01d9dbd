"""A workbook as issued in; the cells a reader may write in, and the sums that count what is marked in them, out."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from io import BytesIO
from pathlib import Path
from typing import Any

COUNTS_MARKS = re.compile(r'=ROUND\(([A-Z]+\d+)\+SUMIF\(([A-Z]+)(\d+):\2(\d+),"<>",([A-Z]+)\3:\5\4\),2\)')
"""A total and the prices of the rows whose box is marked; the only sum that a reader's mark moves."""


@dataclass(frozen=True, slots=True)
class MarkedSum:
    """Such a sum: where it stands, the sum without marks, and by box what a mark adds."""

    cell: str
    unmarked: Decimal
    adds: Mapping[str, Decimal]

    def counted(self, written: Mapping[str, str]) -> Decimal:
        """With what is written in the boxes, whatever it is."""
        return self.unmarked + sum((price for box, price in self.adds.items() if written.get(box)), Decimal(0))


@dataclass(frozen=True, slots=True)
class ToFill:
    """What may be written on one sheet."""

    cells: frozenset[str]
    sums: tuple[MarkedSum, ...]


def to_fill(path: Path) -> dict[str, ToFill]:
    """Of every protected sheet by its name: on one without protection every cell is as good as another."""
    from openpyxl import load_workbook

    data = path.read_bytes()
    values, formulas = (load_workbook(BytesIO(data), data_only=only) for only in (True, False))
    return {s.title: _of(s, formulas[s.title]) for s in values.worksheets if s.protection.sheet}


def _of(values: Any, formulas: Any) -> ToFill:
    cells = [cell for row in formulas.iter_rows() for cell in row]
    open_cells = frozenset(cell.coordinate for cell in cells if not cell.protection.locked)
    found = [(cell.coordinate, match) for cell in cells if (match := COUNTS_MARKS.fullmatch(str(cell.value or "")))]
    return ToFill(open_cells, tuple(_sum(values, at, match) for at, match in found))


def _sum(values: Any, at: str, match: re.Match[str]) -> MarkedSum:
    total, boxes, first, last, prices = match.groups()
    rows = range(int(first), int(last) + 1)
    adds = {f"{boxes}{row}": Decimal(str(values[f"{prices}{row}"].value)) for row in rows}
    return MarkedSum(at, Decimal(str(values[total].value)), adds)

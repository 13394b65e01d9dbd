"""Points of two curves in, a small chart of them for the terminal out."""

from collections.abc import Sequence
from decimal import Decimal

from estimator.cli.views.words import Words

HIGH, MOST_WIDE = 8, 60
BOTH, NOW = "*", "^"
Point = tuple[float, float, float]


def curve(points: Sequence[Point], now: float, columns: int, marks: tuple[str, str], words: Words) -> list[str]:
    """Rows of (x, first, second) in dollars: prices up the side, x along the foot with a `^` where the job stands.

    >>> for row in curve([(0, 100, 900), (1, 500, 500), (2, 900, 100)], 1, 12, ("o", "x"), Words()): print(row)
    $900 │x   o
         │
         │
         │
         │  *
         │
         │
    $100 │o   x
         └──^──
          0   2
    """
    low, high = min(min(p[1:]) for p in points), max(max(p[1:]) for p in points)
    labels = [words.dollars(Decimal(round(price)), whole=True) for price in (high, low)]
    edge = max(map(len, labels))
    wide = min(MOST_WIDE, columns - edge - 2, 2 * len(points) - 1)
    cells = _cells(points, wide, low, high, marks)
    side = [labels[0], *[""] * (HIGH - 2), labels[1]]
    rows = [f"{label:>{edge}} │{''.join(row)}".rstrip() for label, row in zip(side, cells, strict=True)]
    first, last = points[0][0], points[-1][0]
    at = _column(now, first, last, wide)
    foot = "─" * at + NOW + "─" * (wide - at - 1) if first <= now <= last else "─" * wide
    ends = words.number(first), words.number(last)
    return [*rows, f"{'':>{edge}} └{foot}", f"{'':>{edge}}  {ends[0]}{ends[1]:>{wide - len(ends[0])}}"]


def _cells(points: Sequence[Point], wide: int, low: float, high: float, marks: tuple[str, str]) -> list[list[str]]:
    cells = [[" "] * wide for _ in range(HIGH)]
    for x, *prices in points:
        column = _column(x, points[0][0], points[-1][0], wide)
        for price, mark in zip(prices, marks, strict=True):
            row = round((high - price) / (high - low) * (HIGH - 1)) if high > low else 0
            there = cells[row][column]
            cells[row][column] = BOTH if there not in (" ", mark) else mark
    return cells


def _column(x: float, first: float, last: float, wide: int) -> int:
    return round((x - first) / (last - first) * (wide - 1)) if last > first else 0

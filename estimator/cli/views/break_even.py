"""Where two ways break even in; a small chart and a table of the turns along each thing that may be otherwise than noted, out."""

from collections.abc import Sequence
from decimal import Decimal

from estimator.cli.views.layout import Layout
from estimator.cli.views.table import table
from estimator.cli.views.words import Words
from estimator.model.comparison import AlongAxis, BreakEven, Turn

FIRST, SECOND = "o", "x"


def write_turns(out: Layout, even: BreakEven) -> None:
    """All in: a sentence for each thing that changes nothing; chart and real prices where the choice turns."""
    ways = {"first": out.term(even.first), "second": out.term(even.second)}
    out.heading(out.speak("Where {first} and {second} break even, floor and all", **ways))
    for along in even.along:
        said = "; ".join(_turn(turn, along, out) for turn in along.turns) + "."
        out.paragraph(_now(along, out) + (said if along.turns else _no_turn(along, even, out)), hanging=2)
        if along.turns:
            _charted(out, along, even)


def _now(along: AlongAxis, words: Words) -> str:
    axis = along.axis
    if not axis.known:
        return words.speak("{what} (now not known): ", what=words.sentence(axis.name))
    now, unit = words.number(axis.now), words.term(axis.unit)
    return words.speak("{what} (now {now} {unit}): ", what=words.sentence(axis.name), now=now, unit=unit)


def _no_turn(along: AlongAxis, even: BreakEven, words: Words) -> str:
    cheaper = even.first if along.points[0][1] < along.points[0][2] else even.second
    return words.speak(
        "{way} is cheaper all the way from {low} to {high} {unit}.",
        way=words.term(cheaper),
        low=words.number(along.axis.low),
        high=words.number(along.axis.high),
        unit=words.term(along.axis.unit),
    )


def _charted(out: Layout, along: AlongAxis, even: BreakEven) -> None:
    """The two curves, and the real prices a step below and above each turn."""
    narrow = out.columns - 2
    heads = (out.speak("real prices"), f"{FIRST} {out.term(even.first)}", f"{SECOND} {out.term(even.second)}")
    prices = [cells for turn in along.turns for cells in _real(turn, along, out)]
    drawn = curve(along.points, along.axis.now, narrow, (FIRST, SECOND), out)
    out.lines("  " + line for line in [*drawn, *table(heads, prices, narrow, right=(1, 2))])
    if any(_otherwise(turn, even) for turn in along.turns):
        steps = out.speak("Real prices go up in steps and keep least charges, so they turn a little before or after.")
        out.paragraph(steps, by=2)


def _otherwise(turn: Turn, even: BreakEven) -> bool:
    """The real prices a step below or above the turn do not yet say the same."""
    sides = ((turn.below, turn.prices_below), (turn.above, turn.prices_above))
    return any((way == even.first) != (prices[0] < prices[1]) for way, prices in sides)


def _turn(turn: Turn, along: AlongAxis, words: Words) -> str:
    return words.speak(
        "up to {at} {unit} {below} is cheaper, beyond that {above}",
        at=words.number(turn.at),
        unit=words.term(along.axis.unit),
        below=words.term(turn.below),
        above=words.term(turn.above),
    )


def _real(turn: Turn, along: AlongAxis, words: Words) -> list[tuple[str, ...]]:
    """The real all-in prices of both ways a step of the grid below the turn and above it."""
    unit, step = words.term(along.axis.unit), along.axis.step
    sides = ((turn.at - step, turn.prices_below), (turn.at + step, turn.prices_above))
    return [
        (f"{words.number(at)} {unit}", *(words.dollars(price, whole=True) for price in prices)) for at, prices in sides
    ]


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

"""Where two ways break even in; a small chart and a table of the turns along each thing that may be otherwise than noted, out."""

from collections.abc import Sequence

from estimator.cli.views.curve import curve
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.vocabulary import term
from estimator.cli.views.words import dollars, number, sentence
from estimator.model.comparison import AlongAxis, BreakEven, Turn
from estimator.wording.say import speaker

FIRST, SECOND = "o", "x"


def turning(even: BreakEven, columns: int, language: str) -> list[Row]:
    """All in: a sentence for each thing that changes nothing; chart and real prices where the choice turns."""
    ways = {"first": term(even.first, language), "second": term(even.second, language)}
    speak = speaker(language)
    out = [Row(""), Row(speak("Where {first} and {second} break even, floor and all", **ways), "head")]
    for along in even.along:
        out += _charted(along, even, columns, language) if along.turns else _no_turn(along, even, columns, language)
    return out


def _head(along: AlongAxis, language: str) -> str:
    now = number(along.axis.now, language=language)
    name, unit = sentence(along.axis.name, language), term(along.axis.unit, language)
    return speaker(language)("{what} (now {now} {unit}): ", what=name, now=now, unit=unit)


def _no_turn(along: AlongAxis, even: BreakEven, columns: int, language: str) -> list[Row]:
    cheaper = even.first if along.points[0][1] < along.points[0][2] else even.second
    text = speaker(language)(
        "{way} is cheaper all the way from {low} to {high} {unit}.",
        way=term(cheaper, language),
        low=number(along.axis.low, language=language),
        high=number(along.axis.high, language=language),
        unit=term(along.axis.unit, language),
    )
    return [Row(line) for line in indented(_head(along, language) + text, columns, by=0, hanging=2)]


def _charted(along: AlongAxis, even: BreakEven, columns: int, language: str) -> list[Row]:
    """What turns, the two curves, and the real prices a step below and above each turn."""
    speak, unit = speaker(language), term(along.axis.unit, language)
    text = "; ".join(_turn(turn, unit, language) for turn in along.turns)
    out = [Row(line) for line in indented(f"{_head(along, language)}{text}.", columns, by=0, hanging=2)]
    out += [Row("  " + line) for line in curve(along.points, along.axis.now, columns - 2, (FIRST, SECOND), language)]
    first, second = (f"{mark} {term(way, language)}" for mark, way in ((FIRST, even.first), (SECOND, even.second)))
    rows = [row for turn in along.turns for row in _real(turn, along.axis.step, unit, language)]
    cells = table((speak("real prices"), first, second), rows, columns - 2, right=(1, 2))
    out += [Row("  " + line) for line in cells]
    if any(_otherwise(turn, even) for turn in along.turns):
        said = speak("Real prices go up in steps and keep least charges, so they turn a little before or after.")
        out += [Row(line) for line in indented(said, columns)]
    return out


def _otherwise(turn: Turn, even: BreakEven) -> bool:
    """The real prices a step below or above the turn do not yet say the same."""
    sides = ((turn.below, turn.prices_below), (turn.above, turn.prices_above))
    return any((way == even.first) != (prices[0] < prices[1]) for way, prices in sides)


def _turn(turn: Turn, unit: str, language: str) -> str:
    return speaker(language)(
        "below {at} {unit} {below} is cheaper, above it {above}",
        at=number(turn.at, language=language),
        unit=unit,
        below=term(turn.below, language),
        above=term(turn.above, language),
    )


def _real(turn: Turn, step: float, unit: str, language: str) -> Sequence[tuple[str, ...]]:
    """The real all-in prices of both ways a step of the grid below the turn and above it."""
    sides = ((turn.at - step, turn.prices_below), (turn.at + step, turn.prices_above))
    return [
        (f"{number(at, language=language)} {unit}", *(dollars(p, whole=True, language=language) for p in prices))
        for at, prices in sides
    ]

"""Where two ways break even in; a small chart and a table of the turns along each thing that may be otherwise than noted, out."""

from estimator.cli.views.curve import curve
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
        "below {at} {unit} {below} is cheaper, above it {above}",
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

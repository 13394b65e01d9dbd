"""`estimator compare`: a chart and the real prices where the choice turns, a sentence where it does not."""

from decimal import Decimal

import pytest

from estimator.cli.views.break_even import BOTH, HIGH, NOW, curve, write_turns
from estimator.cli.views.layout import Layout
from estimator.cli.views.words import Words
from estimator.model.comparison import AlongAxis, Axis, BreakEven, Turn
from estimator.model.say import Say

NEVER, ONCE = ((0.0, 1.0, 2.0), (10.0, 3.0, 4.0)), ((0.0, 1.0, 2.0), (10.0, 4.0, 3.0))


def even(points: tuple, *turns: Turn) -> BreakEven:
    axis = Axis(name=Say.of("depth of the pipe"), unit="ft", low=0, high=10, step=0.5, now=5)
    return BreakEven(first="tunnel", second="break-through", along=(AlongAxis(axis=axis, turns=turns, points=points),))


def turn(below: tuple[int, int], above: tuple[int, int]) -> Turn:
    prices = [tuple(Decimal(p) for p in pair) for pair in (below, above)]
    return Turn(at=5.0, below="tunnel", above="break-through", prices_below=prices[0], prices_above=prices[1])


def text(even: BreakEven, columns: int = 80) -> list[str]:
    out = Layout(columns=columns)
    write_turns(out, even)
    return [row.text for row in out.rows]


def test_where_nothing_turns_a_sentence_says_which_is_cheaper() -> None:
    rows = text(even(NEVER))
    assert "tunnel is cheaper all the way from 0 to 10 ft" in " ".join(rows)
    assert not any("│" in row for row in rows)


def test_a_turn_has_a_chart_and_both_real_prices_on_both_sides() -> None:
    rows = text(even(ONCE, turn((100, 200), (400, 300))))
    assert sum("│" in row for row in rows) == HIGH
    table = [row.split() for row in rows if row.strip().startswith(("4.5 ft", "5.5 ft"))]
    assert table == [["4.5", "ft", "$100", "$200"], ["5.5", "ft", "$400", "$300"]]
    assert not any("steps" in row for row in rows)


def test_real_prices_that_do_not_turn_there_are_explained() -> None:
    assert any("in steps" in row for row in text(even(ONCE, turn((100, 200), (300, 400)))))


@pytest.mark.parametrize("columns", [40, 60, 80, 120])
def test_a_chart_keeps_within_the_columns(columns: int) -> None:
    points = [(x / 2, 1000.0 * x, 90_000.0 - 1000.0 * x) for x in range(90)]
    assert all(len(row) <= columns for row in curve(points, 10.0, columns, ("o", "x"), Words()))


def test_the_curves_cross_where_they_are_equal_and_the_foot_marks_where_the_job_stands() -> None:
    rows = curve([(float(x), float(x), 10.0 - x) for x in range(11)], 5.0, 80, ("o", "x"), Words())
    crossing = next(row for row in rows if BOTH in row)
    assert crossing.index(BOTH) == rows[HIGH].index(NOW)


def test_a_flat_pair_is_drawn_without_a_fault() -> None:
    assert curve([(0.0, 5.0, 5.0), (1.0, 5.0, 5.0)], 9.0, 40, ("o", "x"), Words())

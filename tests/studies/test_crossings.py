"""Where two curves change places, against crossings known in closed form [computed]."""

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.studies.crossings import crossings, grid


def test_two_straight_lines_cross_where_algebra_says() -> None:
    (found,) = crossings(lambda x: 1_000 + 310 * x, lambda x: 6_000 + 90 * x, 0, 60, 0.5)
    assert found.at == pytest.approx(5_000 / 220, abs=1e-3)
    assert found.cheaper_before == 0
    assert found.before[0] < found.before[1] and found.after[0] > found.after[1]


def test_every_crossing_of_a_wave_is_found() -> None:
    found = crossings(math.sin, lambda x: 0.0, 0.25, 10, 0.5)
    assert [c.at for c in found] == [pytest.approx(math.pi * n, abs=1e-3) for n in (1, 2, 3)]
    assert [c.cheaper_before for c in found] == [1, 0, 1]


def test_a_step_is_a_crossing_too() -> None:
    (found,) = crossings(lambda x: 10.0 if x < 7.3 else 30.0, lambda x: 20.0, 0, 20, 0.5)
    assert found.at == pytest.approx(7.3, abs=1e-3)


def test_curves_that_only_touch_do_not_cross() -> None:
    assert crossings(lambda x: (x - 5) ** 2, lambda x: 0.0, 0, 10, 0.5) == ()


def test_a_crossing_right_on_the_grid_is_found_once() -> None:
    (found,) = crossings(lambda x: x, lambda x: 5.0, 0, 10, 0.5)
    assert found.at == pytest.approx(5.0, abs=1e-3)


def test_alike_curves_have_no_crossing() -> None:
    assert crossings(lambda x: 3.0, lambda x: 3.0, 0, 10, 0.5) == ()


@pytest.mark.parametrize(("low", "high", "step"), [(5, 5, 1), (5, 4, 1), (0, 1, 0)])
def test_an_empty_range_or_step_is_refused(low: float, high: float, step: float) -> None:
    with pytest.raises(ValueError, match="range and a step"):
        crossings(lambda x: x, lambda x: 1.0, low, high, step)


@given(st.floats(-50, 50), st.floats(0.1, 40), st.floats(0.1, 5))
def test_the_grid_holds_both_ends_and_no_gap_above_a_step(low: float, width: float, step: float) -> None:
    points = grid(low, low + width, step)
    assert points[0] == low and points[-1] == pytest.approx(low + width)
    assert all(0 < b - a <= step * (1 + 1e-6) for a, b in pairwise(points))

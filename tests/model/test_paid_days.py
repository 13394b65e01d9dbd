"""Days a crew is paid for, against trying every half day in order."""

import math
import random

import pytest

from estimator.model.paid_days import paid_steps


def tried(work: float, set_up: float, day: float, step: float, tolerance: float) -> int:
    """The same answer the slow way: one step after another."""
    steps = 1
    while day * steps * step + tolerance + 1e-9 < work + set_up * math.ceil(steps * step):
        steps += 1
    return steps


def test_the_days_are_those_that_trying_one_after_another_finds() -> None:
    luck = random.Random(4)
    for _ in range(3_000):
        work, set_up = luck.choice((luck.uniform(0.01, 400), luck.randint(1, 400) / 4)), luck.choice((0, 1, 1.5, 6.75))
        step, tolerance = luck.choice((0.5, 0.25, 1.0, 0.3)), luck.choice((0, 0.25))
        found = paid_steps(work, set_up, day_hours=8, step_days=step, tolerance_hours=tolerance)
        assert found == tried(work, set_up, 8, step, tolerance), (work, set_up, step, tolerance)


def test_a_hundred_million_hours_are_counted_at_once() -> None:
    # 100,000,000 h at 7 h of work a day, in halves [computed]
    assert paid_steps(1e8, 1, day_hours=8, step_days=0.5, tolerance_hours=0) == 28_571_429


@pytest.mark.parametrize(("set_up", "step"), [(8.0, 0.5), (1.0, 0.0)])
def test_a_day_that_holds_nothing_is_refused(set_up: float, step: float) -> None:
    with pytest.raises(ValueError, match="no day of 8 h"):
        paid_steps(5, set_up, day_hours=8, step_days=step, tolerance_hours=0.25)

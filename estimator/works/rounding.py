"""Lengths rounded up to the step a crew digs to, sums, and lengths as a person writes them."""

import math
from collections.abc import Iterable


def up(value: float, step: float = 1.0) -> float:
    """Return the next whole step; what floating numbers add in the last places does not count.

    >>> up(3.9175, 0.1), up(2.375, 0.1), up(4.0, 0.1), up(27 / 4), up(0.3 / 0.1)
    (4.0, 2.4, 4.0, 7.0, 3.0)
    """
    steps = math.ceil(round(value / step, 9))
    return round(steps * step, 9)


def shown(value: float) -> str:
    """Return a length inside a list of lengths, as a person would write it.

    >>> shown(12.66667), shown(3.0)
    ('12.67', '3')
    """
    return f"{round(value, 2):g}"


def total(values: Iterable[float]) -> float:
    """Return the sum without the loss of adding floats one by one.

    >>> total([0.1] * 10)
    1.0
    """
    return math.fsum(values)

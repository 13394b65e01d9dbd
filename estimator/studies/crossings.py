"""Two prices as functions of one number in, every place where the cheaper one changes, out. Knows nothing of pipes."""

import math
from collections.abc import Callable, Iterator

from estimator.model.frozen import Frozen

Curve = Callable[[float], float]
WIDTH = 1e-3
"""A crossing is closed in on until its two sides lie this near."""


class Crossing(Frozen):
    """Where the choice turns. `before` and `after` are the two prices one grid step below and above; `cheaper_before` is
    the one (0 or 1) that is cheaper below."""

    at: float
    cheaper_before: int
    before: tuple[float, float]
    after: tuple[float, float]


def crossings(first: Curve, second: Curve, low: float, high: float, step: float) -> tuple[Crossing, ...]:
    """All changes of sign of first − second on a grid, each closed in on by halving. low < high, step > 0.

    A place where the two only touch is no change. Two changes within one step cancel out and are not seen.

    >>> [round(c.at, 2) for c in crossings(lambda x: 100 + 10 * x, lambda x: 160 + 4 * x, 0, 20, 0.5)]
    [10.0]

    Errors: ValueError for an empty range or a step of nothing.
    """
    if low >= high or step <= 0:
        raise ValueError("crossings need a range and a step above zero")
    return tuple(_crossings(first, second, grid(low, high, step)))


def grid(low: float, high: float, step: float) -> tuple[float, ...]:
    """low, low + step … and high itself.

    >>> grid(0, 1.2, 0.5)
    (0.0, 0.5, 1.0, 1.2)
    """
    count = math.floor((high - low) / step + 1e-9)
    inner = tuple(low + i * step for i in range(count + 1))
    return inner if high - inner[-1] < 1e-9 else (*inner, high)


def _crossings(first: Curve, second: Curve, points: tuple[float, ...]) -> Iterator[Crossing]:
    def difference(x: float) -> float:
        return first(x) - second(x)

    last, sign = points[0], difference(points[0])
    for here in points[1:]:
        now = difference(here)
        if sign * now < 0:
            at = _halve(difference, last, here)
            yield Crossing(at, int(sign > 0), (first(last), second(last)), (first(here), second(here)))
        if now != 0:
            last, sign = here, now


def _halve(difference: Curve, low: float, high: float) -> float:
    below = difference(low) > 0
    while high - low > WIDTH:
        middle = (low + high) / 2
        if (difference(middle) > 0) == below:
            low = middle
        else:
            high = middle
    return (low + high) / 2

"""A water test's level readings in; how fast it leaks and at what height the opening likely lies, out.

While the level falls in risers of constant section, a steady opening under it lets water out as the square root of the
height of water above it (orifice flow, Torricelli). The root of that height then falls in a straight line:

    sqrt(height at t) = sqrt(height at start) - k t

so the drop is  d(t) = a + b t - c t²  and the opening lies  a + b² / 4c  below the level the test was filled to.
"""

from collections.abc import Sequence
from itertools import pairwise
from math import inf, sqrt
from typing import Literal

from estimator.model.frozen import Frozen

CHI_SQUARE_9_OF_10 = 2.706
"""What may be added to the least squares so that nine bands of ten hold the true height: chi-square, one degree of freedom, 90 %."""
STEPS, NEWTON_STEPS, HALVINGS = 50, 8, 8

Tells = Literal["band", "at or below", "nothing"]


class OpeningHeight(Frozen):
    """Where the opening lies below the level the test was filled to, inches.

    `tells` is "band" where both ends are known, "at or below" where the data give no lower end (`to_in` is then infinite),
    "nothing" where the level did not fall or too few readings were taken.
    """

    tells: Tells
    likely_in: float = 0.0
    from_in: float = 0.0
    to_in: float = inf


NOTHING = OpeningHeight("nothing")


def opening_height(readings: Sequence[tuple[float, float]], sigma_in: float, deepest_in: float) -> OpeningHeight:
    """Return where the opening lies, from (minutes, drop in inches) read while the level falls in open risers.

    `sigma_in` is the standard error of one reading; `deepest_in` how deep an opening can lie at all (the lowest pipe).
    Nine bands of ten hold the true height where the opening stays as it is and nothing else drains away.
    Source: orifice flow (Torricelli); the band by profile likelihood. Errors: ValueError for an error of 0 or less.

    >>> drops = [(t, 24 - (24**0.5 - 0.08 * t) ** 2) for t in (0, 10, 20, 30, 40, 50)]
    >>> found = opening_height(drops, 0.05, 60)
    >>> found.tells, round(found.likely_in)
    ('band', 24)
    """
    if sigma_in <= 0:
        raise ValueError("a reading has an error above 0")
    if len(readings) < 3 or readings[-1][1] - readings[0][1] < 3 * sigma_in:
        return NOTHING
    lowest = max(drop for _, drop in readings)
    top = max(deepest_in, lowest + 1.0)
    least = lowest - 4 * sigma_in  # the last reading may itself be off
    heights = [least + (top - least) * (n / STEPS) ** 2 for n in range(STEPS + 1)]
    misfits = [_misfit(readings, height, sigma_in) for height in heights]
    best = min(range(len(heights)), key=misfits.__getitem__)
    limit = misfits[best] + CHI_SQUARE_9_OF_10
    inside = [n for n, misfit in enumerate(misfits) if misfit <= limit]

    def edge(within: int, beyond: int) -> float:
        low, high = heights[within], heights[beyond]
        for _ in range(HALVINGS):
            middle = (low + high) / 2
            low, high = (middle, high) if _misfit(readings, middle, sigma_in) <= limit else (low, middle)
        return high

    low_edge = edge(inside[0], inside[0] - 1) if inside[0] > 0 else heights[0]
    if inside[-1] == STEPS:
        return OpeningHeight("at or below", heights[best], low_edge, inf)
    return OpeningHeight("band", heights[best], low_edge, edge(inside[-1], inside[-1] + 1))


def _misfit(readings: Sequence[tuple[float, float]], height_in: float, sigma_in: float) -> float:
    """Return the least sum of squared errors, each over sigma, of a curve that ends at this height.

    Once the water is down at the opening the curve stays there.
    """
    return _error(readings, height_in, *_fitted(readings, height_in)) / sigma_in**2


def _fitted(readings: Sequence[tuple[float, float]], height_in: float) -> tuple[float, float]:
    """Return the root of the water at minute 0 and how fast it falls, by Gauss and Newton from the line through the roots."""
    start, fall = _line(
        [t for t, _ in readings], [sqrt(max(height_in - drop, 0.0)) for _, drop in readings], [1.0] * len(readings)
    )
    found = _error(readings, height_in, start, -fall)
    best = (found, start, -fall)
    for _ in range(NEWTON_STEPS):
        _, start, k = best
        step = _step(readings, height_in, start, k)
        tries = [(start + step[0] * share, k + step[1] * share) for share in (1.0, 0.5, 0.1)]
        better = min(((_error(readings, height_in, *one), *one) for one in tries), key=lambda one: one[0])
        if better[0] >= best[0] - 1e-9:
            break
        best = better
    return best[1], best[2]


def _error(readings: Sequence[tuple[float, float]], height_in: float, start: float, k: float) -> float:
    return sum((drop - height_in + max(start - k * t, 0.0) ** 2) ** 2 for t, drop in readings)


def _step(readings: Sequence[tuple[float, float]], height_in: float, start: float, k: float) -> tuple[float, float]:
    """Return the change of start and fall that the error's slope asks for."""
    aa = ab = bb = ae = be = 0.0
    for t, drop in readings:
        root = max(start - k * t, 0.0)
        a, b, error = 2 * root, -2 * root * t, drop - height_in + root**2
        aa, ab, bb, ae, be = aa + a * a, ab + a * b, bb + b * b, ae + a * error, be + b * error
    determinant = aa * bb - ab * ab
    if determinant <= 1e-12:
        return 0.0, 0.0
    return (ab * be - bb * ae) / determinant, (ab * ae - aa * be) / determinant


def _line(x: Sequence[float], y: Sequence[float], w: Sequence[float]) -> tuple[float, float]:
    """Return where a straight line begins and how it rises, by weighted least squares."""
    total = sum(w)
    middle_x = sum(a * b for a, b in zip(w, x, strict=True)) / total
    middle_y = sum(a * b for a, b in zip(w, y, strict=True)) / total
    spread = sum(c * (a - middle_x) ** 2 for a, c in zip(x, w, strict=True))
    if spread <= 0:
        return middle_y, 0.0
    rise = sum(c * (a - middle_x) * (b - middle_y) for a, b, c in zip(x, y, w, strict=True)) / spread
    return middle_y - rise * middle_x, rise


def rate_at(readings: Sequence[tuple[float, float]], drop_in: float) -> float | None:
    """Return how fast the level falls, inches an hour, between the two readings around a drop; None beyond the readings.

    >>> rate_at([(0, 0), (10, 1), (30, 2)], 0.5), rate_at([(0, 0), (10, 1), (30, 2)], 1.5), rate_at([(0, 0)], 1)
    (6.0, 3.0, None)
    """
    for (early, high), (late, low) in pairwise(readings):
        if high <= drop_in <= low and late > early and low > high:
            return (low - high) / (late - early) * 60
    return None


def air_left_first(
    readings: Sequence[tuple[float, float]], settle_min: float, sigma_in: float, deepest_in: float
) -> float:
    """Return how many inches the level fell in the first minutes beyond what the later curve explains; 0 where that is no more than its error.

    The later curve is that of the opening at its likely height, followed back to the first reading; a straight line where the
    later readings do not tell one.

    >>> round(air_left_first([(0, 0), (5, 1.0), (10, 1.25), (20, 1.75), (30, 2.25)], 10, 0.06, 60), 2)
    0.75
    >>> air_left_first([(0, 0), (10, 0.5), (20, 1.0)], 10, 0.06, 60)
    0.0
    >>> air_left_first([(t, 12 - (12**0.5 - 0.03 * t) ** 2) for t in range(0, 90, 10)], 10, 0.06, 60)
    0.0
    """
    late = [r for r in readings if r[0] >= settle_min]
    if len(late) < 2 or readings[0][0] >= settle_min or late[-1][0] <= late[0][0]:
        return 0.0
    (first, at), (start, reached), (end, last) = readings[0], late[0], late[-1]
    back = (last - reached) / (end - start) * (start - first)
    found = opening_height(late, sigma_in, deepest_in)
    if found.tells != "nothing":
        height = found.likely_in
        root, k = _fitted(late, height)
        back = max(back, (root - k * first) ** 2 - max(root - k * start, 0.0) ** 2)
    extra = round(reached - at - back, 6)
    return extra if extra > 3 * sigma_in else 0.0

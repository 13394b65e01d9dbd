"""A water test's readings and open risers in; how fast water leaves, gallons a day, out.

Every opening at the water line falls together, so the area that counts is that of all of them.
"""

from collections.abc import Iterable
from math import pi

from estimator.model.job import WaterTest

CUBIC_IN_PER_GALLON = 231.0
MINUTES_PER_DAY = 1440.0


def open_area_sqin(risers_in: Iterable[float]) -> float:
    """Water surface of all open risers: the sum of pi/4 d^2, sq in.

    >>> round(open_area_sqin([4.0]), 2)
    12.57
    """
    return sum(pi / 4 * d * d for d in risers_in)


def gallons_a_day(drop_in: float, minutes: float, area_sqin: float) -> float:
    """drop x area / 231 over the minutes, for a day. Errors: ValueError unless the minutes are above 0.

    42.6 sq in open, 1 1/2 in gone in 20 min is 20 gallons a day [computed].

    >>> round(gallons_a_day(1.5, 20, 42.6), 1)
    19.9
    >>> round(gallons_a_day(1.0, 15, open_area_sqin([3.0])), 2)  # 3 in riser, 1 in in 15 min
    2.94
    """
    if minutes <= 0:
        raise ValueError(f"a test lasts some minutes, not {minutes:g}")
    return drop_in * area_sqin / CUBIC_IN_PER_GALLON / minutes * MINUTES_PER_DAY


def settled(test: WaterTest, settle_min: float) -> tuple[tuple[float, float], ...]:
    """Readings from the time air has worked out of the pipe on; all of them where that would leave fewer than two.

    >>> settled(WaterTest(section="s", readings=((0, 0), (10, 1.0), (20, 1.5))), 10)
    ((10, 1.0), (20, 1.5))
    """
    start = test.settled_min if test.settled_min is not None else settle_min
    late = tuple(r for r in test.readings if r[0] >= start)
    return late if len(late) > 1 else test.readings


def _while_it_fell(readings: tuple[tuple[float, float], ...]) -> tuple[tuple[float, float], ...]:
    """Without the readings after the level came to a hold: there nothing leaks any more.

    >>> _while_it_fell(((10, 1.0), (20, 4.0), (30, 4.0)))
    ((10, 1.0), (20, 4.0))
    """
    while len(readings) > 2 and readings[-1][1] == readings[-2][1]:
        readings = readings[:-1]
    return readings


def leak_rate(test: WaterTest, settle_min: float) -> float | None:
    """Gallons a day between the first settled reading and the last one before the level held; None without two readings or without open risers.

    >>> test = WaterTest(section="s", open_risers_in=(3.0,), readings=((0, 0), (15, 1.0)))
    >>> round(leak_rate(test, 10) or 0, 2)
    2.94
    """
    readings = _while_it_fell(settled(test, settle_min))
    if len(readings) < 2 or not test.open_risers_in:
        return None
    (start_min, start_in), (end_min, end_in) = readings[0], readings[-1]
    if end_min <= start_min:
        return None
    return gallons_a_day(end_in - start_in, end_min - start_min, open_area_sqin(test.open_risers_in))

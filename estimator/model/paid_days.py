"""Hours of work and hours of set-up a day in, how many steps of a day a crew is paid for out."""

import math
from collections.abc import Callable, Iterable

NOISE = 1e-9
"""Less than any hour that was ever meant: what adding floats may leave behind."""


def paid_steps(
    work_hours: float, set_up_hours: float, *, day_hours: float, step_days: float, tolerance_hours: float
) -> int:
    """The least n with day × n × step + tolerance ≥ work + set-up × ceil(n × step); 0 for no work.

    Set-up hangs on days and days on set-up: the whole days that hold both are counted first, then the steps of the last.
    Errors: ValueError where a set-up takes the whole day, or a step is nothing: no number of days is enough then.

    >>> [paid_steps(hours, 1, day_hours=8, step_days=0.5, tolerance_hours=0.25) for hours in (0, 3.25, 3.26, 52.10)]
    [0, 1, 2, 15]
    """
    paid = all_paid_steps(day_hours=day_hours, step_days=step_days, tolerance_hours=tolerance_hours)
    return paid([work_hours], [set_up_hours])[0]


def all_paid_steps(
    *, day_hours: float, step_days: float, tolerance_hours: float
) -> Callable[[Iterable[float], Iterable[float]], list[int]]:
    """Return the same for many at once: hours of work in, and of set-up a day, as many; steps of each out."""
    given, step_hours, up = tolerance_hours + NOISE, day_hours * step_days, math.ceil

    def steps(work_hours: float, set_up_hours: float) -> int:
        if work_hours <= 0:
            return 0
        if set_up_hours >= day_hours or step_days <= 0:
            raise ValueError(
                f"no day of {day_hours:g} h in steps of {step_days:g} holds a set-up of {set_up_hours:g} h"
            )
        over = work_hours - given
        whole_days = max(1, up(over / (day_hours - set_up_hours)))
        n = max(1, up((over + set_up_hours * whole_days) / step_hours))
        while step_hours * n < over + set_up_hours * up(n * step_days):
            n += 1  # only where the steps do not add up to a day
        return n

    return lambda work, set_up: list(map(steps, work, set_up))

"""Hours of work and hours of set-up a day in, how many steps of a day a crew is paid for out."""

import math

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
    if work_hours <= 0:
        return 0
    if set_up_hours >= day_hours or step_days <= 0:
        raise ValueError(f"no day of {day_hours:g} h in steps of {step_days:g} holds a set-up of {set_up_hours:g} h")
    over = work_hours - tolerance_hours - NOISE
    whole_days = max(1, math.ceil(over / (day_hours - set_up_hours)))
    steps = max(1, math.ceil((over + set_up_hours * whole_days) / (day_hours * step_days)))
    while day_hours * steps * step_days < over + set_up_hours * math.ceil(steps * step_days):
        steps += 1  # only where the steps do not add up to a day
    return steps

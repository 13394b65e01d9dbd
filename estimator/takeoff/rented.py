"""The takeoff of a repair and the days its ground is open, by the schedule, in; what is on rent for so long, out."""

from estimator.model.frozen import replace
from estimator.model.work import Input, Quantity, Takeoff

BY_DAY = {"dewater_days": "", "shoring_box_days": "boxes", "end_shield_days": "end_shields"}
"""What is paid for while the ground is open, and the quantity rented of which there are so many; "": one pump, by the day it runs."""
DAYS_OPEN, DAYS_CHARGED = "days open", "days charged"
WORKING_WEEK = 5.0


def on_rent(takeoff: Takeoff) -> bool:
    """Whether pumps or boxes are paid for as long as the ground is open."""
    return any(takeoff.value(name) for name in BY_DAY)


def days_charged(days: float, week: float) -> float:
    """Return the days charged for `days` of rent: each started week of 5 working days costs no more than `week` days.

    What is rented is priced by the day and by the week, the week at 3 to 4 days (common practice, from memory).
    """
    weeks, rest = divmod(days, WORKING_WEEK)
    return weeks * min(week, WORKING_WEEK) + min(rest, week)


def open_for(takeoff: Takeoff, days: float, week: float) -> Takeoff:
    """Return the takeoff with its pumps and boxes paid for until the dig is filled: `days`, a week of rent at `week` days.

    Boxes come out as the fill rises (29 CFR 1926.652(e)(1)(vi), from memory). Never for fewer days than it took without a schedule.
    """
    found = (_for(takeoff, one, days, week) if one.name in BY_DAY else one for one in takeoff.quantities)
    return replace(takeoff, quantities=tuple(found))


def _for(takeoff: Takeoff, one: Quantity, days: float, week: float) -> Quantity:
    rented = BY_DAY[one.name]
    charged = days_charged(days, week) if rented else days
    value = charged * (takeoff.value(rented) if rented else 1.0)
    if value <= one.value:
        return one
    kept = tuple(i for i in one.inputs if i.name not in (DAYS_OPEN, DAYS_CHARGED))
    so_long = (Input(DAYS_CHARGED, charged, "days"),) if rented else ()
    return replace(one, value=value, inputs=(*kept, Input(DAYS_OPEN, days, "days"), *so_long))

"""The takeoff of a repair and the days its ground is open, by the schedule, in; what is on rent for so long, out."""

from estimator.model.frozen import replace
from estimator.model.work import Input, Quantity, Takeoff

BY_DAY = {"dewater_days": "", "shoring_box_days": "boxes", "end_shield_days": "end_shields"}
"""What is charged by the day while the ground is open, and the quantity of which there are so many; "": one."""
PUMPED = "dewater_days"
DAYS_OPEN = "days open"


def on_rent(takeoff: Takeoff) -> bool:
    """Whether pumps or boxes are on rent as long as the ground is open."""
    return any(takeoff.value(name) for name in BY_DAY)


def open_for(takeoff: Takeoff, in_it: float, until_filled: float) -> Takeoff:
    """Return the takeoff with boxes for the days on which people are in the opening, and pumps until it is filled.

    Never for fewer days than it took without a schedule.
    """
    days = {name: until_filled if name == PUMPED else in_it for name in BY_DAY}
    found = (_for(takeoff, one, days[one.name]) if one.name in days else one for one in takeoff.quantities)
    return replace(takeoff, quantities=tuple(found))


def _for(takeoff: Takeoff, one: Quantity, days: float) -> Quantity:
    pieces = takeoff.value(BY_DAY[one.name]) if BY_DAY[one.name] else 1.0
    if pieces * days <= one.value:
        return one
    kept = (i for i in one.inputs if i.name != DAYS_OPEN)
    return replace(one, value=pieces * days, inputs=(*kept, Input(DAYS_OPEN, days, "days")))

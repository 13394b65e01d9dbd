"""The takeoffs of a scope and the days its ground is open, by the schedule, in; what is on rent for so long, out."""

from collections.abc import Mapping, Sequence

from estimator.model.frozen import Frozen, replace
from estimator.model.work import Input, Quantity, Takeoff
from estimator.tables.rows import Equipment
from estimator.tables.tables import Tables


class Rent(Frozen, kw_only=True):
    """How a thing is rented that stands while the ground is open.

    `pieces` is the quantity of which there are so many, "" for one. `by_week`: a week costs less than its days. `for_all`: one
    serves all digs of the scope, and stands from the first shovel of the first to the last fill.
    """

    pieces: str = ""
    by_week: bool = True
    for_all: bool = False


BY_MACHINE, BROUGHT = "excavator_days", "excavator_deliveries"
BY_DAY = {
    "dewater_days": Rent(by_week=False),
    "shoring_box_days": Rent(pieces="boxes"),
    "end_shield_days": Rent(pieces="end_shields"),
    BY_MACHINE: Rent(for_all=True),
}
"""What is paid for while the ground is open; a pump by the day it runs."""
DAYS_OPEN, DAYS_CHARGED, TIMES_BROUGHT = "days open", "days charged", "times brought"
WORKING_WEEK = 5.0

Days = Mapping[str, Sequence[int]]
"""The site days on which a repair digs or fills, by its id: open from the first to the last of them."""


def on_rent(takeoff: Takeoff) -> bool:
    """Whether something is paid for as long as the ground is open."""
    return any(takeoff.value(name) for name in BY_DAY)


def days_charged(days: float, week: float) -> float:
    """Return the days charged for `days` of rent: each started week of 5 working days costs no more than `week` days.

    What is rented is priced by the day and by the week, the week at 3 to 4 days (common practice, from memory).
    """
    weeks, rest = divmod(days, WORKING_WEEK)
    return weeks * min(week, WORKING_WEEK) + min(rest, week)


class Hire(Frozen, kw_only=True):
    """What a machine is rented at, in days of its rent: a week, the least each time, and to bring it and fetch it."""

    week: float
    trip: float = 0.0
    least: float = 1.0


def hire_of(tables: Tables) -> Hire | None:
    """Return what the excavator is rented at, by its rows; None where none is rented: the firm's own, or paid by a crew's days."""
    rented = [(row, per) for row, per in _asked(BY_MACHINE, tables) if not (row.own or row.crew)]
    day = sum(float(row.cost) * per for row, per in rented)
    if not day:
        return None
    trip = sum(float(row.cost) * per for row, per in _asked(BROUGHT, tables)) / day
    least = max(1.0, *(float(row.min_days) for row, _ in rented))
    return Hire(week=tables.number("rent_week_days"), trip=trip, least=least)


def _asked(quantity: str, tables: Tables) -> list[tuple[Equipment, float]]:
    """The rows of equipment that recipes ask for by a quantity, and how much of each."""
    by_ref = {r.ref: r.per for r in tables.recipes if r.part == "equipment" and r.quantity == quantity}
    return [(row, by_ref[row.item]) for row in tables.every(Equipment) if row.item in by_ref]


def rented_for(takeoffs: Sequence[Takeoff], days: Days, tables: Tables) -> tuple[Takeoff, ...]:
    """Return the takeoffs with all that is rented paid for until the digs are filled.

    Boxes come out as the fill rises (29 CFR 1926.652(e)(1)(vi), from memory). Never for fewer days than it took without a schedule.
    A machine of the firm's own, or one paid by its crew's days, is brought once and paid by the days it works.
    """
    out, hire, week = [], hire_of(tables), tables.number("rent_week_days")
    for takeoff in takeoffs:
        found = [
            _for(takeoff, one, _worked(takeoff, one.name, takeoffs, days), week, hire) if one.name in BY_DAY else one
            for one in takeoff.quantities
        ]
        out.append(replace(takeoff, quantities=tuple(found)) if on_rent(takeoff) else takeoff)
    return tuple(out)


def times_brought(takeoffs: Sequence[Takeoff]) -> float:
    """How often a machine that serves all digs comes to the site."""
    named = (i for t in takeoffs for q in t.quantities for i in q.inputs if i.name == TIMES_BROUGHT)
    return max((float(i.value) for i in named), default=1.0)


def _worked(takeoff: Takeoff, name: str, takeoffs: Sequence[Takeoff], days: Days) -> Sequence[int]:
    if not BY_DAY[name].for_all:
        return days.get(takeoff.repair.id, ())
    return sorted({day for t in takeoffs if t.value(name) for day in days.get(t.repair.id, ())})


def _for(takeoff: Takeoff, one: Quantity, worked: Sequence[int], week: float, hire: Hire | None) -> Quantity:
    if not worked:
        return one
    rent, there = BY_DAY[one.name], worked[-1] - worked[0] + 1
    charged, times = days_charged(there, week) if rent.by_week else float(there), 1
    if rent.for_all:
        charged, times = cheapest(worked, hire) if hire else (float(len(worked)), 1)
    value = charged * (takeoff.value(rent.pieces) if rent.pieces else 1.0)
    if value <= one.value and not rent.for_all:
        return one
    inputs = [i for i in one.inputs if i.name not in (DAYS_OPEN, DAYS_CHARGED)] + [Input(DAYS_OPEN, there, "days")]
    inputs += [Input(DAYS_CHARGED, charged, "days")] if rent.by_week else []
    inputs += [Input(TIMES_BROUGHT, times)] if rent.for_all else []
    return replace(one, value=value, inputs=tuple(inputs))


def cheapest(worked: Sequence[int], hire: Hire) -> tuple[float, int]:
    """Return the days charged for a machine that works on these days, and how often it is brought, at the least cost.

    >>> hire = Hire(week=3, trip=0.5)
    >>> cheapest((1, 2), hire), cheapest((1, 2, 5), hire), cheapest((1, 7), hire)
    ((2.0, 1), (3.0, 1), (2.0, 2))
    """
    best = [(0.0, 0.0, 0)]  # days of rent that the first so many days cost with their trips, without; times brought
    for last in range(len(worked)):
        there = [days_charged(worked[last] - day + 1, hire.week) for day in worked[: last + 1]]
        stays = ((*before, max(more, hire.least)) for before, more in zip(best, there, strict=True))
        best.append(min((cost + more + hire.trip, charged + more, times + 1) for cost, charged, times, more in stays))
    return best[-1][1:]

"""A priced scope and the table of events in; what may come once on this job, with its chance and its cost, out."""

from collections.abc import Sequence

from estimator.model.frozen import Frozen
from estimator.model.price import Price
from estimator.model.work import Takeoff
from estimator.pricing.parts import holds
from estimator.tables.rows import Event
from estimator.tables.tables import Tables


class Happening(Frozen):
    """An event: the repair it comes to, crew-hours and dollars it takes, its chance from 0 to 1. `crew` is one of the price's or empty."""

    name: str
    repair: str
    crew: str
    hours: float
    cost: float
    chance: float


def happenings(price: Price, takeoffs: Sequence[Takeoff], tables: Tables) -> tuple[Happening, ...]:
    """The events that may come to one of these repairs, each once, at the first that it fits.

    Hours of a crew that is not on the job are money beside, at what an hour of it costs.
    """
    there = {c.crew for c in price.crews}
    found: dict[str, Happening] = {}
    for takeoff in takeoffs:
        for row in tables.events:
            if takeoff.repair.method in row.methods and holds(row.when, takeoff.facts):
                found.setdefault(row.event, _happening(row, takeoff.repair.id, row.crew in there, tables))
    return tuple(found.values())


def _happening(row: Event, repair: str, on_the_job: bool, tables: Tables) -> Happening:
    away = float(tables.rate(row.crew)) * row.hours if row.crew and not on_the_job else 0.0
    return Happening(
        name=row.event,
        repair=repair,
        crew=row.crew if on_the_job else "",
        hours=row.hours,
        cost=float(row.cost) + away,
        chance=row.chance_percent / 100,
    )

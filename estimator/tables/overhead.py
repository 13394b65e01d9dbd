"""Overhead a year, crew-days a year and the profit wanted in; what a crew-day costs and the margin that pays for it out."""

from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.money import cents
from estimator.tables.first_questions import measured
from estimator.tables.read import demo_rows
from estimator.tables.tables import Tables

A_CREW_DAY = "a crew-day"


class CrewDayCost(Frozen, kw_only=True):
    """Dollars of one crew-day, to the cent: labor, other own cost, its share of overhead, the price with profit; the margin
    on own work, percent of the price, to the tenth."""

    labor: Decimal
    other: Decimal
    overhead: Decimal
    price: Decimal
    margin_percent: Decimal

    @property
    def direct(self) -> Decimal:
        return self.labor + self.other


def crew_day_cost(overhead: Decimal, crew_days: Decimal, profit_percent: Decimal, tables: Tables) -> CrewDayCost:
    """Return price = (direct + overhead ÷ crew-days) ÷ (1 − profit), margin = 1 − direct ÷ price.

    Direct cost of a crew-day is the mean over the houses of first_numbers.csv, its labor scaled to the wages of these tables.
    `crew_days` above 0, `profit_percent` from 0 to below 100.
    """
    held = {number.row: number.share for number in measured() if number.table == A_CREW_DAY}
    labor = cents(cents(held["labor"]) * _wages_against_the_demo(tables))
    other, share = cents(held["other own cost"]), cents(overhead / crew_days)
    price = cents((labor + other + share) / (1 - profit_percent / 100))
    margin = (100 * (1 - (labor + other) / price)).quantize(Decimal("0.1"))
    return CrewDayCost(labor=labor, other=other, overhead=share, price=price, margin_percent=margin)


def _wages_against_the_demo(tables: Tables) -> Decimal:
    """What an hour costs against the demo's, each role by its part of labor."""
    theirs = {row.role: row.hour for row in demo_rows().roles}
    own = {row.role: row.hour for row in tables.roles}
    parts = {
        n.row: Decimal(str(n.share)) for n in measured() if n.table == "roles" and n.row in own and n.row in theirs
    }
    whole = sum(parts.values(), Decimal(0))
    return (
        sum((part * own[role] / theirs[role] for role, part in parts.items()), Decimal(0)) / whole
        if whole
        else Decimal(1)
    )

"""Takeoffs of a scope in; its figures and what the homeowner pays for it out, to the cent, without a word.

The same steps with the same functions as the build-up (build.py), up to the total; the owner's own numbers and discounts,
which the search knows nothing of, are not among them. Minimum charges need the cost of each method, not of each work item;
work that the place taxes in its own way needs the whole build-up.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property

from estimator.model.job import Allowance
from estimator.model.money import up_to
from estimator.model.price import CrewDays, TaskHours
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.figures import Figures, figures_of, hours_of
from estimator.pricing.house_rules import house_rules
from estimator.pricing.lines import PASSED_ON
from estimator.pricing.markup import sold_by_class
from estimator.pricing.minimum import lift_of
from estimator.pricing.parts import items_of
from estimator.pricing.tax import charged_tax, charges_tax
from estimator.schedule import days_off
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

ZERO = Decimal(0)


@dataclass(frozen=True)
class Total:
    """A scope in figures: what it costs, and what the homeowner pays for it, dollars."""

    takeoffs: tuple[Takeoff, ...]
    figures: Figures
    total: Decimal
    tables: Tables

    @property
    def tasks(self) -> tuple[TaskHours, ...]:
        return self.figures.tasks

    @property
    def crews(self) -> tuple[CrewDays, ...]:
        return self.figures.crews

    @property
    def machines(self) -> dict[str, float]:
        """Dollars a day or a time of each machine."""
        return {m.want.ref: float(m.row.cost) for m in self.figures.machines}

    @cached_property
    def days_without_drains(self) -> float:
        """Days on which no drain may be used, from the schedule of the same hours; worked out when somebody asks."""
        return days_off(self.takeoffs, self.tasks, self.figures.set_ups, self.tables)


def total_of(
    takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None, allowances: Sequence[Allowance] = ()
) -> Total:
    """Return a scope in figures. Errors: CannotGoOn with every row that is missing or would cost nothing."""
    parts, tasks = hours_of(takeoffs, tables, place)
    figures = figures_of(parts, tasks, tables, place)
    if place is not None and charges_tax(place) and _taxed_apart(takeoffs, place, tables):
        total = price_scope(takeoffs, tables, place, allowances=allowances).total
    else:
        total = _total(figures, takeoffs, tables, place, sum((a.amount for a in allowances), ZERO))
    return Total(tuple(takeoffs), figures, total, tables)


def _total(
    figures: Figures, takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None, fixed: Decimal
) -> Decimal:
    by_class = sold_by_class(figures.costs, takeoffs, tables)
    lift = lift_of(figures, by_class, takeoffs, tables)
    work = up_to(by_class.before(lift, fixed, tables), house_rules(tables).price_step)
    carry = by_class.carry(lift, fixed, tables)
    usual = {name: price * (1 if name == PASSED_ON else carry) for name, price in by_class.prices.items()}
    tax, _ = charged_tax(figures.stuff.amount, usual, by_class.costs, work, place)
    return work + tax


def _taxed_apart(takeoffs: Sequence[Takeoff], place: PlaceRow, tables: Tables) -> bool:
    """Some of the work is taxed in a way of its own."""
    return any(tables.tax_class(place.place, s.item.tax_class) for t in takeoffs for s in items_of(t, tables))

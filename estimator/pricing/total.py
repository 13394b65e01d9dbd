"""Takeoffs of a scope in; its figures and what the homeowner pays for it out, to the cent, without a word.

The same steps with the same functions as the build-up (build.py), up to the total; the owner's own numbers and discounts,
which the search knows nothing of, are not among them. Minimum charges need the cost of each method, not of each work item;
work that the place taxes in its own way needs the whole build-up. What nobody asks for is not worked out.
"""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from functools import cached_property

from estimator.model.frozen import Frozen
from estimator.model.money import up_to
from estimator.model.price import TaskHours
from estimator.model.schedule import Schedule
from estimator.model.wanted import Allowance
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.crew_days import crew_days
from estimator.pricing.crews import Crew, crews_of
from estimator.pricing.figures import Figures, figures_of, hours_of
from estimator.pricing.house_rules import house_rules
from estimator.pricing.lines import PASSED_ON
from estimator.pricing.markup import sold_by_class
from estimator.pricing.minimum import sum_of_adjustments
from estimator.pricing.prepared import Prepared, prepared, taxed_in_their_own_way
from estimator.pricing.tax import charged_tax, charges_tax
from estimator.schedule import days_dug, days_off, schedule_of
from estimator.schedule.plan import plan_of
from estimator.schedule.work_plan import Plan
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

ZERO = Decimal(0)


class Total(Frozen, dict=True):
    """A scope in figures: what it costs, and what the homeowner pays for it, dollars. Errors: CannotGoOn, when asked."""

    takeoffs: tuple[Takeoff, ...]
    scope: tuple[Prepared, ...]
    tables: Tables
    place: PlaceRow | None
    allowances: Sequence[Allowance] = ()

    @cached_property
    def tasks(self) -> tuple[TaskHours, ...]:
        return hours_of(self.scope)

    @cached_property
    def teams(self) -> Mapping[str, Crew]:
        return crews_of(self.scope, self.tables, house_rules(self.tables))

    @property
    def machines(self) -> dict[str, float]:
        """Dollars a day or a time of each machine."""
        refs = (want.ref for one in self.scope for want in one.wanted["equipment"])
        return {ref: float(self.tables.equipment(ref).cost) for ref in refs}

    @cached_property
    def figures(self) -> Figures:
        rules = house_rules(self.tables)
        crews = crew_days(self.tasks, self.teams, rules)
        return figures_of(self.scope, self.tasks, self.teams, crews, rules.overhead, self.tables, self.place)

    @cached_property
    def total(self) -> Decimal:
        if self._taxed_apart():
            return price_scope(self.takeoffs, self.tables, self.place, allowances=self.allowances).total
        figures, tables, place = self.figures, self.tables, self.place
        fixed = sum((a.amount for a in self.allowances), ZERO)
        by_class = sold_by_class(figures.costs, self.takeoffs, tables)
        adjustment = sum_of_adjustments(figures, by_class, self.takeoffs, tables)
        work = up_to(by_class.before(adjustment, fixed, tables), house_rules(tables).price_step)
        carry = by_class.carry(adjustment, fixed, tables)
        usual = {name: price * (1 if name == PASSED_ON else carry) for name, price in by_class.prices.items()}
        tax, _ = charged_tax(figures.materials.amount, usual, by_class.costs, work, place)
        return work + tax

    @cached_property
    def days_without_drains(self) -> float:
        """Days on which no drain may be used, from the schedule of the same hours."""
        return days_off(self._plan, self._set_ups, self.tables)

    @cached_property
    def schedule(self) -> Schedule:
        """Who does which task on which day."""
        return schedule_of(self.takeoffs, self.tasks, self._set_ups, self.tables, self.place)

    @property
    def days_dug(self) -> Mapping[str, tuple[int, ...]]:
        """The site days on which each repair digs or fills, from the same schedule."""
        return days_dug(self._plan, self._set_ups, self.tables)

    @cached_property
    def _plan(self) -> Plan:
        return plan_of(self.takeoffs, self.tasks, self.tables)

    @cached_property
    def _set_ups(self) -> dict[str, float]:
        return {name: crew.set_up_hours for name, crew in self.teams.items()}

    def _taxed_apart(self) -> bool:
        """Some of the work is taxed in a way of its own."""
        taxed = self.place is not None and charges_tax(self.place)
        return taxed and bool(taxed_in_their_own_way(self.scope, self.tables, self.place))


def total_of(
    takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None, allowances: Sequence[Allowance] = ()
) -> Total:
    """Return a scope in figures. Errors: CannotGoOn with every row that is missing or would cost nothing."""
    return Total(tuple(takeoffs), prepared(takeoffs, tables, place), tables, place, allowances)

"""Steps 2 to 5 in figures alone: what the takeoffs of a scope bring in; what it costs the firm, to the cent, out.

The build-up (build.py) takes these figures and says line by line how they came about; the search, which asks for hundreds
of scopes, takes them as they are (total.py). So nothing is reckoned in two places.
"""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from itertools import chain

from estimator.model.frozen import Frozen
from estimator.model.money import cents
from estimator.model.price import CrewDays, TaskHours
from estimator.pricing.amounts import Asked, Charge, Worked, put_together, with_days
from estimator.pricing.crew_days import OVERHEAD
from estimator.pricing.crews import Crew
from estimator.pricing.equipment import Machine, machines_of
from estimator.pricing.house_rules import house_rules
from estimator.pricing.materials import Materials, materials_of
from estimator.pricing.prepared import Prepared
from estimator.pricing.subs import subs_of
from estimator.tables.rows import PlaceRow, SubOrFee
from estimator.tables.tables import Tables

ZERO = Decimal(0)


class Figures(Frozen, kw_only=True):
    """What a scope costs the firm: hours, crews by the half day, machines, what is bought, what others bill."""

    tasks: tuple[TaskHours, ...]
    teams: Mapping[str, Crew]
    crews: tuple[CrewDays, ...]
    crew_days: Decimal
    overhead: Decimal
    machines: tuple[Machine, ...]
    materials: Materials
    subs: tuple[Charge[SubOrFee], ...]

    @property
    def set_ups(self) -> dict[str, float]:
        """Hours of set-up a day, by crew."""
        return {name: crew.set_up_hours for name, crew in self.teams.items()}

    @property
    def costs(self) -> dict[str, Decimal]:
        """Dollars by price class, to the cent."""
        own: list[Decimal] = [c.amount for c in self.crews]
        own += [m.amount for m in self.machines]
        own += [b.amount for b in self.materials.bought]
        out = {"own": sum(own, self.materials.small + self.materials.tax)} if own else {}
        if self.overhead:
            out[OVERHEAD] = self.overhead
        for sub in self.subs:
            out[sub.row.price_class] = out.get(sub.row.price_class, ZERO) + sub.amount
        return out


def hours_of(scope: Sequence[Prepared]) -> tuple[TaskHours, ...]:
    """The hours of a scope's work."""
    return tuple(chain.from_iterable([one.tasks for one in scope]))


def figures_of(
    scope: Sequence[Prepared],
    tasks: Sequence[TaskHours],
    teams: Mapping[str, Crew],
    crews: tuple[CrewDays, ...],
    overhead: Decimal,
    tables: Tables,
    place: PlaceRow | None,
) -> Figures:
    """Return steps 3 to 5 with the hours and the days of the crews already known; `overhead` is dollars a crew-day."""
    rules = house_rules(tables)
    worked = {c.crew: Worked(float(c.days), float(c.hours), c.work_hours) for c in crews}

    def wanted(kind: str) -> tuple[Asked, ...]:
        some = (want for one in scope for want in one.wanted[kind])
        return put_together(with_days(want, tasks, worked) if want.later else want for want in some)

    days = sum((crew.days for crew in crews), ZERO)
    return Figures(
        tasks=tuple(tasks),
        teams=teams,
        crews=crews,
        crew_days=days,
        overhead=cents(days * overhead),
        machines=machines_of(wanted("equipment"), tables, tasks, teams, rules),
        materials=materials_of(wanted("material"), tables, place, rules.small_parts_percent),
        subs=subs_of(wanted("sub"), tables),
    )

"""Steps 2 to 5 in figures alone: the parts of a scope and their hours in; what it costs the firm, to the cent, out.

The build-up (build.py) takes these figures and says line by line how they came about; the search, which asks for hundreds
of scopes, takes them as they are (total.py). So nothing is reckoned in two places.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from estimator.model.money import cents
from estimator.model.price import CrewDays, TaskHours
from estimator.model.work import Takeoff
from estimator.pricing.amounts import Charge, asked, follow_crews
from estimator.pricing.crew_days import OVERHEAD, crew_days
from estimator.pricing.crews import Crew, crews_of
from estimator.pricing.equipment import Machine, machines_of
from estimator.pricing.hours import hours_of_takeoff
from estimator.pricing.house_rules import house_rules
from estimator.pricing.materials import Stuff, stuff_of
from estimator.pricing.parts import Part, by_kind, parts_of
from estimator.pricing.subs import subs_of, with_fees_of
from estimator.tables.rows import PlaceRow, SubOrFee
from estimator.tables.tables import Tables

ZERO = Decimal(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """What a scope costs the firm: hours, crews by the half day, machines, what is bought, what others bill."""

    parts: tuple[Part, ...]
    tasks: tuple[TaskHours, ...]
    teams: Mapping[str, Crew]
    crews: tuple[CrewDays, ...]
    crew_days: Decimal
    overhead: Decimal
    machines: tuple[Machine, ...]
    stuff: Stuff
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
        own += [b.amount for b in self.stuff.bought]
        out = {"own": sum(own, self.stuff.small + self.stuff.tax)} if own else {}
        if self.overhead:
            out[OVERHEAD] = self.overhead
        for sub in self.subs:
            out[sub.row.price_class] = out.get(sub.row.price_class, ZERO) + sub.amount
        return out


def hours_of(
    takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None
) -> tuple[tuple[Part, ...], tuple[TaskHours, ...]]:
    """Step 1: the parts of a scope, with the place's own fees, and the hours of those that are work. Errors: CannotGoOn."""
    parts = with_fees_of(place, parts_of(takeoffs, tables), tables)
    return parts, tuple(hours for takeoff in takeoffs for hours in hours_of_takeoff(takeoff, tables))


def figures_of(parts: Sequence[Part], tasks: Sequence[TaskHours], tables: Tables, place: PlaceRow | None) -> Figures:
    """Steps 2 to 5 on hours already known. Errors: CannotGoOn for a crew nobody is in."""
    rules = house_rules(tables)
    teams = crews_of(parts, tables, rules)
    return figures_with(parts, tasks, teams, crew_days(tasks, teams, rules), rules.overhead, tables, place)


def figures_with(
    parts: Sequence[Part],
    tasks: Sequence[TaskHours],
    teams: Mapping[str, Crew],
    crews: tuple[CrewDays, ...],
    overhead: Decimal,
    tables: Tables,
    place: PlaceRow | None,
) -> Figures:
    """Steps 3 to 5 with the days of the crews already known; `overhead` is dollars a crew-day."""
    rules = house_rules(tables)
    followed = follow_crews(parts, tasks, {c.crew: c for c in crews})
    kinds = by_kind(followed)
    days = sum((crew.days for crew in crews), ZERO)
    return Figures(
        parts=followed,
        tasks=tuple(tasks),
        teams=teams,
        crews=crews,
        crew_days=days,
        overhead=cents(days * overhead),
        machines=machines_of(asked(kinds["equipment"]), tables, tasks, teams, rules),
        stuff=stuff_of(asked(kinds["material"]), tables, place, rules.small_parts_percent),
        subs=subs_of(asked(kinds["sub"]), tables),
    )

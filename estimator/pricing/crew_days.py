"""Step 2: hours of each crew in; days to the half, with set-up, and what they cost, out."""

import math
from collections.abc import Mapping, Sequence
from decimal import Decimal

from estimator.model.money import cents, exact
from estimator.model.price import CostLine, CrewDays, TaskHours
from estimator.model.problem import Place
from estimator.pricing.burden import loaded_rate
from estimator.pricing.hours import by_crew
from estimator.pricing.house_rules import HouseRules
from estimator.pricing.problems import NO_CREW, SET_UP_EATS_THE_DAY, cell, stop
from estimator.tables.rows import CrewMember, Role
from estimator.tables.tables import Tables

NOISE = 1e-9
"""Less than any hour that was ever meant: what adding floats may leave behind."""


def days_needed(work_hours: float, rules: HouseRules) -> Decimal:
    """The least half-day d with 8 d + tolerance ≥ work + set-up × ceil(d); 0 for no work.

    Set-up hangs on days and days on set-up: trying the days in order settles the circle.
    Errors: CannotGoOn when set-up takes the whole day.

    >>> from estimator.pricing.examples import rules
    >>> days_needed(52.10, rules()), days_needed(3.25, rules()), days_needed(3.26, rules())
    (Decimal('7.5'), Decimal('0.5'), Decimal('1.0'))
    """
    if rules.set_up_hours >= rules.day_hours:
        place = Place(table="settings", cell="crew_setup_h_per_day")
        stop([SET_UP_EATS_THE_DAY(place, set_up=f"{rules.set_up_hours:g}", day=f"{rules.day_hours:g}")])
    if work_hours <= 0:
        return Decimal(0)
    step = max(1, math.floor((work_hours - rules.tolerance_hours) / rules.day_hours / float(rules.day_step)))
    while not _enough(days := step * rules.day_step, work_hours, rules):
        step += 1
    return days


def _enough(days: Decimal, work_hours: float, rules: HouseRules) -> bool:
    there = rules.day_hours * float(days) + rules.tolerance_hours
    return there + NOISE >= work_hours + rules.set_up_hours * math.ceil(days)


def crew_days(tasks: Sequence[TaskHours], tables: Tables, rules: HouseRules) -> tuple[CrewDays, ...]:
    """Each crew over the whole scope. Errors: CannotGoOn for a crew with nobody in it."""
    rates = crew_rates(tasks, tables)
    return tuple(_days(crew, hours, rates[crew], tables, rules) for crew, hours in by_crew(tasks).items() if hours > 0)


def _days(crew: str, work: float, rate: Decimal, tables: Tables, rules: HouseRules) -> CrewDays:
    days = days_needed(work, rules)
    hours = days * exact(rules.day_hours)
    return CrewDays(
        crew=crew,
        work_hours=work,
        setup_hours=rules.set_up_hours * math.ceil(days),
        days=days,
        hours=hours,
        rate=rate,
        amount=cents(hours * rate),
        cell=", ".join(cell("crews", m, "count") for m in _members(crew, tables)),
    )


def crew_rates(tasks: Sequence[TaskHours], tables: Tables) -> Mapping[str, Decimal]:
    """Dollars a crew-hour: Σ count × wage × (1 + burden). Errors: CannotGoOn for a crew with nobody in it."""
    roles = {role.role: role for role in tables.roles}
    rates = {crew: _rate(_members(crew, tables), roles) for crew in by_crew(tasks)}
    lost = {t.crew: t.task for t in reversed(tasks) if rates[t.crew] <= 0}
    stop([NO_CREW(Place(table="production", cell="crew"), task=task, crew=crew) for crew, task in lost.items()])
    return rates


def _members(crew: str, tables: Tables) -> list[CrewMember]:
    return [m for m in tables.crew_members if m.crew == crew]


def _rate(members: Sequence[CrewMember], roles: Mapping[str, Role]) -> Decimal:
    there = [(m.count, roles[m.role]) for m in members if m.role in roles]
    return sum((count * loaded_rate(role.wage, role.burden_percent) for count, role in there), Decimal(0))


def labor_lines(tasks: Sequence[TaskHours], crews: Sequence[CrewDays]) -> tuple[CostLine, ...]:
    """A line a crew, laid on repairs and work items by unrounded hours."""
    return tuple(_labor(crew, [t for t in tasks if t.crew == crew.crew]) for crew in crews)


def _labor(crew: CrewDays, tasks: Sequence[TaskHours]) -> CostLine:
    return CostLine(
        part="labor",
        ref=crew.crew,
        text=f"crew {crew.crew}",
        quantity=crew.hours,
        unit="h",
        rate=crew.rate,
        amount=crew.amount,
        price_class="own",
        formula=(
            f"{crew.work_hours:.2f} h of work + {crew.setup_hours:g} h of set-up "
            f"→ {crew.days.normalize():f} days = {crew.hours.normalize():f} h × {crew.rate}"
        ),
        cell=crew.cell,
        shares=tuple((t.repair, t.work_item, t.hours) for t in tasks),
    )

"""Step 3: the equipment parts of a scope and the crews in; what machines and their delivery cost, out."""

import math
from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from estimator.model.money import exact
from estimator.model.price import CostLine, TaskHours
from estimator.model.say import Say
from estimator.pricing.amounts import Asked, asked
from estimator.pricing.crew_days import days_needed
from estimator.pricing.crews import Crew
from estimator.pricing.house_rules import HouseRules
from estimator.pricing.materials import FLOAT_DUST
from estimator.pricing.own_line import own_line
from estimator.pricing.parts import Part, of_kind
from estimator.pricing.shown import plain
from estimator.pricing.spread_on import Shares, shares
from estimator.tables.rows import Equipment
from estimator.tables.tables import Tables

Crews = Mapping[str, Crew]


def equipment_lines(
    parts: Iterable[Part], tables: Tables, tasks: Sequence[TaskHours], crews: Crews, rules: HouseRules
) -> tuple[CostLine, ...]:
    """By the day: whole days of its crew, or the days asked for where it follows none, at least min_days. By the each: as is.

    A machine stays as long as its crew does the work that asks for it, not while the same crew does other things.
    """
    wanted = asked(of_kind(parts, "equipment"))
    return tuple(_line(want, tables.equipment(want.ref), tasks, crews, rules) for want in wanted)


def _line(want: Asked, row: Equipment, tasks: Sequence[TaskHours], crews: Crews, rules: HouseRules) -> CostLine:
    quantity, why = _quantity(want, row, tasks, crews, rules)
    return own_line("equipment", "equipment", row, quantity, row.cost, why, _carried(want, row, tasks))


def _quantity(
    want: Asked, row: Equipment, tasks: Sequence[TaskHours], crews: Crews, rules: HouseRules
) -> tuple[Decimal, str]:
    amount = plain(exact(want.amount).quantize(FLOAT_DUST))
    if row.unit != "day":
        return amount, want.formula
    if not row.crew:
        return machine_days(amount, row), f"{want.formula} = {want.amount:g} days, up to whole days"
    hours = sum(weight for _, weight in at_work(want.by, row.crew, tasks))
    days = days_needed(hours, crews[row.crew].set_up_hours, rules) if hours else Decimal(0)
    why = f"{plain(days)} days of crew {row.crew} on the work that asks for it, up to whole days"
    return machine_days(days, row), why


def machine_days(days: Decimal | float, row: Equipment) -> Decimal:
    """A machine is rented by the whole day, for its least days and never for less than one."""
    return max(Decimal(math.ceil(days)), row.min_days, Decimal(1))


def at_work(by: Shares, crew: str, tasks: Sequence[TaskHours]) -> list[tuple[tuple[str, str], float]]:
    """Hours of a crew on the work items that ask."""
    asking = {(repair, item) for repair, item, _ in by}
    return [((t.repair, t.work_item), t.hours) for t in tasks if t.crew == crew and (t.repair, t.work_item) in asking]


def _carried(want: Asked, row: Equipment, tasks: Sequence[TaskHours]) -> Shares:
    """By the crew's hours on the work that asked; by what was asked where no crew is followed."""
    there = at_work(want.by, row.crew, tasks) if row.unit == "day" and row.crew else []
    return shares(there) if there else want.by


def machines_without_crew(parts: Iterable[Part], tables: Tables, tasks: Sequence[TaskHours]) -> tuple[Say, ...]:
    """A machine asked for whose crew has no hours there is charged its least days, and the office is told."""
    wanted = ((want, tables.equipment(want.ref)) for want in asked(of_kind(parts, "equipment")))
    return tuple(
        Say.of(
            "{item} follows crew {crew}, which has no hours here: its least days are charged",
            item=row.item,
            crew=row.crew,
        )
        for want, row in wanted
        if row.unit == "day" and row.crew and not any(hours for _, hours in at_work(want.by, row.crew, tasks))
    )

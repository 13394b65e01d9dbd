"""Step 3: the equipment parts of a scope and the crews in; what machines and their delivery cost, out."""

import math
from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from estimator.model.money import cents, exact, plain
from estimator.model.price import CostLine, TaskHours
from estimator.model.say import Say
from estimator.pricing.amounts import Asked, Charge, Owner
from estimator.pricing.crew_days import days_needed
from estimator.pricing.crews import Crew
from estimator.pricing.house_rules import HouseRules
from estimator.pricing.materials import FLOAT_DUST, own_line
from estimator.tables.rows import Equipment
from estimator.tables.tables import Tables

Crews = Mapping[str, Crew]
Machine = Charge[Equipment]


def machines_of(
    wanted: Iterable[Asked], tables: Tables, tasks: Sequence[TaskHours], crews: Crews, rules: HouseRules
) -> tuple[Machine, ...]:
    """By the day: whole days of its crew, or the days asked for where it follows none, at least min_days. By the each: as is.

    A machine stays as long as its crew does the work that asks for it, not while the same crew does other things.
    """
    by_crew: dict[str, list[tuple[Owner, float]]] = {}
    for task in tasks:
        by_crew.setdefault(task.crew, []).append(((task.repair, task.work_item), task.hours))
    return tuple(_machine(want, tables.equipment(want.ref), by_crew, crews, rules) for want in wanted)


def _machine(
    want: Asked, row: Equipment, tasks: Mapping[str, Sequence[tuple[Owner, float]]], crews: Crews, rules: HouseRules
) -> Machine:
    if row.unit != "day" or not row.crew:
        asked_for = exact(want.amount).quantize(FLOAT_DUST)
        quantity = plain(asked_for) if row.unit != "day" else machine_days(asked_for, row)
        return Charge(want, row, quantity, cents(quantity * row.cost))
    owners = want.owners
    hours = sum(hours for owner, hours in tasks.get(row.crew, ()) if owner in owners)
    days = days_needed(hours, crews[row.crew].set_up_hours, rules) if hours else Decimal(0)
    quantity = machine_days(days, row)
    return Charge(want, row, quantity, cents(quantity * row.cost), days)


def machine_days(days: Decimal | float, row: Equipment) -> Decimal:
    """A machine is rented by the whole day, for its least days and never for less than one."""
    return max(Decimal(math.ceil(days)), row.min_days, Decimal(1))


def equipment_lines(machines: Iterable[Machine]) -> tuple[CostLine, ...]:
    """A line a machine, with how it came about."""
    return tuple(own_line("equipment", "equipment", m.row, m.quantity, m.amount, m.row.cost, _why(m)) for m in machines)


def _why(machine: Machine) -> str:
    want, row = machine.want, machine.row
    if machine.days is not None:
        return f"{plain(machine.days)} days of crew {row.crew} on the work that asks for it, up to whole days"
    return want.formula if row.unit != "day" else f"{want.formula} = {want.amount:g} days, up to whole days"


def machines_without_crew(machines: Iterable[Machine]) -> tuple[Say, ...]:
    """A machine asked for whose crew has no hours there is charged its least days, and the office is told."""
    return tuple(
        Say.of(
            "{item} follows crew {crew}, which has no hours here: its least days are charged",
            item=machine.row.item,
            crew=machine.row.crew,
        )
        for machine in machines
        if machine.days == 0
    )

"""The figures of a scope in; who carries each cost, and what each work item or method is so allocated, to the cent, out."""

from collections.abc import Hashable, Iterable, Mapping, Sequence
from decimal import Decimal
from typing import NamedTuple, TypeVar

from estimator.model.frozen import replace
from estimator.model.money import spread
from estimator.model.price import CostLine, TaskHours
from estimator.pricing.amounts import Owner, Shares, shares
from estimator.pricing.crew_days import OVERHEAD, labor_lines, overhead_line
from estimator.pricing.equipment import Machine, equipment_lines
from estimator.pricing.figures import Figures
from estimator.pricing.materials import material_lines
from estimator.pricing.subs import sub_lines
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

Allocated = dict[Owner, dict[str, Decimal]]
"""(repair, work item) → price class → dollars."""
K = TypeVar("K", bound=Hashable)


class Load(NamedTuple):
    """A cost in its price class, and who carries it by what weight."""

    price_class: str
    amount: Decimal
    shares: Shares


def loads_of(figures: Figures) -> tuple[Load, ...]:
    """Every cost, in the order of the cost lines: labor by unrounded hours, machines by the hours of their crew on the work
    that asks for them, the rest by what was asked; small parts and tax by whoever carries what they are a share of."""
    tasks: dict[str, list[TaskHours]] = {}
    for task in figures.tasks:
        tasks.setdefault(task.crew, []).append(task)
    out = [Load("own", c.amount, tuple((t.repair, t.work_item, t.hours) for t in tasks[c.crew])) for c in figures.crews]
    if figures.overhead:
        every = shares(((t.repair, t.work_item), t.hours) for t in figures.tasks)
        out.append(Load(OVERHEAD, figures.overhead, every))
    out += [Load("own", m.amount, _machine_shares(m, tasks)) for m in figures.machines]
    return (*out, *_bought(figures), *(Load(s.row.price_class, s.amount, s.want.by) for s in figures.subs))


def _machine_shares(machine: Machine, tasks: Mapping[str, Sequence[TaskHours]]) -> Shares:
    """By the crew's hours on the work that asked; by what was asked where no crew is followed."""
    if machine.days is None:
        return machine.want.by
    owners, crew = machine.want.owners, tasks.get(machine.row.crew, ())
    there = [(owner, t.hours) for t in crew if (owner := (t.repair, t.work_item)) in owners]
    return shares(there) if there else machine.want.by


def _bought(figures: Figures) -> list[Load]:
    materials = figures.materials
    loads = [(b.row, Load("own", b.amount, b.want.by)) for b in materials.bought]
    small_base = [part for row, load in loads if row.small_parts for part in _parts(load)]
    small = (
        [Load("own", materials.small, shares(small_base))] if materials.small_base and materials.small_percent else []
    )
    taxed = [part for row, load in loads if row.taxable for part in _parts(load)]
    taxed += [part for load in small for part in _parts(load)]
    tax = [Load("own", materials.tax, shares(taxed))] if materials.tax_base and materials.tax_percent else []
    return [*(load for _, load in loads), *small, *tax]


def _parts(load: Load) -> list[tuple[Owner, float]]:
    """What of a load each carries, unrounded."""
    whole = sum(weight for _, _, weight in load.shares)
    amount = float(load.amount)
    return [((repair, item), amount * weight / whole) for repair, item, weight in load.shares]


def allocated(loads: Iterable[Load]) -> Allocated:
    """Every cost spread over its shares without losing a cent: the sum of all cells is the sum of all costs."""
    return _totals(((repair, item), load.price_class, cell) for load in loads for repair, item, cell in _cells(load))


def allocated_by_method(loads: Iterable[Load], methods: Mapping[str, str]) -> dict[str, dict[str, Decimal]]:
    """The same cents by the method of their repair; what one method carries alone need not be parted."""

    def cells(load: Load) -> Iterable[tuple[str, str, Decimal]]:
        first = methods[load.shares[0][0]]
        if all(methods[repair] == first for repair, _, _ in load.shares):
            return ((first, load.price_class, load.amount),)
        return ((methods[repair], load.price_class, cell) for repair, _, cell in _cells(load))

    return _totals(cell for load in loads for cell in cells(load))


def _cells(load: Load) -> Iterable[tuple[str, str, Decimal]]:
    cents = spread(load.amount, [weight for _, _, weight in load.shares])
    return ((repair, item, cell) for (repair, item, _), cell in zip(load.shares, cents, strict=True))


def _totals(cells: Iterable[tuple[K, str, Decimal]]) -> dict[K, dict[str, Decimal]]:
    out: dict[K, dict[str, Decimal]] = {}
    for owner, price_class, amount in cells:
        classes = out.setdefault(owner, {})
        classes[price_class] = classes.get(price_class, Decimal(0)) + amount
    return out


def cost_lines(
    figures: Figures, tables: Tables, place: PlaceRow | None, overhead_a_day: Decimal
) -> tuple[CostLine, ...]:
    """Labor, overhead, equipment, materials, subs and fees."""
    lines = (
        *labor_lines(figures.crews),
        *overhead_line(figures.crew_days, figures.overhead, overhead_a_day),
        *equipment_lines(figures.machines),
        *material_lines(figures.materials, tables, place),
        *sub_lines(figures.subs),
    )
    return tuple(replace(line, shares=load.shares) for line, load in zip(lines, loads_of(figures), strict=True))

"""Step 3: the equipment parts of a scope and the crews' days in; what machines and their delivery cost, out."""

from collections.abc import Iterable, Mapping, Sequence
from decimal import ROUND_CEILING, Decimal

from estimator.model.money import cents, exact
from estimator.model.price import CostLine, CrewDays, TaskHours
from estimator.model.say import Say
from estimator.pricing.amounts import Asked, asked
from estimator.pricing.materials import FLOAT_DUST
from estimator.pricing.parts import Part, of_kind
from estimator.pricing.problems import cell
from estimator.pricing.shown import plain
from estimator.pricing.spread_on import Shares, shares
from estimator.tables.rows import Equipment
from estimator.tables.tables import Tables


def equipment_lines(
    parts: Iterable[Part], tables: Tables, tasks: Sequence[TaskHours], crews: Mapping[str, CrewDays]
) -> tuple[CostLine, ...]:
    """By the day: whole days of its crew, or the days asked for where it follows no crew, at least min_days. By the each: as is."""
    return tuple(_line(want, tables.equipment(want.ref), tasks, crews) for want in asked(of_kind(parts, "equipment")))


def _line(want: Asked, row: Equipment, tasks: Sequence[TaskHours], crews: Mapping[str, CrewDays]) -> CostLine:
    quantity, why = _quantity(want, row, crews)
    return CostLine(
        part="equipment",
        ref=row.item,
        text=row.text,
        quantity=quantity,
        unit=row.unit,
        rate=row.cost,
        amount=cents(quantity * row.cost),
        price_class="own",
        formula=f"{why} → {plain(quantity)} × {row.cost}",
        cell=cell("equipment", row, "cost"),
        shares=_carried(want, row, tasks),
    )


def _quantity(want: Asked, row: Equipment, crews: Mapping[str, CrewDays]) -> tuple[Decimal, str]:
    amount = plain(exact(want.amount).quantize(FLOAT_DUST))
    if row.unit != "day":
        return amount, want.formula
    least = max(row.min_days, Decimal(1))
    if not row.crew:
        return max(whole_days(amount), least), f"{want.formula} = {want.amount:g} days, up to whole days"
    days = crews[row.crew].days if row.crew in crews else Decimal(0)
    return max(whole_days(days), least), f"{plain(days)} days of crew {row.crew}, up to whole days"


def whole_days(days: Decimal) -> Decimal:
    """A machine is rented by the whole day.

    >>> whole_days(Decimal("7.5")), whole_days(Decimal("3"))
    (Decimal('8'), Decimal('3'))
    """
    return days.quantize(Decimal(1), ROUND_CEILING)


def _carried(want: Asked, row: Equipment, tasks: Sequence[TaskHours]) -> Shares:
    """By the crew's hours in the repairs that asked; by what was asked where no crew is followed."""
    if row.unit != "day" or not row.crew:
        return want.by
    repairs = {repair for repair, _, _ in want.by}
    at_it = [((t.repair, t.work_item), t.hours) for t in tasks if t.crew == row.crew and t.repair in repairs]
    return shares(at_it) if at_it else want.by


def machines_without_crew(parts: Iterable[Part], tables: Tables, crews: Mapping[str, CrewDays]) -> tuple[Say, ...]:
    """A machine asked for whose crew has no hours here is charged its least days, and the office is told."""
    rows = (tables.equipment(want.ref) for want in asked(of_kind(parts, "equipment")))
    return tuple(
        Say.of(
            "{item} follows crew {crew}, which has no hours here: its least days are charged", item=r.item, crew=r.crew
        )
        for r in rows
        if r.unit == "day" and r.crew and r.crew not in crews
    )

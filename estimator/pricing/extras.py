"""The takeoffs of an option in; the unit prices agreed before work starts, each with its cap, out."""

from collections.abc import Iterable
from decimal import Decimal

from estimator.model.money import cents
from estimator.model.offer import Extra
from estimator.model.work import JOB, Takeoff
from estimator.pricing.facts import holds
from estimator.tables.rows import ExtraRow
from estimator.tables.tables import Tables


def extras_of(takeoffs: Iterable[Takeoff], tables: Tables) -> tuple[Extra, ...]:
    """The rows that fit any repair of the option: its method among theirs (none: all) and its facts as they ask."""
    repairs = [t for t in takeoffs if t.repair.method != JOB]
    return tuple(_extra(row) for row in tables.extras if any(_fits(row, t) for t in repairs))


def _fits(row: ExtraRow, takeoff: Takeoff) -> bool:
    return (not row.methods or takeoff.repair.method in row.methods) and holds(row.when, takeoff.facts)


def _extra(row: ExtraRow) -> Extra:
    return Extra(
        code=row.code,
        text_en=row.text_en,
        text_es=row.text_es,
        unit=row.unit,
        price=row.price,
        cap_quantity=row.cap,
        cap_amount=cents(row.price * row.cap),
    )


def most_they_add(extras: Iterable[Extra]) -> Decimal:
    """What all extras together can add before the homeowner signs a change."""
    return sum((e.cap_amount for e in extras), Decimal(0))

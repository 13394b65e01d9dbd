"""Parts that ask for the same row, put together: how much the scope takes of it and who asked; what it comes to."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Generic, NamedTuple, TypeVar

from estimator.model.price import CrewDays, TaskHours
from estimator.pricing.parts import ROUNDED_LATER, Part
from estimator.pricing.spread_on import Owner, Shares, shares

Row = TypeVar("Row")


@dataclass(frozen=True, slots=True)
class Asked:
    """A row asked for by the scope, how much, and the parts that ask."""

    ref: str
    amount: float
    parts: tuple[Part, ...]

    @property
    def formula(self) -> str:
        """How much, in words."""
        once = [p.amount for p in self.parts if p.recipe.once]
        several = (p for p in self.parts if not p.recipe.once)
        words = " + ".join(f"{p.quantity:g} {p.quantity_name} × {p.recipe.per:g}" for p in several)
        return f"{words} + once {max(once):g}".removeprefix(" + ") if once else words

    @property
    def by(self) -> Shares:
        """Who asked, by how much of it."""
        return shares((p.owner, p.amount) for p in self.parts)

    @property
    def owners(self) -> frozenset[Owner]:
        """Who asked."""
        return frozenset(p.owner for p in self.parts)


class Charge(NamedTuple, Generic[Row]):
    """What is bought or rented of a row: how much, and dollars to the cent. `days` are those of the crew that it follows."""

    want: Asked
    row: Row
    quantity: Decimal
    amount: Decimal
    days: Decimal | None = None


def asked(parts: Iterable[Part]) -> tuple[Asked, ...]:
    """Sum the parts by row; of parts marked `once` the largest counts, since the scope pays it once."""
    rows: dict[str, list[Part]] = {}
    for part in parts:
        rows.setdefault(part.ref, []).append(part)
    return tuple(Asked(ref, _amount(same), tuple(same)) for ref, same in rows.items())


def _amount(parts: Sequence[Part]) -> float:
    several, once = 0.0, 0.0
    for part in parts:
        if part.recipe.once:
            once = max(once, part.amount)
        else:
            several += part.amount
    return several + once


def follow_crews(parts: Iterable[Part], tasks: Sequence[TaskHours], crews: Mapping[str, CrewDays]) -> tuple[Part, ...]:
    """Fill in quantities such as `days.D` or `hours.B`: each repair that asks takes its share by unrounded hours."""
    return tuple(_followed(p, tasks, crews) if p.quantity_name.startswith(ROUNDED_LATER) else p for p in parts)


def _followed(part: Part, tasks: Sequence[TaskHours], crews: Mapping[str, CrewDays]) -> Part:
    measure, _, crew = part.quantity_name.partition(".")
    there = crews.get(crew)
    if there is None:
        return replace(part, quantity=0.0)
    whole = float(there.days if measure == "days" else there.hours)
    mine = sum(t.hours for t in tasks if t.crew == crew and t.repair == part.repair)
    return replace(part, quantity=whole * mine / there.work_hours)

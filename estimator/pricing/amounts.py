"""Parts that ask for the same row, put together: how much the scope takes of it and who asked; what it comes to."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from decimal import Decimal
from functools import cached_property
from typing import Generic, NamedTuple, TypeVar

from estimator.model.frozen import Frozen
from estimator.model.price import TaskHours
from estimator.pricing.parts import ROUNDED_LATER, Part

Owner = tuple[str, str]
Shares = tuple[tuple[str, str, float], ...]


def shares(weights: Iterable[tuple[Owner, float]]) -> Shares:
    """Add up the weights of each owner; where all are nothing, everyone carries alike.

    >>> shares([(("main", "dig"), 1.0), (("main", "dig"), 2.0)])
    (('main', 'dig', 3.0),)
    >>> shares([(("main", "dig"), 0.0)])
    (('main', 'dig', 1.0),)
    """
    total: dict[Owner, float] = {}
    for owner, weight in weights:
        total[owner] = total.get(owner, 0.0) + weight
    level = 0.0 if max(total.values(), default=1.0) > 0 else 1.0
    return tuple([(repair, item, w + level) for (repair, item), w in total.items()])


Row = TypeVar("Row")


class Asked(Frozen, dict=True):
    """A row asked for, how much of it, and the parts that ask. Of what is paid `once` a scope the largest counts."""

    ref: str
    several: float
    once: float
    parts: tuple[Part, ...]

    @property
    def amount(self) -> float:
        return self.several + self.once

    @property
    def formula(self) -> str:
        """How much, in words."""
        several = (p for p in self.parts if not p.recipe.once)
        words = " + ".join(f"{p.quantity:g} {p.quantity_name} × {p.recipe.per:g}" for p in several)
        once = f" + once {self.once:g}" if any(p.recipe.once for p in self.parts) else ""
        return f"{words}{once}".removeprefix(" + ")

    @cached_property
    def by(self) -> Shares:
        """Who asked, by how much of it."""
        return shares((p.owner, p.amount) for p in self.parts)

    @cached_property
    def owners(self) -> frozenset[Owner]:
        """Who asked."""
        return frozenset(p.owner for p in self.parts)

    @cached_property
    def paid_once(self) -> bool:
        """Every recipe that asks for it says so."""
        return all(p.recipe.once for p in self.parts)

    @cached_property
    def later(self) -> bool:
        """Some of it follows the days or hours of a crew, which are known only for the whole scope."""
        return any(p.quantity_name.startswith(ROUNDED_LATER) for p in self.parts)


class Worked(NamedTuple):
    """How long a crew is there: days and hours with its set-up, and hours of work alone."""

    days: float
    hours: float
    work_hours: float


class Charge(NamedTuple, Generic[Row]):
    """What is bought or rented of a row: how much, and dollars to the cent. `days` are those of the crew that it follows."""

    want: Asked
    row: Row
    quantity: Decimal
    amount: Decimal
    days: Decimal | None = None


def asked(parts: Iterable[Part]) -> tuple[Asked, ...]:
    """The parts by row, in the order in which the rows come."""
    rows: dict[str, list[Part]] = {}
    for part in parts:
        rows.setdefault(part.ref, []).append(part)
    return tuple(_asked(ref, same) for ref, same in rows.items())


def _asked(ref: str, parts: Sequence[Part]) -> Asked:
    several, once = 0.0, 0.0
    for part in parts:
        if part.recipe.once:
            once = max(once, part.amount)
        else:
            several += part.amount
    return Asked(ref, several, once, tuple(parts))


def put_together(wanted: Iterable[Asked]) -> tuple[Asked, ...]:
    """What several repairs ask for, each row once, in the order in which the rows come."""
    rows: dict[str, list[Asked]] = {}
    for want in wanted:
        rows.setdefault(want.ref, []).append(want)
    return tuple([same[0] if len(same) == 1 else _sum(same) for same in rows.values()])


def _sum(same: Sequence[Asked]) -> Asked:
    parts = tuple([part for want in same for part in want.parts])
    return Asked(same[0].ref, sum([want.several for want in same]), max([want.once for want in same]), parts)


def with_days(want: Asked, tasks: Sequence[TaskHours], crews: Mapping[str, Worked]) -> Asked:
    """Quantities such as `days.D` or `hours.B` filled in: each repair that asks takes its share by unrounded hours."""
    if not want.later:
        return want
    late = (p.quantity_name.startswith(ROUNDED_LATER) for p in want.parts)
    return _asked(want.ref, [_followed(p, tasks, crews) if it else p for p, it in zip(want.parts, late, strict=True)])


def _followed(part: Part, tasks: Sequence[TaskHours], crews: Mapping[str, Worked]) -> Part:
    measure, _, crew = part.quantity_name.partition(".")
    there = crews.get(crew)
    if there is None:
        return replace(part, quantity=0.0)
    whole = there.days if measure == "days" else there.hours
    mine = sum(t.hours for t in tasks if t.crew == crew and t.repair == part.repair)
    return replace(part, quantity=whole * mine / there.work_hours)

"""Parts that ask for the same row, put together: how much the scope takes of it and who asked."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from estimator.model.price import CrewDays, TaskHours
from estimator.pricing.parts import ROUNDED_LATER, Part
from estimator.pricing.spread_on import Shares, shares


@dataclass(frozen=True, slots=True)
class Asked:
    """A row asked for by the scope: how much, in how many words, and by whom."""

    ref: str
    amount: float
    formula: str
    by: Shares
    parts: tuple[Part, ...]


def asked(parts: Iterable[Part]) -> tuple[Asked, ...]:
    """Sum the parts by row; of parts marked `once` the largest counts, since the scope pays it once."""
    rows: dict[str, list[Part]] = {}
    for part in parts:
        rows.setdefault(part.ref, []).append(part)
    return tuple(_asked(ref, tuple(same)) for ref, same in rows.items())


def _asked(ref: str, parts: tuple[Part, ...]) -> Asked:
    once = [p.amount for p in parts if p.recipe.once]
    amount = sum(p.amount for p in parts if not p.recipe.once) + max(once, default=0.0)
    words = " + ".join(f"{p.quantity:g} {p.quantity_name} × {p.recipe.per:g}" for p in parts if not p.recipe.once)
    if once:
        words = f"{words} + once {max(once):g}".removeprefix(" + ")
    return Asked(ref, amount, words, shares((p.owner, p.amount) for p in parts), parts)


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

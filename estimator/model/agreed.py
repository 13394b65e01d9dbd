"""An option as it was signed and as it stands now in; what the unit prices that were signed make of the difference, out."""

from collections.abc import Iterable, Mapping
from decimal import Decimal
from typing import Any
from zlib import crc32

from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.money import cents
from estimator.model.offer import Extra, Option

ZERO = Decimal(0)
MOVE_WITH_DEPTH = frozenset({"depth_over_4", "small_finish"})
"""Facts that a few inches or feet turn and that the unit prices hold already."""


GROUND = frozenset({"soil", "crossing", "tree", "footing", "beam", "property line", "water table"})
"""What lies in and over the ground: where one is noted that was not, the work is another."""


class Side(Frozen, kw_only=True):
    """One of the two: what is done without its lengths, what is paid, and the extras agreed with it."""

    work: str
    total: Decimal
    tax: Decimal
    extras: tuple[Extra, ...]
    extras_tax: Decimal


class AgreedMove(Frozen):
    """So many units more of an extra, at the price that was signed."""

    extra: Extra
    quantity: Decimal
    amount: Decimal


class Agreed(Frozen):
    """The difference by the signed prices alone: nothing else moves."""

    moves: tuple[AgreedMove, ...]
    total: Decimal  # new, tax with it
    tax: Decimal


def work_of(option: Option, job: Job) -> str:
    """What is done and in what ground, told without lengths, depths and counts: two options with the same differ by those alone."""
    repairs = sorted(
        f"{t.repair.method} {t.repair.line} {t.repair.reroute} {' '.join(sorted(t.facts - MOVE_WITH_DEPTH))}"
        for t in option.takeoffs
    )
    beside = [
        f"{line.work_item} {line.text_en} {line.amount}" for line in option.price.lines if _beside(line.work_item)
    ]
    added = [f"{line.text_en} {line.amount}" for line in option.price.lines if line.is_added]
    ground = sorted({f"{m.word} {m.choice}" for line in job.lines for m in line.marks if m.word in GROUND})
    around = crc32(repr((job.house, job.site)).encode("utf-8", "backslashreplace"))
    return "; ".join((*repairs, *beside, *added, *ground, f"house and site {around:08x}"))


def _beside(item: str) -> bool:
    return item in ("allowance", "discount")


def side_of(option: Option) -> Side:
    return Side(
        work=option.work_key,
        total=option.price.total,
        tax=option.price.tax,
        extras=option.extras,
        extras_tax=option.extras_tax,
    )


def side_recorded(held: Mapping[str, Any]) -> Side:
    """The same of an option as a record keeps it; one made before there were such margins has no work to compare."""
    return Side(
        work=str(held.get("work_key", "")),
        total=Decimal(held["price"]["total"]),
        tax=Decimal(held["price"]["tax"]),
        extras=tuple(map(_extra, held.get("extras", ()))),
        extras_tax=Decimal(held.get("extras_tax", 0)),
    )


def _extra(held: Mapping[str, Any]) -> Extra:
    return Extra(
        code=str(held["code"]),
        text_en=str(held["text_en"]),
        text_es=str(held["text_es"]),
        unit=str(held["unit"]),
        price=Decimal(held["price"]),
        cap_quantity=Decimal(held["cap_quantity"]),
        cap_amount=Decimal(held["cap_amount"]),
        margin_of=str(held.get("margin_of", "")),
        counted=Decimal(held.get("counted", 0)),
    )


def agreed(signed: Side, now: Side) -> Agreed | None:
    """Return the difference by the unit prices that were signed, where they explain all of it and none is over its most; else None."""
    if not signed.work or signed.work != now.work:
        return None
    counted = {extra.code: extra.counted for extra in now.extras if extra.margin_of}
    mine = [extra for extra in signed.extras if extra.margin_of]
    if not mine or any(extra.code not in counted for extra in mine):
        return None
    more = [(extra, counted[extra.code] - extra.counted) for extra in mine]
    if not any(by for _, by in more) or any(by < 0 or by > extra.cap_quantity for extra, by in more):
        return None
    moves = tuple(AgreedMove(extra, by, cents(extra.price * by)) for extra, by in more if by)
    return _summed(moves, signed)


def _summed(moves: Iterable[AgreedMove], signed: Side) -> Agreed:
    moves = tuple(moves)
    added, most = sum((m.amount for m in moves), ZERO), sum((e.cap_amount for e in signed.extras), ZERO)
    tax = cents(added * signed.extras_tax / most) if most else ZERO
    return Agreed(moves, signed.total + added + tax, signed.tax + tax)

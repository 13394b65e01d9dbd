"""A total, the firm's milestones and the place's limits in, payments that sum to the total to the cent out."""

import re
from decimal import ROUND_FLOOR, Decimal

from estimator.model.money import cents
from estimator.model.offer import Payment
from estimator.model.say import Say
from estimator.tables.rows import PlaceRow

MILESTONES: dict[str, Say] = {
    "deposit": Say.of("When you sign"),
    "start": Say.of("When we start"),
    "pipe in before cover": Say.of("When the new pipe is in and you have seen it, before it is covered"),
    "done": Say.of("When all is done and tested"),
}
HUNDRED = Decimal(100)
DOLLAR = Decimal(1)


def shares(setting: str) -> list[tuple[str, Decimal]]:
    """Names and percents of a setting such as `deposit 10, done 90`.

    >>> shares("deposit 10, done 90")
    [('deposit', Decimal('10')), ('done', Decimal('90'))]
    """
    found = (re.fullmatch(r"(.+?)\s+([0-9.]+)", part.strip()) for part in setting.split(","))
    return [(m[1], Decimal(m[2])) for m in found if m]


def payments(total: Decimal, setting: str, place: PlaceRow | None) -> tuple[Payment, ...]:
    """Whole dollars each; the deposit within the place's limits; the last takes the rest."""
    parts = shares(setting) or [("done", HUNDRED)]
    out: list[Payment] = []
    left = total
    for name, percent in parts[:-1]:
        amount = (total * percent / HUNDRED).quantize(DOLLAR, ROUND_FLOOR)
        if name == "deposit" and place:
            amount = min(amount, *_limits(total, place), amount)
        left -= amount
        out.append(Payment(text=_text(name), amount=cents(amount)))
    return (*out, Payment(text=_text(parts[-1][0]), amount=cents(left)))


def _limits(total: Decimal, place: PlaceRow) -> list[Decimal]:
    limits = [place.deposit_cap_amount] if place.deposit_cap_amount is not None else []
    if place.deposit_cap_percent is not None:
        limits.append((total * place.deposit_cap_percent / HUNDRED).quantize(DOLLAR, ROUND_FLOOR))
    return limits


def _text(name: str) -> Say:
    return MILESTONES.get(name) or Say("{name}", (("name", name),))

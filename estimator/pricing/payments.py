"""A price, the firm's schedule and the place's deposit cap in; payments that sum to the price to the cent, out."""

from collections.abc import Iterable, Sequence
from decimal import ROUND_FLOOR, Decimal

from estimator.model.money import CENT, cents, spread
from estimator.model.offer import Payment
from estimator.model.price import Price
from estimator.model.say import Say
from estimator.model.steps import LATER
from estimator.model.work import Takeoff
from estimator.schedule.order import step_of
from estimator.tables.check_settings import payments_in
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

WORDS = {
    "deposit": Say.of("Deposit at signing"),
    "start": Say.of("Start of work"),
    "pipe in before cover": Say.of("Pipe or liner in"),
    "done": Say.of("Completion"),
    "second visit": Say.of("Second visit"),
}
DONE_BY_THEN = {"pipe in before cover": ("find", "reach", "pipe")}
"""What is worth paying for at a milestone: these classes are finished. At deposit and start nothing is."""
DOLLAR = Decimal(1)


INSTALLED = ("pipe_ft", "liner_ft", "sectional_pieces", "burst_ft", "reroute_ft")
"""Quantities of pipe or liner that is put in."""


def installs(takeoffs: Iterable[Takeoff]) -> bool:
    """Pipe or a liner is put in: else there is nothing to pay for before it is covered."""
    return any(takeoff.value(name) for takeoff in takeoffs for name in INSTALLED)


def payments_of(price: Price, tables: Tables, place: PlaceRow | None, installs: bool = True) -> tuple[Payment, ...]:
    """Whole dollars down to the last, which takes the rest. A payment of nothing is left out.

    Before any work is done no more is asked for than the place's deposit cap; after that no more than the work done is
    worth, by the classes of the lines. Where the place has no answer on deposits the firm's shares stand (`deposit_known`).
    A second visit, after a foundation lift, is paid for when it is made.
    """
    if price.total <= 0:
        return ()
    schedule = payments_in(tables.text("payments")) or ()
    cap = deposit_cap(price.total, place)
    before_visit = price.total - _second_visit(price, tables)
    paid, made = Decimal(0), []
    for n, (name, upto) in enumerate(_running(schedule)):
        last = n == len(schedule) - 1
        if name in DONE_BY_THEN and not installs and not last:
            continue
        due = before_visit if last else min(before_visit, _due(name, upto, price, cap))
        if due > paid:
            made.append(Payment(text=WORDS.get(name, Say(name)), amount=cents(due - paid)))
            paid = due
    if price.total > paid:
        made.append(Payment(text=WORDS["second visit"], amount=cents(price.total - paid)))
    return tuple(made)


def _second_visit(price: Price, tables: Tables) -> Decimal:
    """What the lines of a visit long after the rest come to; 0 where there is none."""
    items = {line.work_item: line.amount for line in price.lines}
    later = (row.item for row in tables.work_items if row.item in items and step_of(row) == LATER)
    return sum((items[item] for item in dict.fromkeys(later)), Decimal(0))


def deposit_cap(total: Decimal, place: PlaceRow | None) -> Decimal | None:
    """The lesser of the place's amount and its share of the price, to the cent below; None where neither is answered."""
    if place is None or not deposit_known(place):
        return None
    amounts = [place.deposit_cap_amount] if place.deposit_cap_amount is not None else []
    if place.deposit_cap_percent is not None:
        amounts.append(total * place.deposit_cap_percent / 100)
    return min(amounts).quantize(CENT, ROUND_FLOOR)


def deposit_known(place: PlaceRow | None) -> bool:
    """Someone has answered what a deposit may be here. No: ask, and say so beside the payments."""
    return place is not None and not (place.deposit_cap_amount is None and place.deposit_cap_percent is None)


def deposit_not_answered(place: PlaceRow | None) -> tuple[Say, ...]:
    """For the office: nobody has asked what a deposit may be, so the firm's own shares stand in the payments."""
    if deposit_known(place):
        return ()
    name = place.place if place else "place not known"
    return (Say.of("{place}: what a deposit may be is not answered; ask before asking for one", place=name),)


def _running(schedule: Sequence[tuple[str, Decimal]]) -> list[tuple[str, Decimal]]:
    return [(name, sum((p for _, p in schedule[: n + 1]), Decimal(0))) for n, (name, _) in enumerate(schedule)]


def _due(name: str, upto: Decimal, price: Price, cap: Decimal | None) -> Decimal:
    """What may have been paid in all once this milestone is reached."""
    wanted = (price.total * upto / 100).quantize(DOLLAR, ROUND_FLOOR)
    if name in DONE_BY_THEN:
        classes = price_by_class(price)
        done = sum((classes[c] for c in DONE_BY_THEN[name]), Decimal(0))
        return min(wanted, max(done, cap or Decimal(0))).quantize(DOLLAR, ROUND_FLOOR)
    return wanted if cap is None else min(wanted, cap).quantize(DOLLAR, ROUND_FLOOR)


CLASSES = ("find", "reach", "pipe", "put back")


def price_by_class(price: Price) -> dict[str, Decimal]:
    """The sum of the lines of each class, to the cent. Discounts are laid on the classes in proportion, so that the four
    sum to the price without tax. It says nothing about what any insurance covers.
    """
    lines = [line for line in price.lines if line.work_class in CLASSES]
    sums = {c: sum((line.amount for line in lines if line.work_class == c), Decimal(0)) for c in CLASSES}
    off = sum((line.amount for line in price.lines if line.work_class not in CLASSES), Decimal(0))
    if off:
        parts = spread(off, list(sums.values()))
        sums = {c: amount + part for (c, amount), part in zip(sums.items(), parts, strict=True)}
    return sums

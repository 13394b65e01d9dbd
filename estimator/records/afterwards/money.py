"""The payments agreed, what fell due, what came in, changes and credits, in; what is owed and rows for bookkeeping out."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any, get_args

from estimator.disk.disk import Disk
from estimator.model.frozen import Frozen
from estimator.model.money import spread
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.pricing.ledger import Entry, Kind, owed, tax_on
from estimator.pricing.payments import WORDS
from estimator.records.accepted import all_accepted
from estimator.records.afterwards.problems import DAMAGED, NO_MILESTONE
from estimator.records.afterwards.sold import Sold, all_sold
from estimator.records.lock import locked
from estimator.records.note import in_plain_words, read_note, write_note
from estimator.records.recorded_text import sentence
from estimator.schedule.dates import dated

NAME = "money.json"
DEPOSIT, START, DONE = "deposit", "start", "done"
TAX_ON = "sales tax: "
"""Before the text of a change or credit: the tax that it carries."""
ORDER = "change order to "
"""How the text of an order's line begins; the revision follows."""
SHORT = {str(said): name for name, said in WORDS.items()}
"""The short name of a payment by its words."""


class Milestone(Frozen, kw_only=True):
    """A payment that was agreed: its short name, its words, how much of it is tax, and the day it fell due."""

    name: str
    text: str
    amount: Decimal
    tax: Decimal
    due: date | None


class Money(Frozen, kw_only=True):
    """Where a job's money stands. `later` are changes, credits and what came in, in the order they were noted."""

    milestones: tuple[Milestone, ...]
    later: tuple[Entry, ...]

    @property
    def asked(self) -> tuple[Milestone, ...]:
        """Every payment money may come in for: those agreed, then change orders with their tax, due on the day they were signed."""
        signed = dict.fromkeys(e.text for e in self.later if e.kind == "change")
        return (*self.milestones, *(self._of_change(text) for text in signed))

    def _of_change(self, text: str) -> Milestone:
        amounts = [e.amount for e in self.later if e.kind == "change" and e.text == text]
        tax = sum((e.amount for e in self.later if e.kind == "tax" and e.text == TAX_ON + text), Decimal(0))
        day = next(e.day for e in self.later if e.kind == "change" and e.text == text)
        return Milestone(name=text, text=text, amount=sum(amounts, tax), tax=tax, due=day)

    @property
    def paid(self) -> Decimal:
        return sum((e.amount for e in self.later if e.kind == "payment"), Decimal(0))

    @property
    def balance(self) -> Decimal:
        """All that was agreed with its changes, less credits and what came in."""
        return owed(self.entries)

    def due(self, day: date) -> Decimal:
        """What has fallen due by a day and has not come in; below 0 where more came in."""
        return owed(e for e in self.entries if e.kind == "payment" or (e.day is not None and e.day <= day))

    def paid_on(self, name: str) -> Decimal:
        """What came in for one payment."""
        return sum((e.amount for e in self.later if e.kind == "payment" and e.text == name), Decimal(0))

    @property
    def entries(self) -> tuple[Entry, ...]:
        """Everything as lines for the books, tax apart, by day; what is not due yet at the end."""
        lines = [*(e for m in self.milestones for e in _lines(m)), *self.later]
        return tuple(sorted(lines, key=lambda e: e.day or date.max))


def _lines(milestone: Milestone) -> Iterator[Entry]:
    kind: Kind = "deposit" if milestone.name.split(",")[0] == DEPOSIT else "draw"
    net = Entry(day=milestone.due, kind=kind, text=milestone.text, amount=milestone.amount - milestone.tax)
    yield from (e for e in (net, replace(net, kind="tax", amount=milestone.tax)) if e.amount)


def money(folder: Path, done: Sold) -> Money:
    """Errors: CannotGoOn when the file or the record is damaged."""
    noted, due = _kept(folder)
    before = [one for one in all_sold(folder) if one.only_prepares and one.revision.number < done.revision.number]
    agreed = (*before, done)
    counts = {one.revision.number for one in agreed}
    signed = [one.revision for one in all_accepted(folder)]
    later = tuple(entry for entry in noted if not _in_a_later_price(entry, signed, counts))
    return Money(milestones=tuple(m for one in agreed for m in milestones(folder, one, due)), later=later)


def _in_a_later_price(entry: Entry, signed: Sequence[int], counts: Collection[int]) -> bool:
    """Whether a change order was to a revision that was itself signed since: its price holds what the order moved."""
    name = entry.text.removeprefix(TAX_ON).removeprefix(f"{ORDER}r")
    if entry.kind == "payment" or not entry.text.removeprefix(TAX_ON).startswith(ORDER) or not name.isdigit():
        return False
    before = max((number for number in signed if number < int(name)), default=None)
    return before is not None and before not in counts


def is_noted(folder: Path) -> bool:
    """Whether the office notes this job's money here."""
    return (folder / NAME).exists()


def milestones(folder: Path, done: Sold, by_hand: Mapping[str, date]) -> Iterator[Milestone]:
    """The payments agreed with one option; those of a visit are named after it, for a repair of the same job may follow."""
    visit = f", visit {done.revision.name}" if done.only_prepares else ""
    price, payments = done.option["price"], done.option["payments"]
    amounts = [Decimal(p["amount"]) for p in payments]
    taxes = spread(Decimal(price["tax"]), amounts) if amounts else ()
    known, ended = _by_schedule(done, by_hand.get(START)), done.finished(folder)
    for payment, amount, tax in zip(payments, amounts, taxes, strict=True):
        text = str(sentence(payment["text"]))
        name = SHORT.get(text, text)
        day = known.get(name)
        if ended:
            last = date.fromisoformat(ended.on)
            day = last if day is None or name == DONE else min(day, last)
        name += visit
        yield Milestone(name=name, text=text + visit, amount=amount, tax=tax, due=by_hand.get(name, day))


def _by_schedule(done: Sold, first: date | None) -> dict[str, date]:
    """The deposit on the day of signing; from the first day of work on the others at the milestones of its schedule."""
    known = {DEPOSIT: date.fromisoformat(done.signed.on)} if done.signed else {}
    if first is None:
        return known
    on = dated(done.schedule, first)
    return known | {mark.name: on.on(mark.day) for mark in done.schedule.marks if mark.day <= len(on.days)}


def _kept(folder: Path) -> tuple[tuple[Entry, ...], dict[str, date]]:
    held = read_note(folder / NAME, _made, DAMAGED)
    return ((), {}) if held is None else held


def _made(held: Mapping[str, Any]) -> tuple[tuple[Entry, ...], dict[str, date]]:
    return tuple(_entry(entry) for entry in held["entries"]), {
        name: date.fromisoformat(day) for name, day in held["due"].items()
    }


def _entry(held: Mapping[str, Any]) -> Entry:
    amount = Decimal(held["amount"])
    if not amount.is_finite() or held["kind"] not in get_args(Kind):
        raise ValueError("an entry has a kind and an amount")
    day = date.fromisoformat(held["day"]) if held["day"] else None
    return Entry(day=day, kind=held["kind"], text=str(held["text"]), amount=amount, reference=str(held["reference"]))


def note(
    folder: Path,
    done: Sold,
    entries: Sequence[Entry] = (),
    due: Mapping[str, date] | None = None,
    disk: Disk | None = None,
) -> Money:
    """Appends entries and days, each one: two equal payments may well be two. Nothing noted is ever taken away.

    Errors: CannotGoOn.
    """
    with in_plain_words(folder, done.revision.number), locked(folder):
        held, before = _kept(folder)
        days = before if due is None else {**before, **due}
        kept = (*held, *entries)
        write_note(folder / NAME, {"entries": kept, "due": days}, disk)
    return money(folder, done)


def milestone(state: Money, asked: str, folder: Path) -> Milestone:
    """The payment or change order called so, by its short name or some of its words. Errors: CannotGoOn for none, or for several."""
    wanted = asked.strip().lower()
    exactly = [m for m in state.asked if wanted in (m.name.lower(), m.text.lower())]
    near = [m for m in state.asked if wanted and wanted in f"{m.name} {m.text}".lower()]
    found = exactly or near
    if len(found) == 1:
        return found[0]
    names = ", ".join(m.name for m in state.asked)
    raise CannotGoOn(NO_MILESTONE(Place(file=str(folder)), name=asked, names=names))


def changed(done: Sold, kind: Kind, text: str, amount: Decimal, day: date, reference: str) -> tuple[Entry, ...]:
    """A change order or a credit of `amount` without tax, and the tax it carries (`tax_on`)."""
    price = done.option["price"]
    net, charged = Decimal(price["total"]) - Decimal(price["tax"]), Decimal(price["tax"])
    return entered(kind, text, amount, tax_on(amount, net, charged, _whole_charge(done)), day, reference)


def entered(kind: Kind, text: str, amount: Decimal, tax: Decimal, day: date, reference: str) -> tuple[Entry, ...]:
    """The line of a change or credit and, where there is any, that of its tax."""
    entry = Entry(day=day, kind=kind, text=text, amount=amount, reference=reference)
    taxed = replace(entry, kind="tax" if kind == "change" else kind, text=TAX_ON + text, amount=tax)
    return (entry, taxed) if tax else (entry,)


def why_taxed(done: Sold) -> Say:
    """Return where the tax on a change or credit of this job comes from (`tax_on`)."""
    if (rate := _whole_charge(done)) is not None:
        return Say.of("Sales tax on changes: {percent}%, as this place taxes the whole charge.", percent=f"{rate:f}")
    price = done.option["price"]
    tax, net = Decimal(price["tax"]), Decimal(price["total"]) - Decimal(price["tax"])
    return Say.of(
        "Sales tax on changes: {percent}%, the share it has of the price signed ({tax} on {net}).",
        percent=f"{100 * tax / net if net else 0:.2f}",
        tax=f"${tax:,.2f}",
        net=f"${net:,.2f}",
    )


def _whole_charge(done: Sold) -> Decimal | None:
    """The rate of a place that taxes the whole charge, percent; None where it taxes in another way or nobody has answered."""
    try:
        place = done.record.inputs.tables.place(done.record.data["quote"]["job"]["house"]["jurisdiction"])
    except KeyError:
        return None
    return place.tax_percent if place.tax_kind == "whole charge" else None

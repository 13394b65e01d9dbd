"""The payments agreed, what fell due, what came in, changes and credits, in; what is owed and rows for bookkeeping out."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any, get_args

from estimator.disk.disk import Disk
from estimator.model.money import spread
from estimator.model.problem import CannotGoOn, Place
from estimator.pricing.ledger import Entry, Kind, owed, tax_on
from estimator.pricing.payments import WORDS
from estimator.records.afterwards.problems import NO_MILESTONE
from estimator.records.afterwards.small_file import read_small, write_small
from estimator.records.afterwards.sold import Sold
from estimator.records.finished import finished
from estimator.records.lock import locked
from estimator.records.refusals import told
from estimator.records.told import told as in_english

NAME = "money.json"
DEPOSIT, DONE = "deposit", "done"
EARLIER = {"When the new pipe is in, before it is covered": "pipe in before cover"}
"""Words of payments as they stood in revisions issued before."""
SHORT = {**EARLIER, **{str(said): name for name, said in WORDS.items()}}
"""The short name of a payment by its words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Milestone:
    """A payment that was agreed: its short name, its words, how much of it is tax, and the day it fell due."""

    name: str
    text: str
    amount: Decimal
    tax: Decimal
    due: date | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Money:
    """Where a job's money stands. `later` are changes, credits and what came in, in the order they were noted."""

    milestones: tuple[Milestone, ...]
    later: tuple[Entry, ...]

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
    kind: Kind = "deposit" if milestone.name == DEPOSIT else "draw"
    net = Entry(day=milestone.due, kind=kind, text=milestone.text, amount=milestone.amount - milestone.tax)
    yield from (e for e in (net, replace(net, kind="tax", amount=milestone.tax)) if e.amount)


def money(folder: Path, done: Sold) -> Money:
    """Errors: CannotGoOn when the file or the record is damaged."""
    later, due = _kept(folder)
    return Money(milestones=tuple(_milestones(folder, done, due)), later=later)


def _milestones(folder: Path, done: Sold, due: Mapping[str, date]) -> Iterator[Milestone]:
    """The deposit falls due on the day of signing, the last payment when the work is noted as done; the others as noted."""
    price, payments = done.option["price"], done.option["payments"]
    amounts = [Decimal(p["amount"]) for p in payments]
    taxes = spread(Decimal(price["tax"]), amounts) if amounts else ()
    known = {**_by_itself(folder, done), **due}
    for payment, amount, tax in zip(payments, amounts, taxes, strict=True):
        text = in_english(payment["text"])
        name = SHORT.get(text, text)
        yield Milestone(name=name, text=text, amount=amount, tax=tax, due=known.get(name))


def _by_itself(folder: Path, done: Sold) -> dict[str, date]:
    ended = finished(folder)
    known = {DEPOSIT: date.fromisoformat(done.signed.on)} if done.signed else {}
    return known | ({DONE: date.fromisoformat(ended.on)} if ended else {})


def _kept(folder: Path) -> tuple[tuple[Entry, ...], dict[str, date]]:
    held = read_small(folder / NAME, _made)
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
    with told(folder, done.revision.number), locked(folder):
        held, before = _kept(folder)
        days = before if due is None else {**before, **due}
        kept = (*held, *entries)
        write_small(folder / NAME, {"entries": kept, "due": days}, disk)
    return money(folder, done)


def milestone(state: Money, asked: str, folder: Path) -> Milestone:
    """The payment called so, by its short name or some of its words. Errors: CannotGoOn for none, or for several."""
    wanted = asked.strip().lower()
    exactly = [m for m in state.milestones if wanted in (m.name.lower(), m.text.lower())]
    near = [m for m in state.milestones if wanted and wanted in f"{m.name} {m.text}".lower()]
    found = exactly or near
    if len(found) == 1:
        return found[0]
    names = ", ".join(m.name for m in state.milestones)
    raise CannotGoOn(NO_MILESTONE(Place(file=str(folder)), name=asked, names=names))


def _rate(done: Sold) -> Decimal | None:
    """The sales tax of the job's place, percent; None where nobody has answered."""
    try:
        return done.record.inputs.tables.place(done.record.data["quote"]["job"]["house"]["jurisdiction"]).tax_percent
    except KeyError:
        return None


def changed(done: Sold, kind: Kind, text: str, amount: Decimal, day: date, reference: str) -> tuple[Entry, ...]:
    """A change order or a credit, with the tax it carries at the share of the original."""
    price = done.option["price"]
    net, charged = Decimal(price["total"]) - Decimal(price["tax"]), Decimal(price["tax"])
    tax = tax_on(amount, net, charged, _rate(done))
    entry = Entry(day=day, kind=kind, text=text, amount=amount, reference=reference)
    taxed = replace(entry, kind="tax" if kind == "change" else kind, text=f"sales tax: {text}", amount=tax)
    return (entry, taxed) if tax else (entry,)

"""The payments of an accepted option, changes, credits and what came in, in; what is owed, and rows for bookkeeping, out."""

import csv
import io
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Literal

from estimator.model.money import cents

Kind = Literal["deposit", "draw", "change", "credit", "tax", "fee", "payment"]
COLUMNS = ("date", "job", "customer", "kind", "text", "amount", "account")


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One line of a job's money. Amounts are above 0; what comes in and credits are taken off what is owed."""

    day: date | None  # None: not due yet
    kind: Kind
    text: str
    amount: Decimal
    reference: str = ""


OFF: tuple[Kind, ...] = ("credit", "payment")


def owed(entries: Iterable[Entry]) -> Decimal:
    """Asked for so far and to come, less credits and what came in, to the cent.

    >>> owed([Entry(day=None, kind="draw", text="done", amount=Decimal(500)),
    ...       Entry(day=None, kind="credit", text="no cleanout", amount=Decimal("80.50"))])
    Decimal('419.50')
    """
    return cents(sum((-e.amount if e.kind in OFF else e.amount for e in entries), Decimal(0)))


def tax_on(amount: Decimal, price_without_tax: Decimal, tax: Decimal) -> Decimal:
    """Tax on a change or credit, as on the original: the same share of the amount, to the cent.

    >>> tax_on(Decimal(100), Decimal(4000), Decimal(330))
    Decimal('8.25')
    """
    return cents(amount * tax / price_without_tax) if price_without_tax else Decimal(0)


def bookkeeping_csv(entries: Sequence[Entry], job: str, customer: str, accounts: dict[str, str]) -> str:
    """Plain rows for any bookkeeping: dates as 2026-11-25, amounts with two decimals, credits and money in below nothing."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(COLUMNS)
    for e in entries:
        amount = -e.amount if e.kind in OFF else e.amount
        day = e.day.isoformat() if e.day else ""
        writer.writerow((day, job, customer, e.kind, e.text, f"{cents(amount):.2f}", accounts.get(e.kind, "")))
    return out.getvalue()

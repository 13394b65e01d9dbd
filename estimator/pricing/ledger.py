"""The payments of an accepted option, changes, credits and what came in, in; what is owed, and rows for bookkeeping, out."""

import csv
import io
from collections.abc import Callable, Iterable, Sequence
from datetime import date
from decimal import Decimal
from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.money import cents
from estimator.model.plain_cell import plain_cell

Kind = Literal["deposit", "draw", "change", "credit", "tax", "fee", "payment"]
COLUMNS = ("date", "job", "customer", "kind", "text", "amount", "account", "reference")


class Entry(Frozen, kw_only=True):
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


def tax_on(amount: Decimal, price_without_tax: Decimal, tax: Decimal, whole_charge: Decimal | None = None) -> Decimal:
    """Return the tax on a change or credit, to the cent: at the rate of a place that taxes the whole charge, whatever the
    original held that was not taxed; elsewhere the same share of the amount as of the original.

    >>> tax_on(Decimal(1000), Decimal(4000), Decimal("327.06"), Decimal("8.25"))
    Decimal('82.50')
    >>> tax_on(Decimal(100), Decimal(4000), Decimal(132))
    Decimal('3.30')
    """
    if not tax or not price_without_tax:
        return Decimal(0)
    if whole_charge is not None:
        return cents(amount * whole_charge / 100)
    return cents(amount * tax / price_without_tax)


class Account(Frozen):
    """The money of one job."""

    job: str
    customer: str
    entries: Sequence[Entry]


def bookkeeping_csv(
    jobs: Iterable[Account],
    accounts: dict[str, str],
    heads: Sequence[str] = COLUMNS,
    speak: Callable[[str], str] = lambda text: text,
) -> str:
    """Plain rows for any bookkeeping: dates as 2026-11-25, amounts with two decimals, credits and money in below nothing.

    What has not fallen due yet has no date. No text can be taken for a formula. `heads` and `speak`, which says a kind or a
    text, put it into the language of the books.
    """
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(heads)
    for account, e in ((one, entry) for one in jobs for entry in one.entries):
        amount = -e.amount if e.kind in OFF else e.amount
        day = e.day.isoformat() if e.day else ""
        words = (plain_cell(w) for w in (day, account.job, account.customer, speak(e.kind), speak(e.text)))
        booked_to = plain_cell(accounts.get(e.kind, ""))
        writer.writerow((*words, f"{cents(amount):.2f}", booked_to, plain_cell(e.reference)))
    return out.getvalue()

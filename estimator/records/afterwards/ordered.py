"""A signed option and a later revision in; the lines of the change order between them, for the job's money, out."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from pathlib import Path

from estimator.model.agreed import agreed, side_recorded
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.pricing.ledger import Entry
from estimator.records.afterwards.money import ORDER, TAX_ON, entered
from estimator.records.afterwards.problems import NOTHING_TO_BILL
from estimator.records.afterwards.sold import Sold
from estimator.records.revisions import named
from estimator.records.same_option import recorded, same


def order_entries(folder: Path, done: Sold, asked: str, day: date, later: Sequence[Entry]) -> tuple[Entry, ...]:
    """Return what a revision's option costs above (or below) what was signed and what earlier orders changed, tax apart.

    By the unit prices that were signed where those explain all of it, as the change order has it.

    Errors: CannotGoOn for a revision that does not exist, is no later one, does not offer what was signed, or moves nothing.
    """
    revision, place = named(folder, asked), Place(file=str(folder))
    if revision.number <= done.revision.number:
        raise CannotGoOn(
            NOTHING_TO_BILL(
                place, name=revision.name, why=Say.of("r{number} is what was signed", number=done.revision.number)
            )
        )
    options = revision.record().data["quote"]["options"]
    found = same(recorded(done.option), [recorded(option) for option in options])
    if found is None:
        raise CannotGoOn(NOTHING_TO_BILL(place, name=revision.name, why=Say.of("it does not offer what was signed")))
    was, now = side_recorded(done.option), side_recorded(options[found])
    new = agreed(was, now) or now
    total, tax = new.total - was.total - _ordered(later, "total"), new.tax - was.tax - _ordered(later, "tax")
    if not total:
        raise CannotGoOn(NOTHING_TO_BILL(place, name=revision.name, why=Say.of("the total stays as it was")))
    text = f"{ORDER}{revision.name}"
    if total > 0:
        return entered("change", text, total - tax, tax, day, revision.name)
    return entered("credit", text, tax - total, -tax, day, revision.name)


def _ordered(later: Sequence[Entry], key: str) -> Decimal:
    """What orders booked before moved the total or its tax by."""
    taxed = tuple(e for e in later if e.text.startswith(TAX_ON + ORDER))
    every = taxed if key == "tax" else (*taxed, *(e for e in later if e.text.startswith(ORDER) and e.kind != "payment"))
    return sum((-e.amount if e.kind == "credit" else e.amount for e in every), Decimal(0))

"""A job's folder in; the visits that the homeowner accepted before the next repair, with what was charged for them, out."""

from datetime import date
from decimal import Decimal
from pathlib import Path

from estimator.model.money import cents
from estimator.model.wanted import PastVisit
from estimator.records.afterwards.money import is_noted, milestones, money
from estimator.records.afterwards.sold import Sold, all_sold
from estimator.records.record import visits_in


def visits(folder: Path) -> tuple[PastVisit, ...]:
    """Return the visits accepted so far, the oldest first; once a repair was signed, those it was signed with and later ones.

    Errors: CannotGoOn where a note or the record it speaks of is damaged.
    """
    found: tuple[PastVisit, ...] = ()
    for one in all_sold(folder):
        found = (*found, _visit(folder, one)) if one.only_prepares else visits_in(one.record.data)
    return found


def _visit(folder: Path, one: Sold) -> PastVisit:
    total, tax = (Decimal(one.option["price"][name]) for name in ("total", "tax"))
    charged = total - tax
    if is_noted(folder) and total:
        state = money(folder, one)
        paid = sum((state.paid_on(m.name) for m in milestones(folder, one, {})), Decimal(0))
        charged = min(charged, cents(max(paid, Decimal(0)) * charged / total))
    done = one.finished(folder)
    signed = one.signed.on if one.signed else str(one.record.data["quote"]["day"])
    return PastVisit(day=date.fromisoformat(done.on if done else signed), charged=charged)

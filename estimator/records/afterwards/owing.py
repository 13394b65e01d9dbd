"""Job files and a day in; who owes what since when out, over all jobs."""

from collections.abc import Iterable, Iterator
from datetime import date
from decimal import Decimal
from pathlib import Path

from estimator.model.frozen import Frozen
from estimator.model.money import cents
from estimator.model.problem import in_short
from estimator.model.say import Say
from estimator.model.wanted import PastVisit
from estimator.pricing.ledger import Entry
from estimator.records.accepted import accepted
from estimator.records.afterwards.money import Money, is_noted, milestones, money
from estimator.records.afterwards.sold import Sold, all_sold, sold
from estimator.records.record import visits_in
from estimator.records.revisions import revisions_folder


class Owing(Frozen, kw_only=True):
    """What one job owes: `due` has fallen due by the day, `owed` is all that is open; `since` the first day of what is due.

    `wrong` names a job whose money cannot be read; it never hides the others.
    """

    job_file: Path
    number: str = ""
    customer: str = ""
    owed: Decimal = Decimal(0)
    due: Decimal = Decimal(0)
    since: date | None = None
    wrong: Say | None = None


def owing(job_files: Iterable[Path], day: date) -> tuple[Owing, ...]:
    """Every accepted job with money open, what is due the longest first."""
    found = [one for path in job_files for one in _of_job(path, day)]
    return tuple(sorted(found, key=lambda one: (one.since or date.max, one.number, str(one.job_file))))


def _of_job(path: Path, day: date) -> Iterator[Owing]:
    folder = revisions_folder(path)
    try:
        if accepted(folder) is None:
            return
        done = sold(folder)
        state = money(folder, done)
        job = done.record.data["quote"]["job"]
        if state.balance == 0:
            return
        due = max(state.due(day), Decimal(0))
        yield Owing(
            job_file=path,
            number=job["number"],
            customer=job["customer"]["name"],
            owed=state.balance,
            due=due,
            since=since(state, day) if due else None,
        )
    except Exception as error:
        yield Owing(job_file=path, wrong=in_short(error))


def since(state: Money, day: date) -> date | None:
    """The day since which money is due: payments that came in and credits pay off what fell due first."""
    paid = sum((e.amount for e in state.entries if _takes_off(e, day)), Decimal(0))
    for entry in state.entries:
        if entry.day is not None and entry.day <= day and entry.kind not in ("payment", "credit"):
            paid -= entry.amount
            if paid < 0:
                return entry.day
    return None


def _takes_off(entry: Entry, day: date) -> bool:
    return entry.kind == "payment" or (entry.kind == "credit" and entry.day is not None and entry.day <= day)


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

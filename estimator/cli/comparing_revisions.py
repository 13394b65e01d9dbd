"""Two revisions of a job in; what moved between them, and each option's move parted into asked for and prices, out."""

from decimal import Decimal
from typing import TYPE_CHECKING

from estimator.model.problem import CannotGoOn
from estimator.records.changes import Change, Parted, changes, does, parted, prices_moved, totals
from estimator.records.record import Record
from estimator.records.revisions import Revision
from estimator.records.same_option import Doing, doing, like, names

if TYPE_CHECKING:
    from estimator.model.job import Job


def compared(first: Revision, last: Revision) -> tuple[tuple[Change, ...], tuple[Parted, ...]]:
    """Errors: CannotGoOn for a damaged record."""
    old, new = first.record(), last.record()
    moved = changes(old, new)
    was, now = names(does(old), does(new))
    before, after = totals(old, was), totals(new, now)
    known = tuple(zip(was, does(old), strict=True))
    newer = (*zip(now, does(new), strict=True), *(k for k in known if k[0] not in now))
    at_new_prices = _at_new_prices(old, new, known) if prices_moved(old, new) else before
    as_found = _as_found(old, new, newer) if _asked(old, new, moved) else None
    return moved, parted(before, at_new_prices, at_new_prices if as_found is None else as_found, after)


Known = tuple[tuple[str, Doing], ...]
"""Options with their names."""


def _at_new_prices(old: Record, new: Record, known: Known) -> dict[str, Decimal]:
    """The old notes priced with the new tables; nothing where they cannot be."""
    job = _job(old)
    return _priced(job, new, known) if job else {}


def _asked(old: Record, new: Record, moved: tuple[Change, ...]) -> bool:
    """Something may have been asked for, or found: the notes or the rules say otherwise, other add-ons were chosen, or a visit was accepted."""
    chosen = [(record.inputs.add_ons, record.inputs.visits) for record in (old, new)]
    return chosen[0] != chosen[1] or any(c.about in ("wish", "notes", "rule") for c in moved)


def _as_found(old: Record, new: Record, known: Known) -> dict[str, Decimal]:
    """What the new notes found, with the wishes and decisions of the old ones, at the new prices; nothing where not."""
    from estimator.records.change_source import as_found

    before, after = _job(old), _job(new)
    return _priced(as_found(after, before), new, known) if before and after else {}


def _job(record: Record) -> "Job | None":
    """The job as its notes say; None where this program cannot read them."""
    from estimator.records.again import job_of

    try:
        return job_of(record.inputs)
    except CannotGoOn:
        return None


def _priced(job: "Job", new: Record, known: Known) -> dict[str, Decimal]:
    """Each option's total with the tables and on the day of the newer record, by the names known of it."""
    from estimator.pipeline import run

    try:
        quote = run(job, new.inputs.tables, new.inputs.dated or new.inputs.day).quote
    except CannotGoOn:
        return {}
    options = quote.options if quote else ()
    named = like([doing(option) for option in options], known)
    return {name: option.price.total for name, option in zip(named, options, strict=True)}

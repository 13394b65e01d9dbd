"""Two revisions of a job in; what moved between them, and each option's move parted into asked for and prices, out."""

from decimal import Decimal

from estimator.model.problem import CannotGoOn
from estimator.records.changes import Change, Parted, changes, parted, prices_moved, totals
from estimator.records.record import Record
from estimator.records.revisions import Revision


def compared(first: Revision, last: Revision) -> tuple[tuple[Change, ...], tuple[Parted, ...]]:
    """Errors: CannotGoOn for a damaged record."""
    old, new = first.record(), last.record()
    return changes(old, new), parted(totals(old), _at_new_prices(old, new), totals(new))


def _at_new_prices(old: Record, new: Record) -> dict[str, Decimal]:
    """The old notes priced with the new tables; nothing where they cannot be."""
    from estimator.fieldnotes import read_job
    from estimator.pipeline import run
    from estimator.records.again import laid_out
    from estimator.records.changes import title, totals_of

    if not prices_moved(old, new):
        return totals(old)
    inputs = new.inputs
    with laid_out(old.inputs) as job_file:
        job = read_job(job_file).job
    if job is None:
        return {}
    try:
        quote = run(job, inputs.tables, inputs.dated or inputs.day).quote
    except CannotGoOn:
        return {}
    return totals_of((title(option), option.price.total) for option in quote.options) if quote else {}

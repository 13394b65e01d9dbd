"""Two revisions of a job in; what moved between them, and each option's move parted into asked for and prices, out."""

from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.views.screen import Row
from estimator.model.problem import CannotGoOn
from estimator.records.changes import Change, Parted, changes, parted, prices_moved, totals
from estimator.records.names import revisions_folder
from estimator.records.record import Record
from estimator.records.revisions import Revision, pair

if TYPE_CHECKING:
    from estimator.model.job import Job


def told(
    job_file: Path, old: str, new: str, columns: int, languages: tuple[str, ...]
) -> tuple[dict[str, object], list[Row]]:
    """As data and as rows, in the first of the languages, else in that of the settings file."""
    from estimator.cli.own_settings import own_settings
    from estimator.cli.views import changes as view

    first, last = pair(revisions_folder(job_file), old, new)
    moved, parts = compared(first, last)
    language = languages[0] if languages else own_settings().language
    return view.as_data(moved, parts), view.rows(moved, first.name, last.name, columns, parts, language)


def ordered(job_file: Path, new: str, to: Path, languages: tuple[str, ...]) -> list[Row]:
    """The change order on the disk, and what it comes to."""
    from estimator.cli.ordering import ordered as written
    from estimator.cli.views.words import dollars

    path, order = written(job_file, new, to, languages)
    was, now = order.signed.price.total, order.now.price.total
    return [Row(f"{path} is written: {dollars(was)} as signed, {dollars(now)} now.")]


def compared(first: Revision, last: Revision) -> tuple[tuple[Change, ...], tuple[Parted, ...]]:
    """Errors: CannotGoOn for a damaged record."""
    old, new = first.record(), last.record()
    moved = changes(old, new)
    return moved, parted(totals(old), _at_new_prices(old, new), _as_found(old, new, moved), totals(new))


def _at_new_prices(old: Record, new: Record) -> dict[str, Decimal]:
    """The old notes priced with the new tables; nothing where they cannot be."""
    if not prices_moved(old, new):
        return totals(old)
    job = _job(old)
    return _priced(job, new) if job else {}


def _as_found(old: Record, new: Record, moved: tuple[Change, ...]) -> dict[str, Decimal]:
    """What the new notes found, with the wishes and decisions of the old ones, at the new prices; nothing where not."""
    from estimator.records.whose import as_found

    wished, said = any(c.about == "wish" for c in moved), any(c.about in ("notes", "rule") for c in moved)
    if not wished and old.inputs.add_ons == new.inputs.add_ons and not said:
        return _at_new_prices(old, new)
    before, after = _job(old), _job(new)
    return _priced(as_found(after, before), new) if before and after else {}


def _job(record: Record) -> "Job | None":
    """The job as its notes say, with the add-ons that were chosen for it."""
    from estimator.fieldnotes import read_job
    from estimator.records.again import laid_out

    with laid_out(record.inputs) as job_file:
        job = read_job(job_file).job
    return job.with_add_ons(record.inputs.add_ons) if job else None


def _priced(job: "Job", new: Record) -> dict[str, Decimal]:
    """Each option's total with the tables and on the day of the newer record."""
    from estimator.pipeline import run
    from estimator.records.changes import title, totals_of

    try:
        quote = run(job, new.inputs.tables, new.inputs.dated or new.inputs.day).quote
    except CannotGoOn:
        return {}
    return totals_of((title(option), option.price.total) for option in quote.options) if quote else {}

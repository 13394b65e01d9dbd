"""`estimator changes`: two revisions in, what moved between them and why out; or a change order to what was signed."""

from decimal import Decimal
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.arguments import AsJson, JobFile, Languages
from estimator.cli.completing import revision_names
from estimator.model.problem import CannotGoOn
from estimator.records.changes import Change, Parted, changes, does, parted, prices_moved, totals
from estimator.records.record import Record
from estimator.records.revisions import Revision
from estimator.records.same_option import OptionWork, like, names, work_of

if TYPE_CHECKING:
    from estimator.cli.views.screen import Row
    from estimator.model.job import Job


Old = Annotated[
    str,
    typer.Argument(
        metavar="OLD",
        autocompletion=revision_names,
        help="The earlier revision, such as r1; else the one before the newest.",
    ),
]
New = Annotated[
    str, typer.Argument(metavar="NEW", autocompletion=revision_names, help="The later revision; else the newest.")
]


Order = Annotated[
    Path | None,
    typer.Option(
        "--order",
        metavar="FILE",
        help="Write a change order, from the accepted revision to NEW or the newest; a new name, ending in .xlsx.",
    ),
]


def command(
    job: JobFile,
    old: Old = "",
    new: New = "",
    order: Order = None,
    languages: Languages = None,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.own_settings import own_settings
    from estimator.cli.reader import reads
    from estimator.cli.views.screen import answer, show

    if order:
        show([_ordered(job, new or old, order, tuple(languages or ()))])
        return
    language = languages[0] if languages else own_settings().language
    reads(language)
    data, rows = _compared(job, old, new, language)
    answer(data, as_json, rows)


def _compared(job_file: Path, old: str, new: str, language: str) -> "tuple[dict[str, object], list[Row]]":
    """What moved, as data and as rows."""
    from estimator.cli.views.changes import as_data, write_changes
    from estimator.cli.views.layout import in_window
    from estimator.records.revisions import pair, revisions_folder

    first, last = pair(revisions_folder(job_file), old, new)
    (moved, parts), out = compared(first, last), in_window(language)
    write_changes(out, moved, first.name, last.name, parts)
    return as_data(moved, parts), out.rows


def _ordered(job_file: Path, new: str, to: Path, languages: tuple[str, ...]) -> str:
    """The change order on the disk, and what it comes to."""
    from estimator.cli.change_order import write_change_order
    from estimator.cli.reader import reader
    from estimator.cli.views.words import Words

    (path, order), words = write_change_order(job_file, new, to, languages), Words(reader())
    was, now = words.dollars(order.signed.price.total), words.dollars(order.now.price.total)
    return words.speak("{file} is written: {was} as signed, {now} now.", file=str(path), was=was, now=now)


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


Known = tuple[tuple[str, OptionWork], ...]
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
    from estimator.records.reissue import job_of

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
    named = like([work_of(option) for option in options], known)
    return {name: option.price.total for name, option in zip(named, options, strict=True)}

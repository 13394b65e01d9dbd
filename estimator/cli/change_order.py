"""A job and two of its revisions in, a change order to what was signed out: both quotes made again from their records."""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

from estimator.cli.problems import NO_ORDER
from estimator.cli.writing import WORKBOOK, free, new_file
from estimator.model.offer import Quote
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.papers.change_order import ChangeOrder, change_order
from estimator.records.accepted import Acceptance, accepted
from estimator.records.new_notes import new_facts, new_notes, removed_notes
from estimator.records.reissue import job_of
from estimator.records.revisions import Revision, named, newest, revisions_folder
from estimator.records.same_option import same, work_of
from estimator.sheets.write import write


def write_change_order(job_file: Path, new: str, to: Path, languages: tuple[str, ...]) -> tuple[Path, ChangeOrder]:
    """Writes the change order from the revision that was accepted to `new`, or the newest.

    Errors: CannotGoOn where nothing was accepted, nothing came after, or the option is offered no more.
    """
    free(to, WORKBOOK)
    folder = revisions_folder(job_file)
    signed, place = accepted(folder), Place(file=str(folder))
    if signed is None:
        raise CannotGoOn(NO_ORDER(place, why=Say.of("no option was accepted"), instead=ACCEPT))
    last = named(folder, new) if new else newest(folder)
    if last is None or last.number <= signed.revision:
        why = Say.of("r{number} was accepted, and no revision came after it", number=signed.revision)
        instead = Say.of("Write what changed into the notes and run `estimator quote`.")
        raise CannotGoOn(NO_ORDER(place, why=why, instead=instead))
    order = _order(signed, quote_of(named(folder, f"r{signed.revision}")), quote_of(last), place)
    return new_file(to, write(change_order(order, languages or order.after.job.languages))), order


ACCEPT = Say.of(
    "Note the acceptance first: estimator quote JOB --accepted A --on 2026-11-20. Before a signature a revision is enough."
)


def _order(signed: Acceptance, before: Quote, after: Quote, place: Place) -> ChangeOrder:
    was = next(option for option in before.options if option.letter == signed.option)
    found = same(work_of(was), [work_of(option) for option in after.options])
    if found is None:
        option = was.name or was.title
        why = Say.of("what was signed, {option}, is not offered in r{number}", option=option, number=after.revision)
        instead = Say.of(
            "Put it together as an [[option]] of the job file, run `estimator quote`, and write the order then."
        )
        raise CannotGoOn(NO_ORDER(place, why=why, instead=instead))
    day = date.fromisoformat(signed.on)
    jobs = before.job, after.job
    return ChangeOrder(
        before=before,
        signed=was,
        signed_on=day,
        after=after,
        now=after.options[found],
        noted=(*new_notes(*jobs), *new_facts(*jobs)),
        no_longer=removed_notes(*jobs),
    )


def quote_of(revision: Revision) -> Quote:
    """The quote as it was issued. Errors: CannotGoOn for a damaged record, or one that this program makes otherwise."""
    from estimator.pipeline import run

    record = revision.record()
    inputs = record.inputs
    quote = run(job_of(inputs), inputs.tables, inputs.dated or inputs.day).quote
    issued = [Decimal(option["price"]["total"]) for option in record.data["quote"]["options"]]
    if quote is None or [option.price.total for option in quote.options] != issued:
        words = {"name": revision.name, "program": record.made_by}
        why = Say.of("{name} was made by {program} and comes out otherwise with this one", **words)
        instead = Say.of("Write the change order with the program that made it.")
        raise CannotGoOn(NO_ORDER(Place(file=str(revision.folder)), why=why, instead=instead))
    return replace(quote, revision=revision.number)

"""What `estimator quote` can do, one function each: write a revision, make one again, note an acceptance, verify a file."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.priced_job import Asked, Priced, only_nothing_to_offer, quoted
from estimator.cli.problems import STILL_INVENTED
from estimator.cli.views.layout import Layout
from estimator.cli.views.problems import write_gas_first
from estimator.model.likely_range import seed_of
from estimator.model.offer import Quote
from estimator.model.problem import CannotGoOn, Place, Problem
from estimator.model.say import Typed, chained
from estimator.records.revisions import revisions_folder

if TYPE_CHECKING:
    from estimator.model.job import Job
    from estimator.records.issue import Issued, Made
    from estimator.records.record import Inputs, Record


def new(
    out: Layout,
    job_file: Path,
    tables: Path | None,
    on: date | None,
    languages: tuple[str, ...],
    anew: bool,
    add_ons: tuple[str, ...] | None,
    pdf: bool,
) -> None:
    """The next revision written, and told; its customer's papers as PDF too where that is asked for."""
    run, issued = written(job_file, tables, on, languages, anew, add_ons)
    _tell_issued(out, issued, run.quote)
    if pdf:
        from estimator.cli.pdf import write_pdfs

        write_pdfs(out, issued.files)


def written(
    job_file: Path,
    tables: Path | None,
    on: date | None,
    languages: tuple[str, ...],
    anew: bool = False,
    add_ons: tuple[str, ...] | None = None,
) -> "tuple[Priced, Issued]":
    """The next revision on the disk, or the newest one when it says the same.

    While the newest one's offer holds its price day is kept; `anew` takes the prices of the day itself. The add-ons that
    were chosen for the newest one stay chosen where `add_ons` is None and the job file wishes for the same; () takes them out.
    """
    from estimator.cli.pdf import photos
    from estimator.cli.views.problems import tell
    from estimator.records.accepted import not_before
    from estimator.records.edited_prices import edited, to_look_at
    from estimator.records.issue import Made, issue

    if on is not None:
        not_before(revisions_folder(job_file), on)
    last = _newest_record(revisions_folder(job_file))
    offered = last.offered if last and not anew else None
    run = quoted(Asked(job_file=job_file, tables=tables, on=on, offered=offered, add_ons=add_ons))
    pictures, wrong = photos(job_file.parent, run.quote)
    tell(wrong)
    if run.quote.invented:
        tell([STILL_INVENTED(Place(file=job_file.name), because=chained(run.quote.invented))])
    inputs = _inputs(job_file, run, languages, pictures, last)
    quote = _for_the_office(run.quote, inputs)

    def make(number: int) -> Made:
        return _made(quote, number, inputs)

    issued = issue(revisions_folder(job_file), quote, inputs, make)
    moved = edited(last, run.tables, run.quote.price_day) if last and issued.new and not anew else ()
    of_price = (*to_look_at(inputs.own_numbers, quote), *short_of_confidence(quote)) if issued.new else ()
    tell((*issued.problems, *of_price, *moved))
    return run, issued


def _inputs(
    job_file: Path, run: Priced, languages: tuple[str, ...], pictures: "Mapping[str, bytes]", last: "Record | None"
) -> "Inputs":
    """All that the papers of a revision are made of, as its record keeps it."""
    from estimator.records.edited_prices import set_by_hand
    from estimator.records.record import Inputs

    quote = run.quote
    return Inputs(
        job_file=job_file.name,
        texts=run.texts,
        tables=run.tables,
        day=quote.price_day,
        dated=quote.day,
        languages=languages or quote.job.languages,
        pictures=pictures,
        own_numbers=set_by_hand(last.data["quote"]) if last else (),
        seed=seed_of(quote.job.number),
        add_ons=quote.job.chosen,
        visits=quote.job.visits,
    )


def short_of_confidence(quote: Quote) -> tuple[Problem, ...]:
    """A warning for each option whose contingency holds less often than the firm wants."""
    from estimator.pricing.likely_range import too_little

    found = ((o.letter, o.likely_range) for o in quote.options if o.likely_range)
    return tuple(problem for letter, one in found if (problem := too_little(letter, one)))


def _newest_record(folder: Path) -> "Record | None":
    """None where there is none yet, or the newest is damaged: `issue` says so, and the prices are those of the day."""
    from estimator.records.revisions import newest

    last = newest(folder)
    try:
        return last.record() if last else None
    except CannotGoOn:
        return None


def _for_the_office(quote: Quote, inputs: "Inputs") -> Quote:
    """With what the office alone sees: the range, drawn from the seed on the record, the ways side by side, and the
    numbers set by hand that want another look.

    A record without a seed has neither; nor has a report.
    """
    from estimator.pipeline import with_ranges
    from estimator.pipeline.costing import with_job_settings
    from estimator.records.edited_prices import to_look_at
    from estimator.studies.ways import ways_of

    if inputs.seed is None or not quote.options:
        return quote
    ways = ways_of(quote.job, with_job_settings(quote.job, inputs.tables))
    own_numbers = tuple(str(problem.wrong) for problem in to_look_at(inputs.own_numbers, quote))
    return replace(with_ranges(quote, inputs.tables, inputs.seed), ways=ways, own_numbers=own_numbers)


def _made(quote: Quote, number: int, inputs: "Inputs") -> "Made":
    from estimator.records.bundle import papers
    from estimator.records.issue import Made

    numbered = replace(quote, revision=number)
    return Made(numbered, papers(numbered, inputs))


def again(out: Layout, job_file: Path, asked: str) -> None:
    """The files of an issued revision, made from its record alone, beside it."""
    from estimator.cli.views.problems import tell
    from estimator.records.reissue import reissue as made_again
    from estimator.records.revisions import named

    revision = named(revisions_folder(job_file), asked)
    made = made_again(revision, _remade)
    tell(made.problems)
    out.line(out.speak("{name} made again from its record:", name=revision.name))
    _list(out, made.files)
    if not made.problems:
        out.line(out.speak("They are the same, byte for byte, as those that were issued."))


def _remade(job_file: Path, inputs: "Inputs", number: int) -> "Made":
    from estimator.records.reissue import job_in

    return _made(_for_the_office(quote_of(job_in(job_file, inputs), inputs), inputs), number, inputs)


def quote_of(job: "Job", inputs: "Inputs") -> Quote:
    """Return the quote of a revision, or its report, with the tables of its day. Errors: CannotGoOn where the job stops both."""
    from estimator.pipeline import report, run

    day = inputs.dated or inputs.day
    try:
        result = run(job, inputs.tables, day)
    except CannotGoOn as stop:
        if not only_nothing_to_offer(stop):
            raise
        return report(job, inputs.tables, day)
    if result.quote is None:
        raise CannotGoOn(*result.problems)
    return result.quote


def _list(out: Layout, files: "tuple[Path, ...]") -> None:
    out.lines(f"  {path}" for path in files)


def _tell_issued(out: Layout, issued: "Issued", quote: Quote) -> None:
    """What was written, or that nothing had to be; and whose prices they are where they are older."""
    write_gas_first(out, quote.job)
    if issued.new:
        out.line(out.speak("r{number} is written:", number=issued.number), "head")
        _list(out, issued.files)
        _tell_prices(out, quote)
    else:
        out.line(out.speak("Nothing changed since r{number}; nothing was written.", number=issued.number))
        _tell_prices(out, quote)
        _list(out, issued.files)


def _tell_prices(out: Layout, quote: Quote) -> None:
    """Until when older prices hold, the add-ons that stand in them, and the visits accepted before that come off its repairs:
    the discounts that no job file names."""
    if not quote.options:
        _tell_no_offer(out, quote)
        return
    if quote.priced_on:
        days = {"day": str(quote.price_day), "until": str(quote.valid_until)}
        out.line(out.speak("Prices of {day} hold until {until}; --today prices it anew.", **days))
    if codes := dict.fromkeys(a.code for option in quote.options for a in option.chosen_add_ons):
        out.line(out.speak("With the add-ons chosen: {codes}. --with none takes them out.", codes=", ".join(codes)))
    typed = {discount.reason for discount in quote.job.discounts}
    off = [line for option in quote.options for line in option.price.lines if line.price_class == "discount"]
    for text, amount in dict.fromkeys((line.text_en, line.amount) for line in off if line.text_en not in typed):
        out.line(f"{text}, {out.dollars(-amount)} off each repair.")


def _tell_no_offer(out: Layout, quote: Quote) -> None:
    """A sound house, or one where the rules leave no way of repair: the papers are reports, and nothing failed."""
    if all(n.watched for n in quote.diagnosis.needs):
        out.line(out.speak("Nothing has to be repaired on these notes: reports only, and no offer."))
    else:
        why = {"command": Typed("estimator options JOB --why")}
        none = out.speak("No way of repair can be offered on these notes: reports only. Why: {command}", **why)
        out.line(none, "bad")

"""A job typed on the command line in, what `options` answers out: the options, or why there is none."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.guard import DONE, TO_MEND
from estimator.cli.priced_job import Priced, only_nothing_to_offer, priced, ready
from estimator.cli.views.screen import Row
from estimator.model.frozen import Frozen
from estimator.model.judgement import Diagnosis
from estimator.model.offer import Quote
from estimator.model.problem import CannotGoOn, Place
from estimator.wording.say import speaker

if TYPE_CHECKING:
    from estimator.scopes.each_way import NeedWays


class Answer(Frozen):
    """What goes out as JSON, what goes out as text, and the exit code."""

    data: object
    rows: list[Row]
    code: int = DONE


def offered(
    job_file: Path,
    tables: Path | None,
    changes: Sequence[str] | None,
    on: date | None,
    reasons: bool,
    columns: int,
    language: str,
    inside: bool = False,
    only: str = "",
) -> Answer:
    """`inside` adds the range of cost and days, for the office alone; `only` is the letter of one option to show.

    Errors: CannotGoOn with everything that stops the price, but for there being nothing to offer.
    """
    try:
        run = priced(job_file, tables, changes, on)
    except CannotGoOn as stop:
        if not only_nothing_to_offer(stop):
            raise
        return _nothing(job_file, tables, changes, on, columns, language)
    if not run.quote.options:
        return _nothing(job_file, tables, changes, on, columns, language)
    run = replace(run, quote=_only(job_file, run.quote, only))
    rows = _options(run, changes or (), reasons, columns, language)
    quote = _with_ranges(run) if inside else run.quote
    if inside:
        from estimator.cli.views import likely_range

        rows += likely_range.rows(quote, columns, language)
    if not reasons:
        return Answer(quote, rows)
    from estimator.records.plain import plain

    return Answer({**plain(quote), "ways": _ways(run)}, rows)


def _with_ranges(run: Priced) -> Quote:
    """The quote with how far the cost and days of each option may run."""
    from estimator.pipeline import with_ranges
    from estimator.pricing.likely_range import seed_of

    return with_ranges(run.quote, run.tables, seed_of(run.quote.job.number))


def _only(job_file: Path, quote: Quote, letter: str) -> Quote:
    """The quote with one of its options, or with all. Errors: CannotGoOn for a letter that none has."""
    if not letter:
        return quote
    chosen = tuple(option for option in quote.options if option.letter == letter.strip().upper())
    if not chosen:
        from estimator.cli.problems import NO_OPTION

        letters = ", ".join(option.letter for option in quote.options)
        raise CannotGoOn(NO_OPTION(Place(file=str(job_file)), letter=letter, letters=letters))
    return replace(quote, options=chosen)


def _options(run: Priced, changes: Sequence[str], reasons: bool, columns: int, language: str) -> list[Row]:
    from estimator.cli.views import options

    out = []
    if run.as_filed:
        from estimator.cli.views import what_if

        out = what_if.rows(run.as_filed, run.quote, changes, columns, language)
    out += options.rows(run.quote, columns, language)
    if not reasons:
        return out
    from estimator.cli.views import each_way, why

    return [*out, *why.rows(run.quote, columns, language), *each_way.rows(_ways(run), columns, language)]


def _ways(run: Priced) -> "tuple[NeedWays, ...]":
    """Every need with every way of repair and what the rules say of it."""
    from estimator.pipeline.costing import with_job_settings
    from estimator.scopes.each_way import each_way

    job = run.quote.job
    return each_way(job, run.quote.diagnosis.needs, run.repairs, run.verdicts, with_job_settings(job, run.tables))


def _nothing(
    job_file: Path, tables: Path | None, changes: Sequence[str] | None, on: date | None, columns: int, language: str
) -> Answer:
    """What was found, and what the rules have against every way; a house with nothing to repair is no failure."""
    from estimator.cli.views import check, each_way
    from estimator.diagnosis import diagnose
    from estimator.pipeline.costing import costing, place_of, with_job_settings
    from estimator.scopes.candidates import repairs
    from estimator.scopes.choose import choose
    from estimator.scopes.each_way import each_way as ways

    job, read, _ = ready(job_file, tables, changes, on)
    own = with_job_settings(job, read)
    diagnosis = diagnose(job, own)
    offers = repairs(job, diagnosis, own)
    verdicts = choose(job, diagnosis, offers, costing(job, own, place_of(job, own)), own).verdicts
    rows = [
        *check.rows(job, diagnosis, columns, language, _in_a_word(diagnosis, language)),
        *each_way.rows(ways(job, diagnosis.needs, offers.repairs, verdicts, own), columns, language),
    ]
    return Answer(
        {"needs": diagnosis.needs, "against": verdicts},
        rows,
        DONE if all(n.watched for n in diagnosis.needs) else TO_MEND,
    )


def _in_a_word(diagnosis: Diagnosis, language: str) -> str:
    """Nothing to repair is said only where nothing is left open either."""
    speak = speaker(language)
    if all(n.watched for n in diagnosis.needs) and diagnosis.needs:
        return speak("Nothing to repair now. What was found is slight: inspect it again within a year.")
    if diagnosis.needs:
        return speak("No way of repair can be offered on these notes.")
    if any(question.line for question in diagnosis.questions):
        return speak("Nothing was found that has to be repaired; the questions below are still open.")
    return speak("There is nothing to repair.")

"""`estimator options`: the notes in, the ways of repair side by side out, or why there is none."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, JobFile, Language, OnDay, SetKeys, TablesFrom
from estimator.cli.completing import option_letters
from estimator.cli.guard import DONE, TO_MEND
from estimator.model.problem import CannotGoOn, Place

if TYPE_CHECKING:
    from estimator.cli.priced_job import Priced
    from estimator.cli.views.layout import Layout
    from estimator.cli.views.words import Words
    from estimator.model.judgement import Diagnosis
    from estimator.model.offer import Quote
    from estimator.scopes.each_way import NeedWays

Why = Annotated[
    bool, typer.Option("--why", help="The reasons too: what each answers and leaves, and what the rules said.")
]

Range = Annotated[
    bool, typer.Option("--range", help="For the office, never to be sent: how far our cost and the days may run.")
]
Only = Annotated[
    str,
    typer.Option(
        "--option", metavar="LETTER", autocompletion=option_letters, help="One option alone, drawn under each line."
    ),
]


def command(
    job: JobFile,
    why: Why = False,
    likely: Range = False,
    only: Only = "",
    tables: TablesFrom = None,
    changes: SetKeys = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> int:
    from estimator.cli.priced_job import only_nothing_to_offer, priced
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.screen import answer

    out, code = in_window(language), DONE
    try:
        run = priced(job, tables, changes, on)
    except CannotGoOn as stop:
        if not only_nothing_to_offer(stop):
            raise
        run = None
    if run and run.quote.options:
        data = _offered(out, replace(run, quote=_only(job, run.quote, only)), changes or (), why, likely)
    else:
        data, code = _nothing(out, job, tables, changes, on)
    answer(data, as_json, out.rows)
    return code


def _only(job_file: Path, quote: "Quote", letter: str) -> "Quote":
    """The quote with one of its options, or with all. Errors: CannotGoOn for a letter that none has."""
    if not letter:
        return quote
    chosen = tuple(option for option in quote.options if option.letter == letter.strip().upper())
    if not chosen:
        from estimator.cli.problems import NO_OPTION

        letters = ", ".join(option.letter for option in quote.options)
        raise CannotGoOn(NO_OPTION(Place(file=str(job_file)), letter=letter, letters=letters))
    return replace(quote, options=chosen)


def _offered(out: "Layout", run: "Priced", changes: Sequence[str], reasons: bool, inside: bool) -> object:
    """`reasons`: what the rules said of each; `inside`: the range of cost and days, for the office alone."""
    from estimator.cli.views.options import write_options

    quote = run.quote
    if run.as_filed:
        from estimator.cli.views.likely_range import write_what_if

        write_what_if(out, run.as_filed, quote, changes)
    write_options(out, quote)
    ways = _ways(run) if reasons else ()
    if reasons:
        from estimator.cli.views.likely_range import write_each_way
        from estimator.cli.views.why import write_reasons

        write_reasons(out, quote)
        write_each_way(out, ways)
    if inside:
        from estimator.cli.views.likely_range import write_ranges
        from estimator.model.likely_range import seed_of
        from estimator.pipeline import with_ranges

        quote = with_ranges(quote, run.tables, seed_of(quote.job.number))
        write_ranges(out, quote)
    if not reasons:
        return quote
    from estimator.records.recorded_text import plain

    return {**plain(quote), "ways": ways}


def _ways(run: "Priced") -> "tuple[NeedWays, ...]":
    """Every need with every way of repair and what the rules say of it."""
    from estimator.pipeline.costing import with_job_settings
    from estimator.scopes.each_way import each_way

    job = run.quote.job
    return each_way(job, run.quote.diagnosis.needs, run.repairs, run.verdicts, with_job_settings(job, run.tables))


def _nothing(
    out: "Layout", job_file: Path, tables: Path | None, changes: Sequence[str] | None, on: date | None
) -> tuple[object, int]:
    """What was found, and what the rules have against every way; a house with nothing to repair is no failure."""
    from estimator.cli.priced_job import ready
    from estimator.cli.views.check import write_check
    from estimator.cli.views.likely_range import write_each_way
    from estimator.diagnosis import diagnose
    from estimator.pipeline.costing import costing, place_of, with_job_settings
    from estimator.scopes.candidates import repairs
    from estimator.scopes.choose import choose
    from estimator.scopes.each_way import each_way

    job, read, _ = ready(job_file, tables, changes, on)
    own = with_job_settings(job, read)
    diagnosis = diagnose(job, own)
    offers = repairs(job, diagnosis, own)
    verdicts = choose(job, diagnosis, offers, costing(job, own, place_of(job, own)), own).verdicts
    write_check(out, job, diagnosis, _in_a_word(diagnosis, out))
    write_each_way(out, each_way(job, diagnosis.needs, offers.repairs, verdicts, own))
    code = DONE if all(n.watched for n in diagnosis.needs) else TO_MEND
    return {"needs": diagnosis.needs, "against": verdicts}, code


def _in_a_word(diagnosis: "Diagnosis", words: "Words") -> str:
    """Nothing to repair is said only where nothing is left open either."""
    speak = words.speak
    if all(n.watched for n in diagnosis.needs) and diagnosis.needs:
        return speak("Nothing to repair now. What was found is slight: inspect it again within a year.")
    if diagnosis.needs:
        return speak("No way of repair can be offered on these notes.")
    if any(question.line for question in diagnosis.questions):
        return speak("Nothing was found that has to be repaired; the questions below are still open.")
    return speak("There is nothing to repair.")

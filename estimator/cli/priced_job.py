"""A job file and tables in, the whole way run on them out; what is wrong stops it with every problem at once."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.judged_job import look
from estimator.cli.tables_asked import readable_tables
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.judgement import Verdict
from estimator.model.problem import CannotGoOn, Problem
from estimator.model.wanted import PastVisit

if TYPE_CHECKING:
    from estimator.model.offer import Quote
    from estimator.model.work import Repair
    from estimator.tables.tables import Tables

NOTHING_TO_OFFER = "quote/nothing-to-offer"


class Priced(Frozen, kw_only=True):
    """A job run the whole way; `as_filed` is the quote without the changes where something was changed for a what-if;
    `repairs` are all that the rules allow."""

    quote: "Quote"
    read_tables: "Callable[[], Tables]"
    verdicts: tuple[Verdict, ...]
    texts: Mapping[str, str]
    as_filed: "Quote | None" = None
    repairs: "tuple[Repair, ...]" = ()

    @property
    def tables(self) -> "Tables":
        """What it was priced with; read when somebody asks."""
        return self.read_tables()


PriceDay = Callable[[date], date]
"""The day of the quote in, the day whose prices it takes out."""


def same_day(day: date) -> date:
    """Return the day itself: prices are those of the quote's own day."""
    return day


def priced(
    job_file: Path,
    tables: Path | None,
    changes: Sequence[str] | None = None,
    on: date | None = None,
    price_day: PriceDay = same_day,
    add_ons: tuple[str, ...] | None = None,
) -> Priced:
    """From notes to a quote; with None the add-ons chosen for the newest revision, else those of the job file.

    Errors: CannotGoOn with every problem that stops the price.
    """
    run = _run(job_file, tables, changes, on, price_day, add_ons)
    return run if not changes else replace(run, as_filed=_run(job_file, tables, None, on, price_day).quote)


def quoted(
    job_file: Path,
    tables: Path | None,
    on: date | None,
    price_day: PriceDay,
    add_ons: tuple[str, ...] | None = None,
) -> Priced:
    """From notes to a quote, or to a report without options where the rules leave no way of repair.

    Errors: CannotGoOn with every problem that stops both.
    """
    from estimator.pipeline import report

    try:
        return priced(job_file, tables, None, on, price_day, add_ons)
    except CannotGoOn as stop:
        if not only_nothing_to_offer(stop):
            raise
    job, read, texts = ready(job_file, tables, None, on)
    priced_with = read.on(price_day(read.day))
    told = report(_as_chosen(job_file, job, add_ons), priced_with, read.day)
    return Priced(quote=told, read_tables=lambda: priced_with, verdicts=(), texts=texts)


def only_nothing_to_offer(stop: CannotGoOn) -> bool:
    """Nothing is wrong but that no way of repair is left."""
    return {problem.code for problem in stop.problems} == {NOTHING_TO_OFFER}


def _run(
    job_file: Path,
    tables: Path | None,
    changes: Sequence[str] | None,
    on: date | None,
    price_day: PriceDay,
    add_ons: tuple[str, ...] | None = None,
) -> Priced:
    from estimator.cli.asked_before import asked_before
    from estimator.cli.views.problems import tell

    def anew() -> tuple[_Run, Mapping[str, str]]:
        run = _run_anew(job_file, tables, changes, on, price_day, add_ons)
        return run, run.texts

    if changes or price_day is not same_day:
        run = anew()[0]
    else:
        run = asked_before("price", job_file, tables, anew, on, add_ons, _newest(job_file), _visits(job_file))
    tell(run.problems)
    return Priced(
        quote=run.quote,
        read_tables=lambda: readable_tables(on or run.quote.job.day, tables).on(price_day(run.quote.job.day)),
        verdicts=run.verdicts,
        texts=run.texts,
        repairs=run.repairs,
    )


class _Run(Frozen):
    """What is kept of a run: all but the tables, which are kept by themselves."""

    quote: "Quote"
    verdicts: tuple[Verdict, ...]
    texts: Mapping[str, str]
    repairs: "tuple[Repair, ...]"
    problems: tuple[Problem, ...]


def _run_anew(
    job_file: Path,
    tables: Path | None,
    changes: Sequence[str] | None,
    on: date | None,
    price_day: PriceDay,
    add_ons: tuple[str, ...] | None,
) -> _Run:
    from estimator.pipeline import run

    job, read, texts = ready(job_file, tables, changes, on)
    result = run(_as_chosen(job_file, job, add_ons), read.on(price_day(read.day)), read.day)
    if result.quote is None:
        raise CannotGoOn(*result.problems)
    return _Run(result.quote, result.choices.verdicts, texts, result.offers.repairs, result.problems)


def _newest(job_file: Path) -> object:
    """What the newest revision's record says of the add-ons chosen for it."""
    from estimator.records.names import revisions_folder
    from estimator.records.newest import last_summary

    return last_summary(revisions_folder(job_file))


def _as_chosen(job_file: Path, job: Job, add_ons: tuple[str, ...] | None) -> Job:
    """The job with the add-ons that are chosen now, or were for its newest revision, and the visits accepted before."""
    from estimator.records.names import revisions_folder
    from estimator.records.newest import chosen_last

    chosen = chosen_last(revisions_folder(job_file), job) if add_ons is None else add_ons
    return replace(job.with_add_ons(chosen), visits=_visits(job_file))


def _visits(job_file: Path) -> tuple[PastVisit, ...]:
    """What was accepted is asked of the records only where there are any, and a note that something was."""
    from estimator.records.names import revisions_folder

    folder = revisions_folder(job_file)
    if not folder.is_dir():
        return ()
    from estimator.records.accepted import all_accepted

    if not all_accepted(folder):
        return ()
    from estimator.records.afterwards.visits import visits

    return visits(folder)


def ready(
    job_file: Path, tables: Path | None, changes: Sequence[str] | None, on: date | None
) -> "tuple[Job, Tables, Mapping[str, str]]":
    """The job, the tables of the day and the texts, all fit to be priced. Errors: CannotGoOn with everything wrong."""
    looked = look(job_file, tables, changes, on)
    read = looked.tables
    if looked.job is None or read is None or looked.errors:
        raise CannotGoOn(*looked.problems)
    return looked.job, read, looked.texts

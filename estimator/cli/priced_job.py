"""A job file and tables in, the whole way run on them out; what is wrong stops it with every problem at once."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.diagnosed_job import diagnosed
from estimator.cli.price_tables import readable_tables
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
    `repairs` are all that the rules allow. It was priced with the tables of `priced_on`, read on the day of the job."""

    quote: "Quote"
    texts: Mapping[str, str]
    read_on: date
    priced_on: date
    verdicts: tuple[Verdict, ...] = ()
    repairs: "tuple[Repair, ...]" = ()
    problems: tuple[Problem, ...] = ()
    named: Path | None = None  # where the tables lie, where that was said
    as_filed: "Quote | None" = None

    @property
    def tables(self) -> "Tables":
        """What it was priced with; read when somebody asks."""
        return readable_tables(self.read_on, self.named).on(self.priced_on)


class Asked(Frozen, kw_only=True):
    """What is to be priced: a job file with changes for a what-if, on a day, with tables and add-ons.

    `add_ons` None: those chosen for the newest revision, else those of the job file. `offered` are the first and last day of
    an earlier offer: as long as it holds, prices are those of its first day.
    """

    job_file: Path
    tables: Path | None = None
    changes: Sequence[str] | None = None
    on: date | None = None
    offered: tuple[date, date] | None = None
    add_ons: tuple[str, ...] | None = None

    def price_day(self, day: date) -> date:
        """Return the day whose prices a quote of this day takes."""
        first, last = self.offered or (day, day)
        return first if first <= day <= last else day


def priced(
    job_file: Path,
    tables: Path | None,
    changes: Sequence[str] | None = None,
    on: date | None = None,
) -> Priced:
    """From notes to a quote. Errors: CannotGoOn with every problem that stops the price."""
    asked = Asked(job_file=job_file, tables=tables, changes=changes, on=on)
    run = _priced(asked)
    return replace(run, as_filed=_priced(replace(asked, changes=None)).quote) if changes else run


def quoted(asked: Asked) -> Priced:
    """From notes to a quote, or to a report without options where the rules leave no way of repair.

    Errors: CannotGoOn with every problem that stops both.
    """
    from estimator.pipeline import report

    try:
        return _priced(asked)
    except CannotGoOn as stop:
        if not only_nothing_to_offer(stop):
            raise
    job, tables, texts = _ready(asked)
    quote = report(job, tables, asked.on or job.day)
    return _with_tables(Priced(quote=quote, texts=texts, read_on=asked.on or job.day, priced_on=tables.day), asked)


def only_nothing_to_offer(stop: CannotGoOn) -> bool:
    """Nothing is wrong but that no way of repair is left."""
    return {problem.code for problem in stop.problems} == {NOTHING_TO_OFFER}


def _priced(asked: Asked) -> Priced:
    from estimator.cli.answer_cache import cached_answer
    from estimator.cli.views.problems import tell

    def anew() -> tuple[Priced, Mapping[str, str]]:
        run = _priced_anew(asked)
        return run, run.texts

    if asked.changes:
        run = anew()[0]
    else:
        file = asked.job_file
        words = asked.on, asked.add_ons, asked.offered, _newest(file), _visits(file)
        run = cached_answer("price", file, asked.tables, anew, *words)
    tell(run.problems)
    return _with_tables(run, asked)


def _priced_anew(asked: Asked) -> Priced:
    from estimator.pipeline import run

    job, tables, texts = _ready(asked)
    day = asked.on or job.day
    result = run(job, tables, day)
    if result.quote is None:
        raise CannotGoOn(*result.problems)
    return Priced(
        quote=result.quote,
        texts=texts,
        read_on=day,
        priced_on=tables.day,
        verdicts=result.choices.verdicts,
        repairs=result.offers.repairs,
        problems=result.problems,
    )


def _with_tables(run: Priced, asked: Asked) -> Priced:
    """With where its tables lie now: what was kept of an earlier run says nothing of that."""
    return replace(run, named=asked.tables)


def _ready(asked: Asked) -> "tuple[Job, Tables, Mapping[str, str]]":
    """The job with its add-ons and visits, and the tables of the day whose prices count. Errors: as `ready`."""
    job, tables, texts = ready(asked.job_file, asked.tables, asked.changes, asked.on)
    return _as_chosen(asked, job), tables.on(asked.price_day(tables.day)), texts


def _newest(job_file: Path) -> object:
    """What the newest revision's record says of the add-ons chosen for it."""
    from estimator.records.revisions import revisions_folder
    from estimator.records.summary import last_summary

    return last_summary(revisions_folder(job_file))


def _as_chosen(asked: Asked, job: Job) -> Job:
    """The job with the add-ons that are chosen now, or were for its newest revision, and the visits accepted before."""
    from estimator.records.revisions import revisions_folder
    from estimator.records.summary import chosen_last

    chosen = chosen_last(revisions_folder(asked.job_file), job) if asked.add_ons is None else asked.add_ons
    return replace(job.with_add_ons(chosen), visits=_visits(asked.job_file))


def _visits(job_file: Path) -> tuple[PastVisit, ...]:
    """What was accepted is asked of the records only where there are any, and a note that something was."""
    from estimator.records.revisions import revisions_folder

    folder = revisions_folder(job_file)
    if not folder.is_dir():
        return ()
    from estimator.records.accepted import all_accepted

    if not all_accepted(folder):
        return ()
    from estimator.records.afterwards.owing import visits

    return visits(folder)


def ready(
    job_file: Path, tables: Path | None, changes: Sequence[str] | None, on: date | None
) -> "tuple[Job, Tables, Mapping[str, str]]":
    """The job, the tables of the day and the texts, all fit to be priced. Errors: CannotGoOn with everything wrong."""
    looked = diagnosed(job_file, tables, changes, on)
    read = looked.tables
    if looked.job is None or read is None or looked.errors:
        raise CannotGoOn(*looked.problems)
    return looked.job, read, looked.texts

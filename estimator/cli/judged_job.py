"""A job file and tables in; the job read and judged out, with every problem it has; nothing is priced."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.tables_asked import readable_tables, tables_for
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis
from estimator.model.problem import Level, Problem

if TYPE_CHECKING:
    from estimator.tables.tables import Tables


class Judged(Frozen, kw_only=True):
    """A job as far as it could be read: without one, `job` is None and the problems say why.

    `notices` are what stands against a quote of this job, to be told beside its problems. `priced_on` is the day of the
    tables, None where they could not be read; `named` is where they lie, where that was said.
    """

    job: Job | None
    problems: tuple[Problem, ...]
    priced_on: date | None = None
    named: Path | None = None
    diagnosis: Diagnosis | None = None
    notices: tuple[Problem, ...] = ()
    texts: Mapping[str, str] = {}

    @property
    def errors(self) -> tuple[Problem, ...]:
        return tuple(p for p in self.problems if p.level is Level.ERROR)

    @property
    def tables(self) -> "Tables | None":
        """Those of the day, read when somebody asks."""
        return readable_tables(self.priced_on, self.named) if self.priced_on else None


def judged(job_file: Path, tables: Path | None, changes: Sequence[str] | None = (), on: date | None = None) -> Judged:
    """The notes read and judged, with the tables of the day. Errors: none; all problems are in what comes back."""
    from estimator.cli.asked_before import asked_before

    def anew() -> tuple[Judged, Mapping[str, str]]:
        looked = _judged(job_file, tables, changes, on)
        return looked, looked.texts

    looked = anew()[0] if changes else asked_before("look", job_file, tables, anew, on)
    return replace(looked, named=tables)  # where the tables lie now: what was kept earlier says nothing of that


def _judged(job_file: Path, tables: Path | None, changes: Sequence[str] | None, on: date | None) -> Judged:
    from estimator.cli.what_if import changed
    from estimator.diagnosis.diagnose import diagnose
    from estimator.fieldnotes import read_job
    from estimator.quote.refuse import demo_place
    from estimator.scopes.owners_words import unknown_words
    from estimator.tables.against_job import with_settings_of

    with changed(job_file, changes or ()) as file:
        reading = read_job(file)
    job, texts = reading.job, dict(reading.files)
    if job is None:
        return Judged(job=None, problems=reading.problems)
    notices = tuple(demo_place(job))
    priced_with, table_problems = tables_for(on or job.day, tables)
    problems = (*reading.problems, *(p for p in table_problems if p.level is Level.ERROR))
    if priced_with is None:
        return Judged(job=job, problems=problems, notices=notices, texts=texts)
    unknown = unknown_words(job, priced_with)
    stops = any(p.level is Level.ERROR for p in unknown)
    diagnosis = diagnose(job, priced_with if stops else with_settings_of(job, priced_with))
    return Judged(
        job=job,
        problems=(*problems, *unknown),
        priced_on=on or job.day,
        diagnosis=diagnosis,
        notices=notices,
        texts=texts,
    )


def errors_in(job_file: Path) -> int:
    """How many errors the notes have."""
    from estimator.fieldnotes import read_job

    return sum(problem.level is Level.ERROR for problem in read_job(job_file).problems)

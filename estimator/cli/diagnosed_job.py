"""A job file and tables in; the job read and judged out, with every problem it has; nothing is priced."""

import contextlib
import shutil
import tempfile
from collections.abc import Iterator, Mapping, MutableMapping, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.cli.price_tables import readable_tables, tables_for
from estimator.cli.problems import BAD_CHANGE, NOTHING_TO_CHANGE
from estimator.fieldnotes.beside import logs_in_folders
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis
from estimator.model.problem import CannotGoOn, Level, Place, Problem

if TYPE_CHECKING:
    from estimator.tables.tables import Tables


class DiagnosedJob(Frozen, kw_only=True):
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


def diagnosed(
    job_file: Path, tables: Path | None, changes: Sequence[str] | None = (), on: date | None = None
) -> DiagnosedJob:
    """The notes read and judged, with the tables of the day. Errors: none; all problems are in what comes back."""
    from estimator.cli.answer_cache import cached_answer

    def anew() -> tuple[DiagnosedJob, Mapping[str, str]]:
        looked = _judged(job_file, tables, changes, on)
        return looked, looked.texts

    looked = anew()[0] if changes else cached_answer("look", job_file, tables, anew, on)
    return replace(looked, named=tables)  # where the tables lie now: what was kept earlier says nothing of that


def _judged(job_file: Path, tables: Path | None, changes: Sequence[str] | None, on: date | None) -> DiagnosedJob:
    from estimator.diagnosis.diagnose import diagnose
    from estimator.fieldnotes import read_job
    from estimator.quote.refuse import demo_place
    from estimator.scopes.owners_words import unknown_words
    from estimator.tables.against_job import with_settings_of

    with changed(job_file, changes or ()) as file:
        reading = read_job(file)
    job, texts = reading.job, dict(reading.files)
    if job is None:
        return DiagnosedJob(job=None, problems=reading.problems)
    notices = tuple(demo_place(job))
    priced_with, table_problems = tables_for(on or job.day, tables)
    problems = (*reading.problems, *(p for p in table_problems if p.level is Level.ERROR))
    if priced_with is None:
        return DiagnosedJob(job=job, problems=problems, notices=notices, texts=texts)
    unknown = unknown_words(job, priced_with)
    stops = any(p.level is Level.ERROR for p in unknown)
    diagnosis = diagnose(job, priced_with if stops else with_settings_of(job, priced_with))
    return DiagnosedJob(
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


HOUSE = "house"


@contextlib.contextmanager
def changed(job_file: Path, changes: Sequence[str]) -> Iterator[Path]:
    """The file itself when nothing is changed, else a changed copy with its logs where they lay."""
    if not changes:
        yield job_file
        return
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / job_file.name
        for beside in job_file.parent.iterdir():
            if beside.is_file() and beside.suffix.lower() in (".txt", ".log", ".md", ""):
                shutil.copyfile(beside, copy.parent / beside.name)
        for name, log in logs_in_folders(job_file):
            (copy.parent / name).parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(log, copy.parent / name)
        copy.write_text(with_changes(job_file, changes), encoding="utf-8")
        yield copy


def with_changes(job_file: Path, changes: Sequence[str]) -> str:
    """The text of the job file with the changes in it. Errors: CannotGoOn for a change without `=` or a broken file."""
    import tomlkit
    from tomlkit.exceptions import ParseError

    try:
        document = tomlkit.parse(job_file.read_text(encoding="utf-8-sig", errors="replace"))
    except ParseError as error:
        raise CannotGoOn(NOTHING_TO_CHANGE(Place(file=str(job_file)), said=error)) from None
    for change in changes:
        path, value = split(change)
        _put(document, path, value, change)
    return tomlkit.dumps(document)


def _put(table: MutableMapping[str, object], path: Sequence[str], value: object, change: str) -> None:
    """Sets the value at the path, making tables on the way. Errors: CannotGoOn where a plain value stands in the way."""
    for name in path[:-1]:
        inner = table.setdefault(name, {})
        if not isinstance(inner, MutableMapping):
            raise CannotGoOn(BAD_CHANGE(Place(), change=change))
        table = inner
    table[path[-1]] = value


def split(change: str) -> tuple[list[str], object]:
    """`house.soil=rock` as its path and its value; numbers, yes/no and days are taken as such.

    >>> split("soil=rock"), split("settings.bedding_ft=0.5"), split("house.lived_in=no")
    ((['house', 'soil'], 'rock'), (['settings', 'bedding_ft'], 0.5), (['house', 'lived_in'], False))
    """
    key, equals, text = change.partition("=")
    path = [part.strip() for part in key.split(".")]
    if not equals or not all(path):
        raise CannotGoOn(BAD_CHANGE(Place(), change=change))
    return ([HOUSE, *path] if len(path) == 1 else path), _value(text.strip())


def _value(text: str) -> object:
    """The word as TOML would take it, else as text."""
    import tomllib

    if text.lower() in ("yes", "no"):
        return text.lower() == "yes"
    try:
        value: object = tomllib.loads(f"v = {text}")["v"]
    except tomllib.TOMLDecodeError:
        return text
    return value

"""A job file's path comes in; the Job, every problem, and the texts that were read go out."""

from pathlib import Path

from estimator.fieldnotes.build import build
from estimator.fieldnotes.checkform import check
from estimator.fieldnotes.forms import JobFileForm
from estimator.fieldnotes.limits import LIMITS, Limits
from estimator.fieldnotes.lines import LogFiles
from estimator.fieldnotes.syntax import parse
from estimator.fieldnotes.textfile import read_text
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.problem import Level, Place, Problem


class Reading(Frozen):
    """`job` is None when an error stands in the way; `files` are (name, text) of all that was read, job file first."""

    job: Job | None
    problems: tuple[Problem, ...]
    files: tuple[tuple[str, str], ...]

    @property
    def errors(self) -> tuple[Problem, ...]:
        return tuple(p for p in self.problems if p.level is Level.ERROR)


def in_order(problems: list[Problem]) -> tuple[Problem, ...]:
    """In the order of the files, each problem once."""
    once = dict.fromkeys(problems)
    return tuple(sorted(once, key=lambda p: (p.place.file, p.place.line or 0, p.place.column or 0)))


def read_job(path: Path | str, limits: Limits = LIMITS) -> Reading:
    """Everything the notes say, or what to mend. Never raises for anything a file can hold.

    A job with errors is not given: a price made from half-read notes is worse than none.
    """
    path = Path(path)
    text = read_text(path, Place(path.name or str(path)))
    if isinstance(text, Problem):
        return Reading(None, (text,), ())
    return read_job_text(text, path.name, LogFiles(path.parent), limits)


def read_job_text(text: str, name: str, logs: LogFiles, limits: Limits = LIMITS) -> Reading:
    """The same for a text that is already in hand; logs are still looked for in the folder of `logs`."""
    document = parse(text, name)
    if isinstance(document, Problem):
        return Reading(None, (document,), ((name, text),))
    form = check(document, JobFileForm)
    if isinstance(form, list):
        return Reading(None, in_order(form), ((name, text),))
    job, problems = build(form, document, logs, limits)
    ordered = in_order(problems)
    wrong = any(p.level is Level.ERROR for p in ordered)
    return Reading(None if wrong else job, ordered, ((name, text), *logs.read))

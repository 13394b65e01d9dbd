"""A line of a job file in, its log on the disk out: the file's name, its rows, and the rows back after each line."""

import re
from collections.abc import Sequence
from pathlib import Path

from estimator.cli.interview.job_file import JobFile, replaced, text_on_disk
from estimator.cli.interview.sheet import About
from estimator.cli.interview.steps import Step, item_of, items
from estimator.fieldnotes.answers import nearest
from estimator.fieldnotes.heading import Heading, flow_of
from estimator.fieldnotes.lines import is_file_name
from estimator.fieldnotes.questions import Data
from estimator.model.lengths import parse_length
from estimator.model.say import Say, Typed

TEXT_FILES = (".txt", ".log", ".md")


def looks_like_a_file(text: str) -> bool:
    """
    >>> looks_like_a_file("notes from phone.txt"), looks_like_a_file("12.5 hole 2in ; see notes.txt")
    (True, False)
    """
    return text.lower().endswith(TEXT_FILES) and not any(mark in text for mark in ";#=")


def beside(job: JobFile) -> tuple[str, ...]:
    """The text files that lie in the job's folder."""
    try:
        return tuple(sorted(p.name for p in job.path.parent.iterdir() if p.is_file() and looks_like_a_file(p.name)))
    except OSError:
        return ()


def no_such_file(job: JobFile, name: str, there: Sequence[str]) -> Say:
    """What to type for the name of a file that is not there."""
    if near := nearest(name, there):
        return Say.typed("there is no file {file} beside the job. Did you mean {near}?", file=name, near=near)
    folder = Typed(str(job.path.resolve().parent))
    return Say.of("there is no file {file}: put it into {parent}, then type its name", file=Typed(name), parent=folder)


def rows_of_file(job: JobFile, name: str) -> tuple[str, ...]:
    """What the file holds. Errors: CannotGoOn when it is no text."""
    text = text_on_disk(job.path.parent / name)
    return tuple(text.rstrip("\n").split("\n")) if text.strip() else ()


def is_inline(item: Data) -> bool:
    """The log stands in the job file itself."""
    log = item.get("log", "")
    return isinstance(log, str) and bool(log.strip()) and not is_file_name(log)


def name_of(job: JobFile, step: Step) -> str:
    """The file the line's log is in, or will be: the line's name, with the job's before it where that is taken."""
    item = item_of(step, job.data)
    log = item.get("log", "")
    if isinstance(log, str) and log.strip() and not is_inline(item):
        return log.strip()
    plain = re.sub(r"[^\w-]+", "-", str(item.get("name", "log")).lower(), flags=re.ASCII).strip("-") or "log"
    return next(name for name in _names(plain, job.path.stem) if not _taken(job, step, name))


def _names(plain: str, job: str) -> list[str]:
    return [f"{plain}.txt", f"{job}-{plain}.txt", *(f"{job}-{plain}-{n}.txt" for n in range(2, 1000))]


def _taken(job: JobFile, step: Step, name: str) -> bool:
    """Another line of this job, or another job in the folder, has its log there."""
    lines = items(job.data, "line")
    if any(line.get("log") == name for n, line in enumerate(lines) if n != step.index):
        return True
    try:
        others = [p for p in job.path.parent.glob("*.toml") if p.name != job.path.name]
        return any(f'"{name}"' in p.read_text("utf-8", errors="replace") for p in others)
    except OSError:
        return False


def rows_of(job: JobFile, step: Step, name: str) -> tuple[str, ...]:
    """What has been typed so far. Errors: CannotGoOn when the file is no text."""
    item = item_of(step, job.data)
    if not is_inline(item):
        return rows_of_file(job, name)
    return tuple(str(item["log"]).rstrip("\n").split("\n"))


def written(job: JobFile, step: Step, name: str, rows: tuple[str, ...]) -> None:
    """The rows into their file, whole; the job file then names it. No rows: no file is named."""
    path: Path = job.path.parent / name
    path.parent.mkdir(parents=True, exist_ok=True)
    if rows or path.exists():
        replaced(path, "".join(f"{row}\n" for row in rows))
    wanted = name if any(row.strip() for row in rows) else None
    if item_of(step, job.data).get("log") != wanted:
        job.put(step.table, {"log": wanted})


def about(job: JobFile, step: Step, name: str) -> About:
    """What the job file says of the line, as far as it can be read."""
    item = item_of(step, job.data)
    size = parse_length(str(item.get("size", "4 in")), "in")
    access, to = str(item.get("access", "")), str(item.get("to", ""))
    flow = item.get("flow")
    said = access or to or flow or item.get("riser") is not None
    direction = flow if flow in ("with flow", "against flow") else flow_of(to) or "with flow"
    return About(
        file=name,
        name=str(item.get("name", "line")),
        size_in=round(size * 12, 6) if isinstance(size, float) and size > 0 else 4.0,
        pipe=str(item.get("pipe", "unknown")),
        zero=str(item.get("zero", "")),
        given=Heading(access=access, to=to, flow=direction, surface=True) if said else None,
    )

"""The words of `estimator start` in, the whole interview run and its end said; the exit code out."""

import re
import tomllib
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

from estimator.cli.guard import DONE, STOPPED
from estimator.cli.interview import log_files
from estimator.cli.interview.commands import COMMANDS
from estimator.cli.interview.interview import Interview
from estimator.cli.interview.job_file import JobFile, locked_job
from estimator.cli.interview.next_question import END
from estimator.cli.interview.own_words import firm_words
from estimator.cli.interview.shown import missing
from estimator.cli.interview.steps import Step, items, steps
from estimator.cli.interview.terminal import Terminal
from estimator.cli.problems import FILE_THERE, INTERVIEW_OPEN
from estimator.cli.reader import for_reader
from estimator.cli.views.screen import Row
from estimator.cli.views.table import cells_wide
from estimator.disk.whole import sweep
from estimator.fieldnotes.answers import YES, Known, cleaned
from estimator.fieldnotes.question_defaults import table_of
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say, Typed


def interview(named: Path, resume: bool, log: str, tables: Path | None, today: date) -> int:
    """Errors: CannotGoOn for a file that cannot be read, or one that is there and is not to be gone on with."""
    path = named if named.suffix.lower() == ".toml" else named / "job.toml"
    with locked_job(path) as ours:
        if not ours:
            raise CannotGoOn(INTERVIEW_OPEN(Place(file=str(path))))
        sweep(path.parent)
        return _interview(path, resume, log, tables, today)


def _interview(path: Path, resume: bool, log: str, tables: Path | None, today: date) -> int:
    terminal = Terminal()
    job = JobFile(path)
    if job.text.strip() and not resume and not _go_on(job, terminal):
        raise CannotGoOn(FILE_THERE(Place(file=str(path))))
    talk = Interview(job, known_before(path, tables, today), terminal, words=firm_words(tables))
    _greet(job, terminal)
    if not talk.known.places:
        terminal.tell(
            Say.of("The price tables cannot be read, so soils and places are taken as typed: estimator tables check"),
            "bad",
        )
    if log:
        talk.at = _log_of(job, log, talk.known)
    try:
        talk.run()
    except KeyboardInterrupt:
        terminal.say(["", *_kept(job)])
        return STOPPED
    _close(talk, terminal)
    return DONE


def _go_on(job: JobFile, terminal: Terminal) -> bool:
    """Whether to go on with the job that is there; asked only of a person."""
    words = [str(table_of(job.data, table).get(key, "")) for table, key in (("job", "number"), ("customer", "name"))]
    terminal.tell(
        Say.of(
            "{path} is there already: {file}.",
            path=Typed(str(job.path)),
            file=Typed(", ".join(filter(None, words))) if any(words) else Say.of("a job file"),
        )
    )
    if not terminal.live:
        terminal.tell(Say.typed("Go on with: {command}", command=f"estimator start --resume {job.path}"))
        return False
    return cleaned(terminal.ask(for_reader(Say.of("Go on with it")) + " [yes]: ") or "yes").lower() in YES


def _greet(job: JobFile, terminal: Terminal) -> None:
    goes_on, begins = (
        Say.typed("{path} goes on.", path=str(job.path)),
        Say.typed("{path} is saved after each answer.", path=str(job.path)),
    )
    terminal.say([Row(for_reader(goes_on if job.text.strip() else begins), "head")])
    commands = for_reader(COMMANDS)
    if cells_wide(commands) <= terminal.columns:
        terminal.say([commands])
    else:
        terminal.tell(commands)


def _log_of(job: JobFile, name: str, known: Known) -> str:
    """The log step of the line of this name; the line is made where there is none."""
    lines = items(job.data, "line")
    at = next((n for n, line in enumerate(lines) if str(line.get("name", "")).lower() == name.lower()), len(lines))
    if at == len(lines):
        came_to = job.next_id or steps(job.data)[0].id
        job.put(("line", at), {"name": cleaned(name) or "main"}, came_to)
    return f"line.{at}.log"


# ── the end ───────────────────────────────────────────────────────────────────────────────────


def _kept(job: JobFile) -> list[Row]:
    """What is on the disk, and how to go on."""
    if not job.path.exists():
        return [Row(for_reader(Say.of("Stopped. Nothing was answered, so nothing was written.")))]
    logs = [
        name
        for line in items(job.data, "line")
        if isinstance(name := line.get("log"), str) and not log_files.is_inline(line)
    ]
    kept = ", ".join([str(job.path), *logs])
    return [
        Row(for_reader(Say.typed("Stopped. Kept: {kept}.", kept=kept))),
        Row(for_reader(Say.typed("Go on with: {command}", command=f"estimator start --resume {job.path}"))),
    ]


def _close(talk: Interview, terminal: Terminal) -> None:
    if talk.at != END:
        terminal.say(["", *_kept(talk.job)])
        return
    talk.job.stand_at("")
    terminal.say([Row(""), Row(for_reader(Say.typed("{path} is written.", path=str(talk.job.path))), "head")])
    open_steps = missing(talk.job.data)
    if open_steps:
        terminal.tell(
            Say.typed("A price still needs: {open_steps}.", open_steps=", ".join(_called(step) for step in open_steps)),
            "bad",
        )
    from estimator.cli.diagnosed_job import errors_in

    errors = errors_in(talk.job.path)
    if errors:
        terminal.tell(Say.of("{count} to mend before it can be priced; check names each with its line.", count=errors))
    terminal.say([for_reader(Say.typed("Next: {command}", command=f"estimator check {talk.job.path}"))])


def _called(step: Step) -> str:
    key = step.question.key.replace("_", " ")
    return key if step.index is None else f"{step.section.one} {step.index + 1} {key}"


MOST_FILES = 60
LARGEST_BYTES = 1_000_000


def known_before(job_file: Path, tables: Path | None, today: date) -> Known:
    """Errors: none; what cannot be read is not leaned on, nor are the invented names and words of a demo."""
    from estimator.cli.price_tables import tables_for
    from estimator.tables.own_facts import in_use
    from estimator.tables.rows import PlaceRow, Soil

    jobs = [data for path in _job_files(job_file) if (data := _job_in(path))]
    read, _ = tables_for(today, tables)
    numbers = [str(data["job"]["number"]) for data in jobs if "number" in data["job"]]
    return Known(
        today=today,
        soils=tuple(row.soil for row in read.every(Soil)) if read else (),
        places={row.place: row.text for row in read.every(PlaceRow)} if read else {},
        own_facts=in_use(read) if read else (),
        last=next((_flat(data) for data in jobs if data["job"].get("demo") is not True), {}),
        number=next_number(numbers, today),
    )


def _job_files(job_file: Path) -> list[Path]:
    """TOML files in this folder, the one above, and that one's other folders; the newest first."""
    folder = job_file.resolve().parent
    found: dict[Path, float] = {}
    try:
        for path in (*folder.glob("*.toml"), *folder.parent.glob("*.toml"), *folder.parent.glob("*/*.toml")):
            if path.resolve() != job_file.resolve() and path.is_file():
                found[path.resolve()] = path.stat().st_mtime
    except OSError:
        pass
    return sorted(found, key=lambda path: (-found[path], str(path)))[:MOST_FILES]


def _job_in(path: Path) -> dict[str, Any]:
    try:
        if path.stat().st_size > LARGEST_BYTES:
            return {}
        data = tomllib.loads(path.read_text(encoding="utf-8-sig"))
    except (OSError, ValueError, RecursionError):
        return {}
    return data if isinstance(data.get("job"), dict) and isinstance(data.get("house", {}), dict) else {}


def _flat(data: dict[str, Any]) -> dict[str, Any]:
    """The last job's tables; of its lines the first, as one table."""
    lines = data.get("line")
    first = lines[0] if isinstance(lines, list) and lines and isinstance(lines[0], dict) else {}
    return {**data, "line": first}


def next_number(numbers: list[str], today: date) -> str:
    """One more than the highest number that begins with this year; the first of the year where there is none.

    >>> next_number(["2026-131", "2026-9", "A7"], date(2026, 11, 25)), next_number([], date(2026, 11, 25))
    ('2026-132', '2026-001')
    """
    matches: Iterator[re.Match[str] | None] = (
        re.fullmatch(rf"({today.year}\D{{0,3}})(\d{{1,6}})", n, re.ASCII) for n in numbers
    )
    highest = max((m for m in matches if m), key=lambda m: int(m[2]), default=None)
    if highest is None:
        return f"{today.year}-001"
    return f"{highest[1]}{int(highest[2]) + 1:0{len(highest[2])}d}"

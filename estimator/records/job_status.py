"""A job file and a day in, where the job stands out: its newest revision, what it was sold for, how long the offer holds."""

import os
import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Any

from estimator.disk.whole import read_bytes
from estimator.model.frozen import Frozen
from estimator.model.say import Say
from estimator.records.accepted import Acceptance, accepted
from estimator.records.afterwards.lost import lost
from estimator.records.finished import Finished, finished
from estimator.records.recorded_text import sentence
from estimator.records.revisions import newest, revisions_folder
from estimator.records.summary import read_summary

STATES: tuple[str, ...] = (
    "notes incomplete",
    "ready",
    "issued",
    "revised",
    "expired",
    "accepted",
    "done",
    "lost",
    "damaged",
)
JOB = re.compile(r"^[ \t]*(\[[ \t]*job\b|job[ \t]*=[ \t]*\{|job\.)", re.MULTILINE)
"""A [job] table in any of the ways TOML writes one, broken ones too."""
NOTHING = Say.of("nothing")


class JobStatus(Frozen, kw_only=True):
    """Where one job stands. `total` is the accepted option's, else the cheapest one's; `waits_for` says who is next."""

    job_file: Path
    state: str
    number: str = ""
    site: str = ""
    revision: str = ""
    total: str = ""
    days_left: int | None = None
    waits_for: Say = NOTHING


def job_status(job_file: Path, day: date, wrong: Callable[[Path], int]) -> JobStatus:
    """`wrong(job_file)` counts the errors in the notes. Errors: none; whatever is damaged is a state of its own."""
    folder = revisions_folder(job_file)
    try:
        last = newest(folder)
        if last is None:
            return _unissued(job_file, wrong(job_file))
        issued = read_summary(last.record_file)
        return _issued(job_file, last.number, issued, accepted(folder), finished(folder), day)
    except Exception:  # one broken job never hides the others
        return JobStatus(job_file=job_file, state="damaged", waits_for=Say.of("a copy of its record"))


def _unissued(job_file: Path, errors: int) -> JobStatus:
    if errors:
        waits = Say.of("1 error in the notes") if errors == 1 else Say.of("{count} errors in the notes", count=errors)
        return JobStatus(job_file=job_file, state="notes incomplete", waits_for=waits)
    return JobStatus(job_file=job_file, state="ready", waits_for=Say.of("a quote"))


def _issued(
    job_file: Path,
    number: int,
    issued: Mapping[str, Any],
    signed: Acceptance | None,
    built: Finished | None,
    day: date,
) -> JobStatus:
    left = (date.fromisoformat(issued["valid_until"]) - day).days
    gone = lost(revisions_folder(job_file))
    totals = [Decimal(total) for total in issued["totals"].values()]
    total = signed.total if signed else str(min(totals)) if totals else ""
    state, waits = _state(number, left, signed, built, day)
    if gone and not (built and built.revision == number) and not (signed and gone.on < signed.on):
        state, waits = "lost", NOTHING
    if state == "done" and (owed := owed_on(revisions_folder(job_file))) > 0:
        waits = Say.of("payment: ${amount} is owed", amount=f"{owed:,.2f}")
    if state in ("issued", "revised") and issued.get("open"):
        waits = _open(issued["open"])
    return JobStatus(
        job_file=job_file,
        state=state,
        number=issued["number"],
        site=issued["site"],
        revision=f"r{number}",
        total=total,
        days_left=None if signed else left,
        waits_for=waits,
    )


def _state(number: int, left: int, signed: Acceptance | None, built: Finished | None, day: date) -> tuple[str, Say]:
    """The state and who is next; an accepted job waits until it can no longer be cancelled."""
    if built:
        return "done", NOTHING
    if signed:
        may_cancel = bool(signed.cancel_until) and str(day) <= signed.cancel_until
        if may_cancel:
            last = date.fromisoformat(signed.cancel_until)
            return "accepted", Say.of("the days to cancel, until {day}", day=last)
        return "accepted", Say.of("the crew")
    if left < 0:
        return "expired", Say.of("a new revision")
    return "revised" if number > 1 else "issued", Say.of("the homeowner")


def owed_on(folder: Path) -> Decimal:
    """What is owed in all on the accepted option, dollars. Errors: CannotGoOn where a record is damaged."""
    from estimator.records.afterwards.money import money
    from estimator.records.afterwards.sold import sold

    return money(folder, sold(folder)).balance


def _open(reasons: Sequence[Mapping[str, Any]]) -> Say:
    """Nothing can be signed yet: the first thing to settle, and how many more there are."""
    first, more = sentence(reasons[0]), len(reasons) - 1
    if more:
        return Say.of("a fixed price: {why} (and {count} more)", why=first, count=more)
    return Say.of("a fixed price: {why}", why=first)


def job_files(folder: Path) -> Iterator[Path]:
    """Every job file below a folder, in order: TOML files with a [job] table of their own. A job file stands for itself.

    Hidden folders and those of programs are passed by; the folder that was named never is.
    Errors: FileNotFoundError where there is nothing.
    """
    if folder.is_file():
        yield folder
        return
    if not folder.exists():
        raise FileNotFoundError(2, "No such file or directory", str(folder))
    yield from (path for path in sorted(_toml_files(folder)) if _is_job(path))


NO_CUSTOMERS = ("tests", "node_modules")
PROGRAM_MARKS = ("__init__.py", "pyvenv.cfg")
"""What a folder holds in which a program lies, or an environment for one."""


def _toml_files(folder: Path) -> Iterator[Path]:
    for here, folders, files in os.walk(folder):
        folders[:] = [name for name in folders if not _passed_by(Path(here, name))]
        yield from (Path(here, name) for name in files if name.endswith(".toml") and not name.startswith("."))


def _passed_by(folder: Path) -> bool:
    """A hidden folder, or one of a program or its tests: no customer's job lies there."""
    hidden = folder.name.startswith(".")
    return hidden or folder.name in NO_CUSTOMERS or any((folder / mark).exists() for mark in PROGRAM_MARKS)


def _is_job(path: Path) -> bool:
    try:
        return JOB.search(read_bytes(path).decode("utf-8-sig", "replace")) is not None
    except OSError:
        return False

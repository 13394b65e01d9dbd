"""A job's folder in, what a shell needs of its records out, read in a moment: no record is checked, none is rebuilt."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from estimator.disk.read import read_text
from estimator.model.job import Job
from estimator.records.names import INTERNAL
from estimator.records.summary import chosen_in, read_summary


def summaries(folder: Path) -> Iterator[tuple[str, dict[str, Any]]]:
    """Each revision with its summary, the oldest first. Errors: OSError or ValueError for a damaged one."""
    for number in _numbers(folder):
        yield f"r{number}", read_summary(_record(folder, number))


def chosen_last(folder: Path, job: Job) -> tuple[str, ...] | None:
    """The add-ons chosen at the writing of the newest revision, as long as the job file wishes for what it did then.

    None where there is no revision, or where the job file counts. A damaged record is told by whoever writes the next one.
    """
    held = last_summary(folder)
    if held is None:
        return None
    return chosen_in(held) if tuple(held.get("wished", ())) == job.wishes.add_ons else None


def last_summary(folder: Path) -> dict[str, Any] | None:
    """The summary of the newest revision; None where there is none, or it is damaged."""
    try:
        return read_summary(_record(folder, _numbers(folder)[-1]))
    except (OSError, ValueError, IndexError):
        return None


def options_of(folder: Path) -> list[dict[str, Any]]:
    """The options of the newest revision as they stand in its record. Errors: as above."""
    held = json.loads(read_text(_record(folder, _numbers(folder)[-1])))
    return list(held["quote"]["options"])


def _numbers(folder: Path) -> list[int]:
    return sorted(int(p.name[1:]) for p in folder.iterdir() if p.name[:1] == "r" and p.name[1:].isdecimal())


def _record(folder: Path, number: int) -> Path:
    """Errors: OSError where it has none."""
    for path in (folder / f"r{number}" / INTERNAL).glob("*.json"):
        return path
    raise FileNotFoundError(f"r{number} has no record")

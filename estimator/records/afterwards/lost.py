"""A quote that was not taken in, the day and the reason noted beside its revisions out; the last note counts."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from estimator.disk.disk import Disk
from estimator.model.problem import CannotGoOn, Place
from estimator.records.afterwards.problems import LOST_AFTER_DONE
from estimator.records.afterwards.small_file import read_small, write_small
from estimator.records.finished import finished
from estimator.records.lock import locked
from estimator.records.revisions import named, newest

NAME = "lost.json"


@dataclass(frozen=True, slots=True)
class Lost:
    """The newest revision when it was noted, the day, and why, in the office's own words ("" where nobody said)."""

    revision: int
    on: str
    why: str = ""


def lose(folder: Path, on: date, why: str, disk: Disk | None = None) -> Lost:
    """Write the note. Errors: CannotGoOn where nothing was issued, or the work is done already."""
    last = newest(folder) or named(folder, "r1")
    if (ended := finished(folder)) is not None and ended.revision == last.number:
        raise CannotGoOn(LOST_AFTER_DONE(Place(file=str(folder)), day=ended.on))
    wanted = Lost(last.number, str(on), why)
    with locked(folder):
        write_small(folder / NAME, wanted, disk)
    return wanted


def lost(folder: Path) -> Lost | None:
    """Return the note of the newest revision; None where there is none, or a newer revision came after it.

    Errors: CannotGoOn when the note is damaged.
    """
    found, last = last_lost(folder), newest(folder)
    return found if found and last and found.revision == last.number else None


def last_lost(folder: Path) -> Lost | None:
    """Return the note, whatever came after it. Errors: CannotGoOn when it is damaged."""

    def made(held: Mapping[str, Any]) -> Lost:
        return Lost(int(held["revision"]), str(date.fromisoformat(held["on"])), str(held["why"]))

    return read_small(folder / NAME, made)

"""A quote that was not taken in, the day and the reason noted beside its revisions out; of each revision the last note counts."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

from estimator.disk.disk import Disk
from estimator.model.frozen import Frozen
from estimator.model.problem import CannotGoOn, Place
from estimator.records.afterwards.problems import DAMAGED, LOST_AFTER_DONE
from estimator.records.finished import finished
from estimator.records.lock import locked
from estimator.records.note import in_plain_words, read_note, write_note
from estimator.records.revisions import named, newest

NAME = "lost.json"


class Lost(Frozen):
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
    with in_plain_words(folder, last.number), locked(folder):
        others = [one for one in all_lost(folder) if one.revision != wanted.revision]
        write_note(folder / NAME, {"lost": (*others, wanted)}, disk)
    return wanted


def lost(folder: Path) -> Lost | None:
    """Return the note of the newest revision; None where there is none, or a newer revision came after it.

    Errors: CannotGoOn when the notes are damaged.
    """
    last = newest(folder)
    return next((one for one in all_lost(folder) if last and one.revision == last.number), None)


def all_lost(folder: Path) -> tuple[Lost, ...]:
    """Return the note of each revision that was lost, in the order noted. Errors: CannotGoOn when they are damaged."""

    def made(held: Mapping[str, Any]) -> tuple[Lost, ...]:
        return tuple(
            Lost(int(one["revision"]), str(date.fromisoformat(one["on"])), str(one["why"])) for one in held["lost"]
        )

    return read_note(folder / NAME, made, DAMAGED) or ()

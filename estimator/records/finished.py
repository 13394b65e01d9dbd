"""A day in, a lasting note that the accepted work was done out; one for each revision that was accepted, never written over."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path
from typing import Any

from estimator.disk.disk import Disk
from estimator.model.frozen import Frozen
from estimator.model.problem import CannotGoOn, Place, Problem
from estimator.records.accepted import accepted
from estimator.records.lock import locked
from estimator.records.note import day_of, in_plain_words, read_note, write_once
from estimator.records.problems import ALREADY_DONE, DONE_TOO_EARLY, DONE_WHILE_CANCELLABLE, NOT_ACCEPTED
from estimator.records.revisions import revisions


class Finished(Frozen):
    """Which option of which revision was built, and the day it was done."""

    revision: int
    option: str
    on: str


def finish(folder: Path, on: date, disk: Disk | None = None) -> Finished:
    """Writes the note beside the revisions. Errors: CannotGoOn where nothing was accepted, a day before that, or another day
    noted already."""
    place = Place(file=str(folder))
    signed = accepted(folder)
    if signed is None:
        raise CannotGoOn(NOT_ACCEPTED(place))
    if str(on) < signed.on:
        raise CannotGoOn(DONE_TOO_EARLY(place, day=on, letter=signed.option, accepted=signed.on))
    wanted = Finished(signed.revision, signed.option, str(on))
    with in_plain_words(folder, signed.revision), locked(folder):
        held = write_once(note_of(folder, signed.revision), wanted, done_of(folder, signed.revision), disk)
    if held != wanted:
        raise CannotGoOn(ALREADY_DONE(place, day=held.on))
    return wanted


def doubts(folder: Path, done: Finished) -> tuple[Problem, ...]:
    """What the office should keep in mind of a day of work that lies within the days to cancel, the last one among them."""
    signed = accepted(folder)
    if signed is None or not signed.cancel_until or done.on > signed.cancel_until:
        return ()
    place = Place(file=str(folder))
    return (DONE_WHILE_CANCELLABLE(place, day=done.on, letter=signed.option, until=signed.cancel_until),)


def finished(folder: Path) -> Finished | None:
    """When what was accepted last was done, or None: a visit that was done says nothing of the repair signed after it.

    Errors: CannotGoOn when a note is damaged.
    """
    note, signed = last_done(folder), accepted(folder)
    return note if note and (signed is None or note.revision >= signed.revision) else None


def last_done(folder: Path) -> Finished | None:
    """The note of the newest revision that has one. Errors: CannotGoOn when it is damaged."""
    notes = (done_of(folder, revision.number) for revision in reversed(revisions(folder)))
    return next((note for note in notes if note is not None), None)


def done_of(folder: Path, number: int) -> Finished | None:
    """The note of one revision. Errors: CannotGoOn when it is damaged, or speaks of another revision."""

    def made(held: Mapping[str, Any]) -> Finished:
        if held["revision"] != number:
            raise ValueError("it is the note of something else")
        return Finished(number, str(held["option"]), day_of(held["on"]))

    return read_note(note_of(folder, number), made)


def note_of(folder: Path, number: int) -> Path:
    """`done r2.json`, beside the revisions."""
    return folder / f"done r{number}.json"


def day_done(folder: Path) -> date | None:
    """Return the day the work was done, None where it is not noted. Errors: CannotGoOn when the note is damaged."""
    held = finished(folder)
    return date.fromisoformat(held.on) if held else None

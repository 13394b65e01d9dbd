"""A day in, a lasting note that the accepted work was done out; written once, never over."""

import json
from dataclasses import asdict, dataclass
from datetime import date
from pathlib import Path

from estimator.model.problem import CannotGoOn, Place
from estimator.records.accepted import accepted
from estimator.records.disk import Disk
from estimator.records.lock import locked
from estimator.records.plain import dumped
from estimator.records.problems import ALREADY_DONE, DAMAGED, DONE_TOO_EARLY, NOT_ACCEPTED
from estimator.records.refusals import told

NAME = "done.json"


@dataclass(frozen=True, slots=True)
class Finished:
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
    with told(folder, signed.revision), locked(folder):
        held = finished(folder) or _write(folder, wanted, disk or Disk())
    if held == wanted:
        return held
    raise CannotGoOn(ALREADY_DONE(place, day=held.on))


def finished(folder: Path) -> Finished | None:
    """When the work was done, or None. Errors: CannotGoOn when the note is damaged."""
    path = folder / NAME
    if not path.exists():
        return None
    try:
        return Finished(**json.loads(path.read_text(encoding="utf-8")))
    except (OSError, ValueError, TypeError) as error:
        raise CannotGoOn(DAMAGED(Place(file=str(path)), number="work done", said=str(error))) from None


def _write(folder: Path, note: Finished, disk: Disk) -> Finished:
    """Written beside its place and renamed, so that a half-written note is never found."""
    making = folder / f".{NAME}-tmp"
    making.unlink(missing_ok=True)
    disk.write(making, dumped(asdict(note)))
    disk.rename(making, folder / NAME)
    return note

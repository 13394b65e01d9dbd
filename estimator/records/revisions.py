"""A job's folder in, its revisions out: which there are, the newest, the record of each."""

import re
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.model.frozen import Frozen
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.records.names import INTERNAL
from estimator.records.problems import NO_REVISION, ONE_REVISION

if TYPE_CHECKING:
    from estimator.records.record import Record

FOLDER = re.compile(r"r([1-9][0-9]{0,5})")


class Revision(Frozen):
    """One issued revision: its number and its folder."""

    number: int
    folder: Path

    @property
    def record_file(self) -> Path:
        """The one JSON file among the internal papers."""
        held = sorted((self.folder / INTERNAL).glob("*.json"))
        return held[0] if held else self.folder / INTERNAL / "record.json"

    def record(self) -> "Record":
        """Errors: CannotGoOn when it is missing or damaged."""
        from estimator.records.record import read_record

        return read_record(self.record_file, self.number)

    @property
    def name(self) -> str:
        return f"r{self.number}"


def revisions(folder: Path) -> tuple[Revision, ...]:
    """All revisions in the folder, the oldest first; none where there is no folder yet."""
    if not folder.is_dir():
        return ()
    found = ((FOLDER.fullmatch(inner.name), inner) for inner in folder.iterdir() if inner.is_dir())
    return tuple(sorted((Revision(int(m[1]), path) for m, path in found if m), key=lambda r: r.number))


def newest(folder: Path) -> Revision | None:
    held = revisions(folder)
    return held[-1] if held else None


def named(folder: Path, asked: str) -> Revision:
    """The revision called `r2` or `2`. Errors: CannotGoOn when there is none."""
    held = revisions(folder)
    for revision in held:
        if asked.strip().lower() in (revision.name, str(revision.number)):
            return revision
    there = ", ".join(r.name for r in held)
    instead = (
        Say.of("There are {names}.", names=there) if held else Say.of("Write the first one with `estimator quote`.")
    )
    raise CannotGoOn(NO_REVISION(Place(file=str(folder)), asked=asked, instead=instead))


def pair(folder: Path, old: str, new: str) -> tuple[Revision, Revision]:
    """Two revisions to compare: those named, else the newest and the one before it. Errors: CannotGoOn."""
    held = revisions(folder)
    if not old and len(held) < 2:
        count, following = (
            (Say.of("one revision, {name}", name=held[-1].name), f"r{held[-1].number + 1}")
            if held
            else (Say.of("no revision"), "r1")
        )
        raise CannotGoOn(ONE_REVISION(Place(file=str(folder)), count=count, next=following))
    last = named(folder, new) if new else held[-1] if held else named(folder, "r1")
    first = named(folder, old) if old else held[max(0, held.index(last) - 1)]
    return first, last

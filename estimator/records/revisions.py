"""A job's folder in, its revisions out: which there are, the newest, the record of each."""

import re
from pathlib import Path
from typing import TYPE_CHECKING

from estimator.model.frozen import Frozen
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
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


TO_SEND, INTERNAL = "to send", "internal"
LONGEST_STREET = 60


def street(site: str) -> str:
    """The part of an address before the first comma, without what a file name cannot hold.

    >>> street("417 Larkspur Court, Fernbrook"), street("12/3 Elm: rear"), street("...")
    ('417 Larkspur Court', '12 3 Elm rear', 'no street')
    """
    words = tidy(site.split(",")[0])[:LONGEST_STREET].strip(" .")
    return words or "no street"


def tidy(text: str) -> str:
    """Text without separators, wildcards and control characters, single blanks between words.

    >>> tidy("2026/114*")
    '2026 114'
    """
    kept = "".join(c if c.isprintable() and c not in '<>:"/\\|?*' else " " for c in text)
    return re.sub(r"\s+", " ", kept).strip(" .")


def stem(kind: str, number: str, revision: int, site: str) -> str:
    """`Drain quote 2026-131 r1 - 417 Larkspur Court`, the street last, kind first."""
    return f"{kind} {tidy(number)} r{revision} - {street(site)}".strip()


def revisions_folder(job_file: Path) -> Path:
    """The folder beside the job file that holds its revisions, under the job file's own name.

    >>> revisions_folder(Path("larkspur/job.toml")).name, revisions_folder(Path("job")).name, revisions_folder(Path(".")).name
    ('job', 'job revisions', ' revisions')
    """
    return job_file.with_suffix("") if job_file.suffix else job_file.parent / f"{job_file.name} revisions"

"""A record in, its revision's files out again, byte for byte on the same versions of program and libraries."""

import contextlib
import hashlib
import tempfile
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

from estimator.disk.disk import Disk
from estimator.disk.whole import cleared, fresh, read_bytes, sweep
from estimator.fieldnotes import read_job
from estimator.fieldnotes.textfile import lies_below
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.problem import CannotGoOn, Place, Problem
from estimator.model.say import Say
from estimator.records.issue import Made
from estimator.records.lock import locked
from estimator.records.note import in_plain_words
from estimator.records.problems import DAMAGED, LEADS_OUT, NOT_THE_SAME
from estimator.records.record import Inputs, Record, this_program
from estimator.records.revisions import INTERNAL, Revision

Remake = Callable[[Path, Inputs, int], Made]
"""A job file on the disk, the tables and day of old, and the revision's number in; its quote and papers out."""


class Reissued(Frozen):
    """Where the files were put, and which came out with other bytes."""

    folder: Path
    files: tuple[Path, ...]
    problems: tuple[Problem, ...]


def reissue(revision: Revision, remake: Remake, disk: Disk | None = None) -> Reissued:
    """Makes the files of a revision from its record alone and puts them in a new folder beside it; issued ones stay."""
    record = revision.record()
    made = _remade(revision, record, remake)
    disk, above = disk or Disk(), revision.folder.parent
    with in_plain_words(above, revision.number), locked(above):
        sweep(above, disk)
        free = _free(revision.folder)
        folder = _written(free, made, fresh(free), disk)
    return Reissued(folder, tuple(folder / name for name in made.files), _differing(folder, record, made))


def _written(folder: Path, made: Made, making: Path, disk: Disk) -> Path:
    """The files in their folder, whole or not at all."""
    with cleared(making, disk):
        for name, data in made.files.items():
            disk.make_folder((making / name).parent)
            disk.write(making / name, data)
        disk.rename(making, folder)
    return folder


def _remade(revision: Revision, record: Record, remake: Remake) -> Made:
    """Lays the notes out in a folder of their own and runs the whole way on them with the rows of old."""
    try:
        inputs = replace(record.inputs, pictures=_pictures(revision, record))
    except OSError as error:
        place = Place(file=str(error.filename or revision.record_file))
        gone = isinstance(error, FileNotFoundError)
        said = Say.of("a picture kept with it is not there") if gone else str(error.strerror)
        raise CannotGoOn(DAMAGED(place, number=revision.number, said=said)) from None
    with laid_out(inputs) as job_file:
        return remake(job_file, inputs, revision.number)


@contextlib.contextmanager
def laid_out(inputs: Inputs) -> Iterator[Path]:
    """The job file of a record with its logs where they lay below it, in a folder of their own that is gone afterwards."""
    with tempfile.TemporaryDirectory() as folder:
        for name, text in inputs.texts.items():
            path = Path(folder) / _below(name)
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(text.encode("utf-8", "surrogateescape"))
        yield Path(folder) / _below(inputs.job_file)


def job_of(inputs: Inputs) -> Job:
    """Return the job that a record's notes tell. Errors: as `job_in`."""
    with laid_out(inputs) as job_file:
        return job_in(job_file, inputs)


def job_in(job_file: Path, inputs: Inputs) -> Job:
    """Return the job of notes laid out, with the add-ons chosen for it and the visits before it.

    Errors: CannotGoOn where this program cannot read them.
    """
    reading = read_job(job_file)
    if reading.job is None:
        raise CannotGoOn(*reading.problems)
    return inputs.complete(reading.job)


def _pictures(revision: Revision, record: Record) -> dict[str, bytes]:
    """The pictures as they were kept in the revision, by the names of the notes."""
    folder = revision.folder / INTERNAL / "pictures"
    return {name: read_bytes(folder / _below(name)) for name in record.data.get("pictures", ())}


def _below(name: str) -> str:
    """The name, where it stays inside the record's folder. Errors: CannotGoOn for one that leads anywhere else."""
    if not lies_below(name):
        raise CannotGoOn(LEADS_OUT(Place(file=name), name=name))
    return name


def _free(folder: Path) -> Path:
    """`r1 again`, or the first of `r1 again 2`, `r1 again 3` … that is not taken."""
    first = folder.with_name(f"{folder.name} again")
    return next(p for p in (first, *(first.with_name(f"{first.name} {n}") for n in range(2, 10000))) if not p.exists())


def _differing(folder: Path, record: Record, made: Made) -> tuple[Problem, ...]:
    issued = record.data["files"]
    return tuple(
        NOT_THE_SAME(Place(file=str(folder)), name=name, issued=record.made_by, now=this_program())
        for name, data in made.files.items()
        if issued.get(name) != hashlib.sha256(data).hexdigest()
    )

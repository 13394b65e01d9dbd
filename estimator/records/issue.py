"""A quote in, a new revision folder on the disk out: whole, by one rename, or not at all.

The files are written in a folder of a fresh name, which is then renamed to `rN`. A rename onto a revision that exists fails, so of two
runs that want the same number one gets it, and the other tries the next. Issued files are never opened for writing.
"""

import errno
from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path

from estimator.disk.disk import Disk
from estimator.disk.whole import cleared, fresh, sweep
from estimator.model.frozen import Frozen
from estimator.model.offer import Quote
from estimator.model.problem import CannotGoOn, Place, Problem
from estimator.model.say import Say
from estimator.records.lock import locked
from estimator.records.note import in_plain_words
from estimator.records.problems import CANNOT_WRITE, NEWEST_DAMAGED
from estimator.records.record import Inputs, content, made
from estimator.records.recorded_text import sealed
from estimator.records.revisions import INTERNAL, Revision, newest, stem

TRIES = 5


class Made(Frozen):
    """A quote numbered for a revision, and its papers by their path below the revision folder (`to send/…`)."""

    quote: Quote
    files: Mapping[str, bytes]


class Issued(Frozen):
    """What came of it: the revision, its folder and files; `new` is False when nothing had changed since.

    `problems` warns of a newest revision whose record nobody can use.
    """

    number: int
    folder: Path
    files: tuple[Path, ...]
    new: bool
    problems: tuple[Problem, ...] = ()


def issue(folder: Path, quote: Quote, inputs: Inputs, make: Callable[[int], Made], disk: Disk | None = None) -> Issued:
    """Writes the next revision below `folder`, or nothing when the newest one says the same.

    `make(number)` gives the papers of that revision. Errors: CannotGoOn, with the folder as it was before.
    """
    disk = disk or Disk()
    with in_plain_words(folder, 1):
        disk.make_folder(folder)
    with in_plain_words(folder, 1), locked(folder):
        sweep(folder, disk)
        last = newest(folder)
        before, wrong = _content(last)
        if last is not None and before == content(quote, inputs):
            return Issued(last.number, last.folder, _files_in(last.folder), new=False)
        first = last.number + 1 if last else 1
        for number in range(first, first + TRIES):
            issued = _write(folder, number, make(number), inputs, disk)
            if issued is not None:
                return replace(issued, problems=wrong)
    raise CannotGoOn(CANNOT_WRITE(Place(file=str(folder)), number=first, said=Say.of("other runs took every number")))


def _content(last: Revision | None) -> tuple[str, tuple[Problem, ...]]:
    """The sum over what the newest revision says; of a damaged one nobody knows, and it is as if it said something else."""
    if last is None:
        return "", ()
    try:
        return last.record().content, ()
    except CannotGoOn:
        return "", (NEWEST_DAMAGED(Place(file=str(last.record_file)), number=last.number),)


def _write(folder: Path, number: int, papers: Made, inputs: Inputs, disk: Disk) -> Issued | None:
    """One revision; None when another run has taken the number meanwhile."""
    final = folder / f"r{number}"
    making = fresh(final)
    with in_plain_words(final, number), cleared(making, disk):
        for name, data in _with_record(papers, inputs).items():
            disk.make_folder((making / name).parent)
            disk.write(making / name, data)
        try:
            disk.rename(making, final)
        except OSError as error:
            if final.exists() and error.errno in (errno.EEXIST, errno.ENOTEMPTY, errno.EACCES):
                return None
            raise
    return Issued(number, final, _files_in(final), new=True)


def _with_record(papers: Made, inputs: Inputs) -> dict[str, bytes]:
    job = papers.quote.job
    name = stem("Record", job.number, papers.quote.revision, job.customer.site)
    record = made(papers.quote, inputs, papers.files)
    return {**papers.files, f"{INTERNAL}/{name}.json": sealed(record.data)}


def _files_in(folder: Path) -> tuple[Path, ...]:
    return tuple(sorted(path for path in folder.rglob("*") if path.is_file()))

"""A job file, tables and a question in; the answer out: worked out once, then read from the cache while nothing has changed.

What an answer hangs on: the job file's text and every file beside it that was read, the tables, what was chosen for the
newest revision, and the words of the question. Any change of any of them asks anew.
"""

from collections.abc import Callable, Mapping
from hashlib import sha256
from pathlib import Path
from typing import Generic, TypeVar

from estimator.disk.cache import cached
from estimator.disk.whole import read_bytes
from estimator.model.frozen import Frozen

T = TypeVar("T")


class Answer(Frozen, Generic[T]):
    """The answer, and the digest of each file it was read from, by its name below the job's folder."""

    files: tuple[tuple[str, bytes], ...]
    thing: T


def cached_answer(
    question: str, job_file: Path, tables: Path | None, make: Callable[[], tuple[T, Mapping[str, str]]], *words: object
) -> T:
    """Return what `make` gives beside the texts it was read from; without texts it is not kept.

    Notes that cannot be read give none: the log that they lack may come later. Errors: those of `make`, which are never kept.
    """
    from estimator.cli.price_tables import tables_folder
    from estimator.tables.table_files import content_of

    folder = job_file.parent
    text, prices = _digest(job_file), content_of(tables_folder(tables))
    if not text or not prices:
        return make()[0]

    def answer() -> Answer[T]:
        thing, texts = make()
        return Answer(tuple((name, _digest(folder / name)) for name in texts), thing)

    def holds(found: Answer[T]) -> bool:
        unchanged = all(_digest(folder / name) == seen for name, seen in found.files)
        return bool(found.files) and unchanged and _digest(job_file) == text

    about = repr((str(job_file.resolve()), str(job_file), text, prices, words)).encode()
    return cached(question, (about,), answer, holds).thing


def _digest(path: Path) -> bytes:
    """Of what a file holds; empty where it cannot be read."""
    try:
        return sha256(read_bytes(path)).digest()
    except (OSError, ValueError):
        return b""

"""A folder in, the right to write a revision in it out; the system gives it back when the program ends, however it ends."""

import contextlib
import os
from collections.abc import Iterator
from pathlib import Path
from typing import IO

from estimator.model.problem import CannotGoOn, Place
from estimator.records.problems import BUSY

NAME = ".lock"


@contextlib.contextmanager
def locked(folder: Path) -> Iterator[None]:
    """Holds the folder's lock. Errors: CannotGoOn when another run has it. Without locks on the disk the rename decides."""
    with (folder / NAME).open("a+b") as file:
        if not _take(file):
            raise CannotGoOn(BUSY(Place(file=str(folder))))
        yield


def _take(file: IO[bytes]) -> bool:
    """False when someone else holds it."""
    if os.name == "nt":
        import msvcrt

        try:
            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined,unused-ignore]
        except OSError:
            return False
        return True
    import fcntl

    try:
        fcntl.flock(file.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    except OSError:
        return True  # a disk without locks, such as some network folders
    return True

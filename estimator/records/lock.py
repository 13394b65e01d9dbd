"""A folder in, the right to write a revision in it out; the system gives it back when the program ends, however it ends."""

import contextlib
import errno
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
        if not taken(file):
            raise CannotGoOn(BUSY(Place(file=str(folder))))
        yield


HELD: frozenset[int] = frozenset({errno.EACCES, errno.EAGAIN, errno.EWOULDBLOCK, errno.EDEADLK})
"""What a system says when someone else holds the lock; any other refusal is of a disk without locks."""


def taken(file: IO[bytes]) -> bool:
    """False when someone else holds it; True on a disk that knows no locks, such as some network folders."""
    try:
        _lock(file.fileno())
    except OSError as error:
        return error.errno not in HELD
    return True


def _lock(number: int) -> None:
    """Takes the lock of an open file and does not wait for it. Errors: OSError."""
    if os.name == "nt":
        import msvcrt

        msvcrt.locking(number, msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined,unused-ignore]
    else:
        import fcntl

        fcntl.flock(number, fcntl.LOCK_EX | fcntl.LOCK_NB)

"""A refusal of the disk in, a problem in plain words out."""

import contextlib
import errno
from collections.abc import Iterator
from pathlib import Path

from estimator.model.problem import CannotGoOn, Place
from estimator.records.problems import CANNOT_WRITE, IN_THE_WAY, NO_SPACE, NOT_ALLOWED

FULL: frozenset[int] = frozenset({errno.ENOSPC, errno.EFBIG, getattr(errno, "EDQUOT", errno.ENOSPC)})


@contextlib.contextmanager
def in_plain_words(path: Path, number: int) -> Iterator[None]:
    """Turns a refusal of the disk into a problem with a plain message."""
    place = Place(file=str(path))
    try:
        yield
    except PermissionError as error:
        raise CannotGoOn(NOT_ALLOWED(place, name=Path(error.filename or path).name)) from None
    except (FileExistsError, NotADirectoryError):
        raise CannotGoOn(IN_THE_WAY(place)) from None
    except OSError as error:
        if error.errno in FULL:
            raise CannotGoOn(NO_SPACE(place, number=number)) from None
        if error.errno == errno.EROFS:
            raise CannotGoOn(NOT_ALLOWED(place, name=path.name)) from None
        said = error.strerror or str(error)
        raise CannotGoOn(CANNOT_WRITE(place, number=number, said=said)) from None

"""A small JSON note beside the revisions in and out: read whole or named as damaged, put in its place in one step."""

import contextlib
import errno
import json
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path
from typing import Any, TypeVar

from estimator.disk.disk import Disk
from estimator.disk.whole import read_text, write_whole
from estimator.model.problem import CannotGoOn, Kind, Place
from estimator.model.say import Say
from estimator.records.problems import CANNOT_WRITE, IN_THE_WAY, NO_SPACE, NOT_ALLOWED, NOTE_DAMAGED
from estimator.records.recorded_text import dumped, plain

Note = TypeVar("Note")


def read_note(path: Path, made: Callable[[dict[str, Any]], Note], damaged: Kind = NOTE_DAMAGED) -> Note | None:
    """What `made` makes of the note, None where there is none. Errors: CannotGoOn where it is not as it was written."""
    if not path.exists():
        return None
    try:
        return made(json.loads(read_text(path)))
    except (OSError, ValueError, TypeError, KeyError, AttributeError, ArithmeticError, RecursionError) as error:
        refused = isinstance(error, OSError) and error.strerror
        said = str(refused) if refused else Say.of("it is cut short, or was changed by hand")
        raise CannotGoOn(damaged(Place(file=str(path)), name=path.name, said=said)) from None


def write_note(path: Path, note: object, disk: Disk | None = None) -> None:
    """Written beside its place and renamed, so that a half-written note is never found. The caller holds the folder's lock."""
    write_whole(path, dumped(plain(note)), disk)


def write_once(path: Path, note: Note, standing: Note | None, disk: Disk | None = None) -> Note:
    """Written where nothing is `standing` yet. Return what stands there then."""
    if standing is not None:
        return standing
    write_note(path, note, disk)
    return note


def day_of(text: str) -> str:
    """The day as it is written. Errors: ValueError or TypeError where it is none."""
    return str(date.fromisoformat(text))


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

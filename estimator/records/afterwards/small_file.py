"""A small JSON file beside the revisions in and out: read whole, written beside its place and put there in one step."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

from estimator.disk.disk import Disk
from estimator.disk.read import read_text
from estimator.disk.whole import write_whole
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.records.afterwards.problems import DAMAGED
from estimator.records.plain import dumped, plain
from estimator.records.refusals import in_plain_words

Kept = TypeVar("Kept")


def read_small(path: Path, made: Callable[[Any], Kept]) -> Kept | None:
    """What the file holds, None where there is none. Errors: CannotGoOn when it is damaged."""
    if not path.exists():
        return None
    try:
        return made(json.loads(read_text(path)))
    except (OSError, ValueError, TypeError, KeyError, AttributeError, ArithmeticError, RecursionError) as error:
        said = (
            error.strerror
            if isinstance(error, OSError) and error.strerror
            else Say.of("it is cut short, or was changed by hand")
        )
        raise CannotGoOn(DAMAGED(Place(file=str(path)), said=said)) from None


def write_small(path: Path, value: object, disk: Disk | None = None) -> None:
    """Takes the place of what was there, whole or not at all. The caller holds the folder's lock. Errors: CannotGoOn."""
    with in_plain_words(path, 0):
        write_whole(path, dumped(plain(value)), disk)

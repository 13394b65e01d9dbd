"""A small note beside the revisions in and out: written once, never over, and read whole or named as damaged."""

import json
from collections.abc import Callable
from dataclasses import asdict
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from estimator.disk.disk import Disk
from estimator.disk.read import read_text
from estimator.disk.whole import write_whole
from estimator.model.problem import CannotGoOn, Place
from estimator.model.say import Say
from estimator.records.plain import dumped
from estimator.records.problems import NOTE_DAMAGED

if TYPE_CHECKING:
    from _typeshed import DataclassInstance

Kept = TypeVar("Kept")


def read_note(path: Path, made: Callable[[dict[str, Any]], Kept]) -> Kept | None:
    """What stands in the note, None where there is none. Errors: CannotGoOn where it is not as it was written."""
    if not path.exists():
        return None
    try:
        return made(json.loads(read_text(path)))
    except (OSError, ValueError, TypeError, KeyError, AttributeError, ArithmeticError, RecursionError) as error:
        refused = isinstance(error, OSError) and error.strerror
        said = str(refused) if refused else Say.of("it is cut short, or was changed by hand")
        raise CannotGoOn(NOTE_DAMAGED(Place(file=str(path)), name=path.name, said=said)) from None


def write_note(path: Path, note: "DataclassInstance", disk: Disk) -> None:
    """Written beside its place and renamed, so that a half-written note is never found."""
    write_whole(path, dumped(asdict(note)), disk)


def day_of(text: str) -> str:
    """The day as it is written. Errors: ValueError or TypeError where it is none."""
    return str(date.fromisoformat(text))

"""A small note beside the revisions in and out: written once, never over, and read whole or named as damaged."""

import json
from collections.abc import Callable
from dataclasses import asdict
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from estimator.model.problem import CannotGoOn, Place
from estimator.records.disk import Disk
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
        return made(json.loads(path.read_text(encoding="utf-8")))
    except (OSError, ValueError, TypeError, KeyError, AttributeError, ArithmeticError, RecursionError) as error:
        refused = isinstance(error, OSError) and error.strerror
        said = str(refused) if refused else "it is cut short, or was changed by hand"
        raise CannotGoOn(NOTE_DAMAGED(Place(file=str(path)), name=path.name, said=said)) from None


def write_note(path: Path, note: "DataclassInstance", disk: Disk) -> None:
    """Written beside its place and renamed, so that a half-written note is never found."""
    making = path.with_name(f".{path.name}-tmp")
    making.unlink(missing_ok=True)
    disk.write(making, dumped(asdict(note)))
    disk.rename(making, path)


def day_of(text: str) -> str:
    """The day as it is written. Errors: ValueError or TypeError where it is none."""
    return str(date.fromisoformat(text))

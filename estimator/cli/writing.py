"""A new file's name and its bytes in, the file on the disk out: whole, or not there."""

import os
from pathlib import Path

from estimator.cli.problems import FILE_THERE
from estimator.model.problem import CannotGoOn, Place


def free(path: Path) -> None:
    """Errors: CannotGoOn where a file stands already; asked before long work, so that none is done in vain."""
    if path.exists():
        raise CannotGoOn(FILE_THERE(Place(file=str(path))))


def new_file(path: Path, data: bytes) -> Path:
    """Written beside its place under a name of its own, then renamed. Errors: CannotGoOn where a file stands already."""
    free(path)
    making = path.with_name(f".{path.name}.{os.getpid()}-tmp")
    try:
        making.write_bytes(data)
        making.rename(path)
    finally:
        making.unlink(missing_ok=True)
    return path

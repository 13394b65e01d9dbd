"""A new file's name and its bytes in, the file on the disk out: whole, or not there."""

import os
from pathlib import Path

from estimator.cli.problems import FILE_ENDING, FILE_THERE
from estimator.model.problem import CannotGoOn, Place

WORKBOOK = ".xlsx"


def free(path: Path, ending: str = "") -> None:
    """Asked before long work, so that none is done in vain.

    Errors: CannotGoOn where a file stands already, or the name does not end as its kind of file must.
    """
    if path.exists():
        raise CannotGoOn(FILE_THERE(Place(file=str(path))))
    if ending and path.suffix.lower() != ending:
        raise CannotGoOn(FILE_ENDING(Place(file=str(path)), ending=ending, name=path.with_suffix(ending).name))


def new_file(path: Path, data: bytes) -> Path:
    """Written beside its place under a name of its own, then renamed.

    Errors: CannotGoOn where a file stands already; OSError that names the folder or the file, never the one in the making.
    """
    free(path)
    making = path.with_name(f".{path.name}.{os.getpid()}-tmp")
    try:
        making.write_bytes(data)
        making.rename(path)
    except OSError as error:
        named = path if path.parent.is_dir() else path.parent
        raise OSError(error.errno, error.strerror, str(named)) from error
    finally:
        making.unlink(missing_ok=True)
    return path

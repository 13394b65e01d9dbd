"""A new file's or folder's name and its bytes in, the file or folder on the disk out: whole, or not there."""

import os
import shutil
from collections.abc import Mapping
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
        raise OSError(error.errno, error.strerror, str(_named(path))) from error
    finally:
        making.unlink(missing_ok=True)
    return path


def new_folder(path: Path, files: Mapping[str, bytes]) -> Path:
    """A folder with these files, as `new_file` writes one. Errors: as there."""
    free(path)
    making = path.with_name(f".{path.name}.{os.getpid()}-tmp")
    try:
        making.mkdir()
        for name, data in files.items():
            (making / name).write_bytes(data)
        making.rename(path)
    except OSError as error:
        raise OSError(error.errno, error.strerror, str(_named(path))) from error
    finally:
        shutil.rmtree(making, ignore_errors=True)
    return path


def _named(path: Path) -> Path:
    """What a refusal is about: the folder where it is missing, else the path itself."""
    return path if path.parent.is_dir() else path.parent

"""A new file's or folder's name and its bytes in, the file or folder on the disk out: whole, or not there."""

from collections.abc import Mapping
from pathlib import Path

from estimator.cli.problems import FILE_ENDING, FILE_THERE
from estimator.disk.whole import write_folder, write_whole
from estimator.model.problem import CannotGoOn, Place

WORKBOOK = ".xlsx"


def free(path: Path, ending: str = "") -> None:
    """Asked before long work, so that none is done in vain.

    Errors: CannotGoOn where a file stands already, or the name does not end as its kind of file must.
    """
    if path.exists() or path.is_symlink():
        raise CannotGoOn(FILE_THERE(Place(file=str(path))))
    if ending and path.suffix.lower() != ending:
        raise CannotGoOn(FILE_ENDING(Place(file=str(path)), ending=ending, name=path.with_suffix(ending).name))


def new_file(path: Path, data: bytes) -> Path:
    """Errors: CannotGoOn where a file stands already; OSError that names the folder or the file."""
    free(path)
    try:
        write_whole(path, data, new=True)
    except FileExistsError:
        raise CannotGoOn(FILE_THERE(Place(file=str(path)))) from None
    return path


def new_folder(path: Path, files: Mapping[str, bytes]) -> Path:
    """A folder with these files. Errors: as `new_file`."""
    free(path)
    write_folder(path, files)
    return path

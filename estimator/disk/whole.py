"""A path and its bytes in, the file or folder on the disk out: whole, or as it was.

Everything is written beside its place under a fresh name that only this run can open, brought to the disk, then renamed. The
name tells which run it belongs to, so that the next run of any command can take away what a killed one left.
"""

import contextlib
import errno
import os
import re
import stat
import time
from collections.abc import Iterator, Mapping
from pathlib import Path

from estimator.disk.disk import Disk

UNFINISHED = re.compile(r"\.estimator-(\d+)-[0-9a-f]{8}-tmp")
FORGOTTEN_S = 86_400.0
"""After a day it is nobody's any more, whichever machine it was written on."""


def fresh(beside: Path) -> Path:
    """Return a name beside this path that nobody has: the run's number and chance."""
    import secrets  # only who writes needs it

    return beside.with_name(f".estimator-{os.getpid()}-{secrets.token_hex(4)}-tmp")


def write_whole(path: Path, data: bytes, disk: Disk | None = None, *, new: bool = False) -> None:
    """Put these bytes in the place of a file; a link stays a link, and what it points at is replaced.

    Errors: FileExistsError with `new` where something stands there; OSError from the disk, with everything as it was.
    """
    disk = disk or Disk()
    place = path if new else _target(path)
    making = fresh(place)
    try:
        disk.write(making, data)
        if new:
            disk.place(making, place)
        else:
            disk.replace(making, place)
    except OSError as error:
        raise OSError(error.errno, error.strerror, str(_named(place))) from error
    finally:
        with contextlib.suppress(OSError):
            making.unlink(missing_ok=True)


def write_folder(path: Path, files: Mapping[str, bytes], disk: Disk | None = None) -> None:
    """Put a new folder with these files in its place. Errors: OSError, with nothing left behind."""
    disk = disk or Disk()
    making = fresh(path)
    with cleared(making, disk):
        try:
            disk.make_folder(making)
            for name, data in files.items():
                disk.make_folder((making / name).parent)
                disk.write(making / name, data)
            disk.rename(making, path)
        except OSError as error:
            raise OSError(error.errno, error.strerror, str(_named(path))) from error


@contextlib.contextmanager
def cleared(making: Path, disk: Disk) -> Iterator[None]:
    """Leaves no unfinished folder behind, whatever happens inside."""
    try:
        yield
    finally:
        if making.exists():
            disk.remove(making)


def sweep(folder: Path, disk: Disk | None = None) -> None:
    """Take away what runs that ended left unfinished in a folder; what a living run is writing stays."""
    with contextlib.suppress(OSError):
        for path in folder.iterdir():
            if (mine := UNFINISHED.fullmatch(path.name)) and not path.is_symlink() and _over(path, int(mine[1])):
                with contextlib.suppress(OSError):
                    (disk or Disk()).remove(path)


def _over(path: Path, run: int) -> bool:
    """The run that was writing it has ended, or was so long ago that it cannot be writing any more."""
    if run == os.getpid():
        return False
    return not _alive(run) or time.time() - path.stat().st_mtime > FORGOTTEN_S


def _alive(run: int) -> bool:
    if os.name == "nt":  # a signal would end it there
        return True
    try:
        os.kill(run, 0)
    except ProcessLookupError:
        return False
    except OSError:
        return True
    return True


def _target(path: Path) -> Path:
    """What a link points at; a plain name is its own target."""
    return path.resolve() if path.is_symlink() else path


def _named(path: Path) -> Path:
    """What a refusal is about: the folder where it is missing, else the path itself."""
    return path if path.parent.is_dir() else path.parent


MOST_BYTES = 200_000_000
"""More than any file the program writes or is handed."""


def read_bytes(path: Path, most: int = MOST_BYTES) -> bytes:
    """Return what the file holds. Errors: OSError where it is missing, no ordinary file, or larger than `most`."""
    number = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
    with os.fdopen(number, "rb") as file:
        about = os.fstat(file.fileno())
        if not stat.S_ISREG(about.st_mode):
            raise OSError(errno.EINVAL, "it is no ordinary file", str(path))
        data = file.read(most + 1)
    if len(data) > most:
        raise OSError(errno.EFBIG, f"it is larger than {most // 1_000_000} MB", str(path))
    return data


def read_text(path: Path) -> str:
    """Return the text of a file in UTF-8. Errors: as `read_bytes`; UnicodeDecodeError."""
    return read_bytes(path).decode("utf-8-sig")

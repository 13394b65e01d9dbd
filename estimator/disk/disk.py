"""The few things done to the disk, one method each, so that a test can stop the program before any of them."""

import contextlib
import errno
import os
import shutil
from collections.abc import Callable
from pathlib import Path


def _nothing(what: str, path: Path) -> None:
    """Called before every change of the disk; tests put something else here."""


class Disk:
    """Every change of the disk goes through here. `before` is told what is about to happen, and to which path. What is
    `lasting` is on the disk for good before a write returns; what can be made anew need not be."""

    def __init__(self, before: Callable[[str, Path], None] = _nothing, *, lasting: bool = True) -> None:
        self.before, self.lasting = before, lasting

    def make_folder(self, path: Path) -> None:
        self.before("make folder", path)
        path.mkdir(parents=True, exist_ok=True)

    def write(self, path: Path, data: bytes) -> None:
        """A new file; an existing one, or a link, is refused."""
        self.before("open", path)
        with path.open("xb") as file:
            self.before("write", path)
            middle = len(data) // 2
            file.write(data[:middle])
            file.flush()
            self.before("write the rest", path)
            file.write(data[middle:])
            file.flush()
            if self.lasting:
                os.fsync(file.fileno())

    def rename(self, old: Path, new: Path) -> None:
        """One rename; fails with OSError where `new` is a folder with something in it."""
        self.before("rename", old)
        old.rename(new)
        synced(new.parent)
        self.before("after rename", new)

    def place(self, old: Path, new: Path) -> None:
        """One file under a name that must be free. Errors: FileExistsError where it is not."""
        self.before("rename", old)
        try:
            os.link(old, new)
        except FileExistsError:
            raise
        except OSError:  # a disk that knows no second name for a file
            if os.path.lexists(new):
                raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(new)) from None
            old.rename(new)
        synced(new.parent)
        self.before("after rename", new)

    def replace(self, old: Path, new: Path) -> None:
        """One rename that takes the place of a file which may be there."""
        self.before("replace", old)
        old.replace(new)
        synced(new.parent)
        self.before("after replace", new)

    def remove(self, path: Path) -> None:
        """A folder of unfinished files and what is in it, or one unfinished file."""
        self.before("remove", path)
        if path.is_dir() and not path.is_symlink():
            shutil.rmtree(path, ignore_errors=True)
        else:
            path.unlink(missing_ok=True)


def synced(folder: Path) -> None:
    """Brings a folder's names to the disk, where the system lets a folder be opened."""
    with contextlib.suppress(OSError):
        number = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(number)
        finally:
            os.close(number)

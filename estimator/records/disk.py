"""The few things done to the disk, one method each, so that a test can stop the program before any of them."""

import os
import shutil
from collections.abc import Callable
from pathlib import Path


def _nothing(what: str, path: Path) -> None:
    """Called before every change of the disk; tests put something else here."""


class Disk:
    """Every change of the disk goes through here. `before` is told what is about to happen, and to which path."""

    def __init__(self, before: Callable[[str, Path], None] = _nothing) -> None:
        self.before = before

    def make_folder(self, path: Path) -> None:
        self.before("make folder", path)
        path.mkdir(parents=True, exist_ok=True)

    def write(self, path: Path, data: bytes) -> None:
        """A new file, on the disk for good before this returns; an existing one is refused."""
        self.before("open", path)
        with path.open("xb") as file:
            self.before("write", path)
            middle = len(data) // 2
            file.write(data[:middle])
            file.flush()
            self.before("write the rest", path)
            file.write(data[middle:])
            file.flush()
            os.fsync(file.fileno())

    def rename(self, old: Path, new: Path) -> None:
        """One rename; fails with OSError where `new` is a folder with something in it."""
        self.before("rename", old)
        old.rename(new)
        self.before("after rename", new)

    def replace(self, old: Path, new: Path) -> None:
        """One rename that takes the place of a file which may be there."""
        self.before("replace", old)
        old.replace(new)
        self.before("after replace", new)

    def remove(self, path: Path) -> None:
        """A folder of unfinished files and what is in it."""
        self.before("remove", path)
        shutil.rmtree(path, ignore_errors=True)

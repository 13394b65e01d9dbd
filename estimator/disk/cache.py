"""What takes long to make, and all that it is made from, in; the thing itself out, made once and then read from the cache.

Kept by content: the name of a file is a digest of everything the thing is made from, the program's own files among it, so
that nothing old is ever found under a new question. The folder may be deleted at any time. What is in it is used only where
the folder is this user's alone and the bytes are those that were written; anything else is made anew, without a word.
"""

import contextlib
import hashlib
import io
import os
import pickle
import stat
import sys
from collections.abc import Callable, Iterable, Iterator
from functools import cache
from pathlib import Path
from typing import TypeVar, cast

from estimator.disk.disk import Disk
from estimator.disk.whole import read_bytes, sweep, write_whole

VARIABLE = "ESTIMATOR_CACHE"
"""A folder of one's own for it, or `no`: then nothing is kept."""
MOST_BYTES = 50_000_000
"""So much is kept at most; what was made longest ago goes first."""
OURS = "estimator."
PLAIN = frozenset(
    {
        ("builtins", "frozenset"),
        ("builtins", "set"),
        ("collections", "defaultdict"),
        ("builtins", "dict"),
        ("builtins", "list"),
        ("datetime", "date"),
        ("decimal", "Decimal"),
        ("msgspec._utils", "rebuild"),  # makes a record from its fields
    }
)
"""What a kept thing may be made of beside the program's own records."""
T = TypeVar("T")


def cached(name: str, made_from: Iterable[bytes], make: Callable[[], T], holds: Callable[[T], bool] | None = None) -> T:
    """Return what `make` makes of `made_from`. One that does not hold, where `holds` asks, is neither kept nor used.

    Errors: those of `make` alone; a disk that refuses anything keeps nothing.
    """
    folder = cache_folder()
    if folder is None:
        return make()
    path = folder / f"{name}-{_digest((name.encode(), *made_from)).hex()}"
    with contextlib.suppress(Exception):  # damaged, another's, of another program: whatever it is, it is made anew
        found = cast(T, _read(path))
        if holds is None or holds(found):
            return found
    made = make()
    if holds is None or holds(made):
        with contextlib.suppress(OSError, pickle.PicklingError, TypeError, AttributeError, RecursionError):
            _write(path, made)
    return made


def cache_folder() -> Path | None:
    """Where things are kept: the user's own cache folder, unless ESTIMATOR_CACHE says another or `no`."""
    named = os.environ.get(VARIABLE)
    if named == "no":
        return None
    if named:
        return Path(named)
    from platformdirs import user_cache_path

    return user_cache_path("estimator", appauthor=False)


def _digest(parts: Iterable[bytes]) -> bytes:
    """Of each part with its length, so that no two questions read alike, and of the program that asks."""
    found = hashlib.sha256(_program())
    for part in parts:
        found.update(len(part).to_bytes(8, "big") + part)
    return found.digest()[:20]


@cache
def _program() -> bytes:
    """A digest of the program as it stands: every file's name, size and time, and the interpreter."""
    found = hashlib.sha256(sys.version.encode())
    root = Path(__file__).parents[1]
    for path, about in sorted(_files(str(root))):
        found.update(f"{path} {about.st_size} {about.st_mtime_ns}\n".encode())
    return found.digest()


def _files(folder: str) -> Iterator[tuple[str, os.stat_result]]:
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.is_dir(follow_symlinks=False):
                if entry.name != "__pycache__":
                    yield from _files(entry.path)
            else:
                yield entry.path, entry.stat()


class _OwnRecords(pickle.Unpickler):
    """Reads the program's own records and plain values; anything else is refused."""

    def find_class(self, module: str, name: str) -> object:
        if (module, name) in PLAIN:
            return super().find_class(module, name)
        if module.startswith(OURS):
            found = super().find_class(module, name)
            if isinstance(found, type) and found.__module__ == module:  # not one that the module only imports
                return found
        raise pickle.UnpicklingError(f"{module}.{name} is no record of this program")


def _read(path: Path) -> object:
    """Errors: whatever is wrong with it."""
    if not _mine(path.parent) or not _mine(path):
        raise PermissionError(path)
    data = read_bytes(path)
    if hashlib.sha256(data[32:]).digest() != data[:32]:
        raise ValueError(path)
    thing: object = _OwnRecords(io.BytesIO(data[32:])).load()
    return thing


def _mine(path: Path) -> bool:
    """This user's, and nobody else may write there; a system without such owners keeps users apart by itself."""
    if not hasattr(os, "getuid"):
        return True
    about = path.lstat()
    return about.st_uid == os.getuid() and not about.st_mode & (stat.S_IWGRP | stat.S_IWOTH)


def _write(path: Path, thing: object) -> None:
    disk, folder, data = Disk(lasting=False), path.parent, pickle.dumps(thing, 5)
    if not folder.is_dir():
        disk.make_folder(folder)
        folder.chmod(stat.S_IRWXU)
    if not _mine(folder):
        return
    write_whole(path, hashlib.sha256(data).digest() + data, disk)
    room = _room.get(folder, 0) - len(data)
    _room[folder] = room if room >= 0 else _make_room(folder, disk)


_room: dict[Path, int] = {}
"""How many bytes may still come into a folder before one looks what is there."""


def _make_room(folder: Path, disk: Disk) -> int:
    """Where there is too much take away what was made longest ago, until a tenth is free. Return how many bytes may come."""
    sweep(folder, disk)
    oldest_first = sorted((p for p in folder.iterdir() if p.is_file()), key=lambda p: p.stat().st_mtime)
    sizes = {path: path.stat().st_size for path in oldest_first}
    held = sum(sizes.values())
    stays = MOST_BYTES if held <= MOST_BYTES else MOST_BYTES * 9 // 10
    for path, size in sizes.items():
        if held > stays:
            disk.remove(path)
            held -= size
    return MOST_BYTES - held

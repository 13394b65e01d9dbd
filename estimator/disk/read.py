"""A path in, the bytes of the ordinary file there out: never of a pipe that would be waited on, or of a device."""

import errno
import os
import stat
from pathlib import Path

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

"""Words typed in, text and an exit code out. Nothing heavy is imported before a command asks for it."""

import atexit
import gc
import os
import sys

import estimator
from estimator.cli.streams import ready_streams

MANY_RECORDS = 500_000
"""Rings of records are looked for after so many new ones: a command lives a second, and looking takes a fifth of it."""

ALONE = {"PYDANTIC_DISABLE_PLUGINS": "1", "OPENBLAS_NUM_THREADS": "1"}
"""No plugin of another program is looked for, which may change how notes are read; nothing here multiplies matrices on threads."""


def rarely_swept() -> None:
    """Let memory be searched for rings of records that nobody holds only after very many new ones, and not at the very end: the
    system takes it back at once, where a last search takes a fifth of a command."""
    gc.set_threshold(MANY_RECORDS, 50, 100)
    atexit.register(gc.freeze)


def main() -> None:
    """The program `estimator`. Exit codes: 0 done, 1 something to mend in the inputs, 2 wrong command line, 3 a fault."""
    ready_streams()
    rarely_swept()
    for name, value in ALONE.items():
        os.environ.setdefault(name, value)
    if sys.argv[1:] == ["--version"]:
        print(f"estimator {estimator.__version__}")
        return
    from estimator.cli.app import build

    build(sys.argv[1:])(prog_name="estimator")

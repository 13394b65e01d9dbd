"""How the program was started in, the words to start it again out, for hints that people copy."""

import shutil
import sys
from pathlib import Path


def called() -> str:
    """`estimator` where the shell finds it; else the way it was called this time, such as .venv/bin/estimator."""
    if shutil.which("estimator"):
        return "estimator"
    first = sys.argv[0] if sys.argv else ""
    if Path(first).stem == "estimator":
        return typed(first)
    return f"{typed(sys.executable)} -m estimator"


def typed(word: object) -> str:
    """A word as one types it: in quotes where it has a blank.

    >>> typed("my first look/job.toml"), typed("larkspur/job.toml")
    ('"my first look/job.toml"', 'larkspur/job.toml')
    """
    return f'"{word}"' if any(c.isspace() for c in str(word)) else str(word)

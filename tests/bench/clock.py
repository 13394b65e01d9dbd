"""A deed in, the middle of several processor times it took out, in seconds: its own and that of the processes it began.

Processor time, not the clock on the wall: it says the same while other work goes on. A run alone on an idle machine takes as
long by both, but for what is spread over cores.
"""

import os
import resource
import statistics
import subprocess
import sys
from collections.abc import Callable


def middle(deed: Callable[[], object], times: int) -> float:
    """The first time warms up and is not counted."""
    deed()
    return statistics.median(_once(deed) for _ in range(times))


def _once(deed: Callable[[], object]) -> float:
    start = _spent()
    deed()
    return _spent() - start


def _spent() -> float:
    own, begun = resource.getrusage(resource.RUSAGE_SELF), resource.getrusage(resource.RUSAGE_CHILDREN)
    return own.ru_utime + own.ru_stime + begun.ru_utime + begun.ru_stime


def run(*words: str) -> None:
    """A fresh interpreter that may keep its modules compiled, as anybody's does; its answer goes nowhere."""
    own = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    subprocess.run([sys.executable, *words], check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env=own)

"""Chance for tests that draw their cases: new in each run, and the same for every worker of one run."""

import os
import random

RUN = os.environ.get("PYTEST_XDIST_TESTRUNUID", "")
"""What pytest-xdist calls this run, alike in all its workers: they must collect the same tests."""


def chance(name: str) -> random.Random:
    """Return a source of chance for one module; its name keeps modules apart."""
    return random.Random(f"{RUN} {name}") if RUN else random.Random()

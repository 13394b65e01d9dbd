"""Which figures of the tables a firm needs first, by how much of a usual job's cost hangs on each: measured, in first_numbers.csv."""

import csv
from functools import cache
from pathlib import Path

from estimator.model.frozen import Frozen

FILE = Path(__file__).with_name("first_numbers.csv")


class FirstNumber(Frozen):
    """One figure: its table, row and column, and the percent of a usual job's cost that moves with it."""

    table: str
    row: str
    column: str
    share: float


@cache
def measured() -> tuple[FirstNumber, ...]:
    """Return every figure, the one that moves most first (`python -m tests.bench numbers` measures them)."""
    with FILE.open(encoding="utf-8", newline="") as rows:
        return tuple(FirstNumber(r["table"], r["row"], r["column"], float(r["share"])) for r in csv.DictReader(rows))

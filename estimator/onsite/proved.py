"""A part of the drains in; what isolated tests of it alone proved, out."""

from estimator.diagnosis.tests_read import read_test
from estimator.model.job import Job
from estimator.model.stretch import Stretch
from estimator.tables.tables import Tables

PROVED, SAME_FT = {"passed": "tight", "failed": "leaks"}, 0.5


def proved(name: str, job: Job, tables: Tables, piece: Stretch | None = None) -> str:
    """What isolated tests of this part alone proved, the last one counting; the readings speak where no result was written.

    A test of a part of a line speaks for the pieces in it, before any of the whole line; where one failed, a whole line that
    failed says nothing more of the other pieces.
    """
    mine = [
        (t, read_test(t, job, tables).outcome) for t in job.water_tests if t.kind == "isolated" and name in t.covers
    ]
    parts = [(t.part, outcome) for t, outcome in reversed(mine) if t.part is not None]
    for part, outcome in parts:
        if piece is not None and outcome in PROVED and part.padded(SAME_FT, SAME_FT).covers(piece):
            return PROVED[outcome]
    for test, outcome in reversed(mine):
        if test.part is None and (outcome == "passed" or (outcome == "failed" and len(test.covers) == 1)):
            return "" if outcome == "failed" and any(o == "failed" for _, o in parts) else PROVED[outcome]
    return ""

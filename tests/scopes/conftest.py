"""What the tests of scopes share: a job from a camera log as typed, one need for each finding, the demo tables."""

import sys
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from functools import cache
from pathlib import Path

import pytest

from estimator.fieldnotes.lines import LogFiles
from estimator.fieldnotes.reading import read_job_text
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis, Need
from estimator.tables.read import demo_folder, read_tables
from estimator.tables.tables import Tables
from estimator.works.methods import record_of

sys.path.insert(0, str(Path(__file__).parent))  # puzzles.py, which the benchmark shares

HEAD = """
[job]
number = "1"
date = 2026-11-18
prepared_by = "R. Example"
demo = true
[customer]
name = "Invented"
site = "1 Invented Street"
[house]
built = {built}
floor = "{floor}"
slab_thickness = "4 in"
slab_above_grade = "6 in"
soil = "firm clay"
jurisdiction = "demo"
{house}
[[line]]
name = "main"
size = "{size}"
pipe = "{pipe}"
zero = "{zero}"
log = '''
{log}
'''
{more}
"""

NotesOf = Callable[..., Job]


def repairs_only(options):
    """The options less the visit that is sold beside them for those whose price is not firm."""
    return [o for o in options if any(record_of(r.method).measure != "visit" for r in o.scope.repairs)]


@pytest.fixture
def notes(tmp_path: Path) -> NotesOf:
    """A job of one line, from its log."""

    def make(log: str, pipe: str = "clay", size: str = "4 in", floor: str = "slab", **more: str) -> Job:
        words = {"built": "1965", "house": "", "more": "", "zero": "access", **more}
        text = HEAD.format(log=log, pipe=pipe, size=size, floor=floor, **words)
        reading = read_job_text(text, "job.toml", LogFiles(tmp_path))
        assert reading.job is not None, "\n".join(str(p) for p in reading.problems)
        return reading.job

    return make


@cache
def demo_tables() -> Tables:
    reading = read_tables(demo_folder(), date(2026, 11, 18))
    assert reading.tables is not None, reading.problems
    return reading.tables


@pytest.fixture
def tables() -> Tables:
    return demo_tables()


def one_need_a_finding(job: Job, **more: object) -> Diagnosis:
    needs = [
        Need(
            id=f"{f.kind} {f.stretch.from_ft:g}",
            line=line.name,
            stretch=f.stretch,
            kinds=(f.kind,),
            findings=(f,),
            severity=3,
            urgency=3,
            grade=f.grade,
            must=True,
        )
        for line in job.lines
        for f in line.findings
    ]
    return Diagnosis(needs=tuple(replace(n, **more) for n in needs))  # type: ignore[arg-type]


@pytest.fixture
def needs_of() -> Callable[..., Diagnosis]:
    return one_need_a_finding

"""The demo tables and the hand-worked houses, for the studies."""

from datetime import date
from functools import cache
from pathlib import Path

import pytest

from estimator.fieldnotes.reading import read_job
from estimator.model.job import Job
from estimator.tables.read import demo_folder, read_tables
from estimator.tables.tables import Tables

JOBS = Path(__file__).parents[1] / "jobs"


@cache
def demo_tables() -> Tables:
    reading = read_tables(demo_folder(), date(2026, 11, 18))
    assert reading.tables is not None, reading.problems
    return reading.tables


@pytest.fixture
def tables() -> Tables:
    return demo_tables()


@pytest.fixture
def house():
    def read(name: str) -> Job:
        job = read_job(JOBS / name / "job.toml").job
        assert job is not None
        return job

    return read

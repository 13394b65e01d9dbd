"""An override that only says why."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from pathlib import Path

from estimator.fieldnotes import read_job
from estimator.model.problem import CannotGoOn, Problem
from estimator.model.wanted import Override
from estimator.pipeline import run
from estimator.tables.read import demo_folder, read_tables

DEMO = Path(__file__).parents[3] / "estimator" / "demo" / "job.toml"


def problems(folder: Path) -> Iterable[Problem]:
    job, day = read_job(DEMO).job, date(2026, 11, 18)
    tables = read_tables(demo_folder(), day).tables
    assert job is not None and tables is not None
    job = replace(job, overrides=(Override(reason="caliche next door", option="B"),))
    try:
        return run(job, tables, day).problems
    except CannotGoOn as stop:
        return stop.problems

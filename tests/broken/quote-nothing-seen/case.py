"""A log whose lines say where the camera went in, and no footage."""

from collections.abc import Iterable
from datetime import date
from pathlib import Path

from estimator.fieldnotes import read_job
from estimator.model.problem import Problem
from estimator.quote.refuse import not_known_to_be_clean, reasons
from estimator.tables.read import demo_folder, read_tables


def problems(folder: Path) -> Iterable[Problem]:
    job, day = read_job(folder / "job.toml").job, date(2026, 11, 18)
    tables = read_tables(demo_folder(), day).tables
    assert job is not None and tables is not None
    return (*not_known_to_be_clean(job), *reasons(job, 1, tables, day))

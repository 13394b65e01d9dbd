"""A place of a lift taped to other walls than the first."""

from pathlib import Path

from estimator.cli.diagnosed_job import diagnosed
from estimator.fieldnotes.afterwards import read_afterwards
from estimator.model.problem import CannotGoOn


def problems(folder: Path):
    job = diagnosed(folder / "job.toml", None).job
    try:
        read_afterwards(folder / "job.toml", job)
    except CannotGoOn as stop:
        return stop.problems
    raise AssertionError("it was not refused")

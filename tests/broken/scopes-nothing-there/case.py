"""A clean line, and a tunnel wanted on it by hand without a word of where."""

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

from estimator.fieldnotes import read_job
from estimator.model.problem import CannotGoOn, Problem
from estimator.model.wanted import WantedOption, WantedRepair
from estimator.pipeline import run
from estimator.tables.read import demo_folder, read_tables

CLEAN = Path(__file__).parents[2] / "jobs" / "clean-line" / "job.toml"


def problems(folder: Path) -> Iterable[Problem]:
    job = read_job(CLEAN).job
    assert job is not None
    tables = read_tables(demo_folder(), job.day).tables
    assert tables is not None
    pin = WantedOption(do="pin", name="Mine", repairs=(WantedRepair(method="trench", line="main"),))
    try:
        return run(replace(job, options=(pin,)), tables, job.day).problems
    except CannotGoOn as stop:
        return stop.problems

"""Tables without the row that says how much bedding lies under a pipe."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from pathlib import Path

from estimator.fieldnotes import read_job
from estimator.model.problem import CannotGoOn, Problem
from estimator.model.stretch import Stretch
from estimator.model.work import Repair
from estimator.tables.read import demo_folder, read_tables
from estimator.takeoff import take_off

DEMO = Path(__file__).parents[3] / "estimator" / "demo" / "job.toml"


def problems(folder: Path) -> Iterable[Problem]:
    job, tables = read_job(DEMO).job, read_tables(demo_folder(), date(2026, 11, 18)).tables
    assert job is not None and tables is not None
    rows = {**tables.rows, "settings": tuple(row for row in tables.rows["settings"] if row.key != "bedding_ft")}  # type: ignore[attr-defined]
    tables = replace(tables, rows=rows)
    try:
        take_off(Repair(id="r", method="trench", line="yard", stretch=Stretch(5.0, 15.0)), job, tables)
    except CannotGoOn as stop:
        return stop.problems
    return ()

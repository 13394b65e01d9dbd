"""A fact of the firm's own that is told to hold and not to hold."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from pathlib import Path

from estimator.fieldnotes import read_job
from estimator.model.problem import Problem
from estimator.scopes.owners_words import unknown_words
from estimator.tables.read import demo_folder, read_tables

DEMO = Path(__file__).parents[3] / "estimator" / "demo" / "job.toml"


def problems(folder: Path) -> Iterable[Problem]:
    job, tables = read_job(DEMO).job, read_tables(demo_folder(), date(2026, 11, 18)).tables
    assert job is not None and tables is not None
    rows = (*tables.rows["factors"], replace(tables.factors[0], fact="steep yard"))
    tables = replace(tables, rows={**tables.rows, "factors": rows}).with_settings({"own_facts": "steep yard"})
    return unknown_words(replace(job, house=replace(job.house, own_facts=("steep yard", "not steep yard"))), tables)

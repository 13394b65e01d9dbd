"""A material that got dearer was written over its old row, not as a row with a day of its own."""

import json
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

from estimator.model.problem import Problem
from estimator.records.edited_prices import edited
from estimator.records.record import Record
from estimator.tables.data import to_data
from estimator.tables.tables import Tables
from tests.tables.workbench import demo


def problems(folder: Path) -> tuple[Problem, ...]:
    tables = demo()
    held = {
        "tables": to_data(tables),
        "day": str(tables.day),
        "revision": 1,
        "quote": {"valid_until": "2026-12-18", "job": {}},
    }
    last = Record(json.loads(json.dumps({**held, "job_file": "", "texts": {}, "languages": [], "summary": {}})))
    return edited(last, _dearer(tables), tables.day)


def _dearer(tables: Tables) -> Tables:
    rows = tuple(replace(row, cost=Decimal(26)) if row.item == "coupling" else row for row in tables.rows["materials"])
    return Tables({**tables.rows, "materials": rows}, tables.day, "f2", tables.source)

"""Damaged tables in, what becomes of them out: named, the same price, a change that is shown; or silence, which is a fault."""

from functools import cache
from pathlib import Path

from estimator.cli.priced_job import only_nothing_to_offer
from estimator.fieldnotes import read_job
from estimator.model.problem import CannotGoOn
from estimator.pipeline import run
from estimator.tables.changes import changes, changes_to_come
from estimator.tables.check_view import Known
from estimator.tables.checked import read_raw
from estimator.tables.columns import columns
from estimator.tables.csv_folder import read_folder
from estimator.tables.raw import RawTables
from estimator.tables.read import TablesReading, demo_folder, demo_rows, demo_settings
from estimator.tables.rows import TABLES
from estimator.tables.tables import Tables
from estimator.takeoff.quantities import FACTS
from estimator.works.methods import names
from tests.damage.kinds import Damage
from tests.tables.workbench import DAY, UNITS

HOUSES = Path(__file__).parents[1] / "jobs"
REMARKS = ("note", "changed_by", "changed_on", "source", "checked_on", "asked_whom", "starts")
"""Columns no price of today and no paper hangs on; what begins later is looked at apart."""


@cache
def raw() -> RawTables:
    return read_folder(demo_folder())[0]


def read_again(tables: RawTables) -> TablesReading:
    return read_raw(tables, (), DAY, Known(UNITS, FACTS, (*names(), "job"), demo_settings(), demo_rows()))


@cache
def whole() -> Tables:
    tables = read_again(raw()).tables
    assert tables is not None
    return tables


def outcome(damage: Damage) -> tuple[str, TablesReading]:
    """`named`, `same`, `shown`, or `silent`; of a slip only the first two are right."""
    found = read_again(damage.tables)
    if found.problems:
        return "named", found
    if found.tables is None:
        return "silent", found
    later = changes_to_come(whole(), found.tables)
    if _same(found.tables) and not later:
        return "same", found
    if not damage.slip and (later or changes(whole(), found.tables)):
        return "shown", found
    return "silent", found


def _same(tables: Tables) -> bool:
    """The same rows in every column that decides anything."""
    return all(_told(tables, name) == _told(whole(), name) for name in TABLES)


def _told(tables: Tables, name: str) -> list[tuple[object, ...]]:
    names = [c.name for c in columns(name) if c.name not in REMARKS]
    return sorted((tuple(getattr(row, n) for n in names) for row in tables.current(name)), key=repr)


def priced(tables: Tables, house: str) -> str:
    """What `options` says of a house on tables that passed `check`: "" where it prices, else why it does not."""
    job = read_job(HOUSES / house / "job.toml").job
    assert job is not None
    try:
        run(job, tables, DAY)
    except CannotGoOn as stop:
        return "" if only_nothing_to_offer(stop) else "; ".join(map(str, stop.problems))
    except Exception as error:
        return f"{type(error).__name__}: {error}"
    return ""

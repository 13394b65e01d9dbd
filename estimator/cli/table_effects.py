"""Two sets of price tables and a folder in; what moved in them, and what that does to the demo job and every open job, out."""

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from pathlib import Path

from estimator import demo
from estimator.cli.judged_job import errors_in
from estimator.model.frozen import Frozen
from estimator.model.problem import CannotGoOn, Level
from estimator.model.say import Say
from estimator.records.changes import title, totals_of
from estimator.records.standing import job_files, standing
from estimator.studies.table_moves import JobMove, table_moves
from estimator.tables.changes import TableChange, changes, changes_to_come
from estimator.tables.tables import Tables

CLOSED = ("accepted", "done", "damaged")
"""States in which new tables change nothing any more, or nobody can say."""


class Effects(Frozen, kw_only=True):
    """What moved in the tables, and what it does to each job; the demo's first."""

    changes: tuple[TableChange, ...]
    jobs: tuple[JobMove[Path], ...]


def effects(old: Tables, new: Tables, folder: Path | None, day: date) -> Effects:
    """Where nothing moved no job is run. Errors: FileNotFoundError where there is no such folder."""
    moved = changes(old, new)
    files = [] if folder is None else [p for p in job_files(folder) if standing(p, day, errors_in).state not in CLOSED]
    jobs = [demo_job(), *files] if moved else []
    later = changes_to_come(old, new)
    return Effects(
        changes=(*moved, *later), jobs=table_moves(jobs, old, new, lambda job, tables: _totals(job, tables, day))
    )


def demo_job() -> Path:
    """The made-up job as it lies in the package."""
    return Path(demo.__file__).parent / "job.toml"


def _totals(job_file: Path, tables: Tables, day: date) -> Mapping[Say, Decimal]:
    from estimator.fieldnotes import read_job
    from estimator.pipeline import run

    reading = read_job(job_file)
    errors = tuple(p for p in reading.problems if p.level is Level.ERROR)
    if reading.job is None or errors:
        raise CannotGoOn(*(errors or reading.problems))
    quote = run(reading.job, tables, day).quote
    return totals_of((title(o), o.price.total) for o in quote.options) if quote else {}

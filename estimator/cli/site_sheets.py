"""A job file and a sheet's name in, that sheet out, and on demand a workbook of it."""

from collections.abc import Sequence
from pathlib import Path

from estimator.cli.way import look
from estimator.cli.writing import WORKBOOK, free, new_file
from estimator.model.job import Job
from estimator.model.problem import CannotGoOn
from estimator.onsite.sheet import SiteSheet


def made(job_file: Path, name: str, tables: Path | None, changes: Sequence[str] | None) -> tuple[Job, SiteSheet]:
    """Return the job and its sheet. Errors: CannotGoOn with all that is wrong with the notes."""
    from estimator.onsite.levels_sheet import levels_sheet
    from estimator.onsite.test_sheet import test_sheet
    from estimator.onsite.water_sheet import water_sheet
    from estimator.pipeline import with_job_settings

    looked = look(job_file, tables, changes)
    if looked.job is None or looked.tables is None or looked.diagnosis is None or looked.errors:
        raise CannotGoOn(*looked.problems)
    own = with_job_settings(looked.job, looked.tables)
    if name == "tests":
        return looked.job, test_sheet(looked.job, looked.diagnosis, own)
    return looked.job, water_sheet(looked.job, own) if name == "water" else levels_sheet(looked.job, own)


def written(path: Path, sheet: SiteSheet, job: Job, language: str) -> Path:
    """Return the workbook's path. Errors: CannotGoOn where a file stands already or the name does not end in .xlsx."""
    from estimator.papers.site_sheet import site_book
    from estimator.sheets.write import write

    free(path, WORKBOOK)
    return new_file(path, write(site_book(sheet, job, language)))

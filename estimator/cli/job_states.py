"""A folder and a day in, where every job below it stands out: as data, and as rows for a terminal."""

from datetime import date
from pathlib import Path

from estimator.cli.judged_job import errors_in
from estimator.cli.views import jobs
from estimator.cli.views.screen import Row
from estimator.records.standing import job_files, standing


def listed(folder: Path, day: date, columns: int, language: str) -> tuple[list[dict[str, object]], list[Row]]:
    """Errors: FileNotFoundError where there is no such folder; a damaged job is a row like any other."""
    standings = [standing(path, day, errors_in) for path in job_files(folder)]
    return jobs.as_data(standings), jobs.rows(standings, folder, columns, language)

"""`estimator jobs`: a folder in, every job below it with its state out."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AsJson, OnDay

Folder = Annotated[Path, typer.Argument(metavar="FOLDER", help="The folder that holds the jobs, at any depth.")]


def command(folder: Folder = Path(), on: OnDay = None, as_json: AsJson = False) -> None:
    from estimator.cli.clock import today
    from estimator.cli.views import jobs
    from estimator.cli.views.screen import answer, width
    from estimator.cli.way import errors_in
    from estimator.records.standing import job_files, standing

    day = on or today()
    standings = [standing(path, day, errors_in) for path in job_files(folder)]
    answer(standings, as_json, jobs.rows(standings, folder, width()))

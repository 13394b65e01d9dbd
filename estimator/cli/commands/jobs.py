"""`estimator jobs`: a folder in, every job below it with its state out; or what new price tables would change on all of them."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDay, TablesFrom

if TYPE_CHECKING:
    from estimator.records.job_status import JobStatus

Folder = Annotated[
    Path,
    typer.Argument(
        metavar="FOLDER",
        help="The folder that holds the jobs, at any depth. Hidden folders, folders named tests or node_modules and those of "
        "Python programs are passed by, unless you name one of them here.",
    ),
]
Reprice = Annotated[
    bool,
    typer.Option("--reprice", help="Price every job with --tables, and write what would change; nothing is issued."),
]
To = Annotated[
    Path, typer.Option("--to", metavar="FILE", help="The workbook that --reprice writes; a new name, ending in .xlsx.")
]
MonthOf = Annotated[
    str,
    typer.Option(
        "--month",
        metavar="YYYY-MM",
        help="Sums over a month: quotes sent, won, lost and why, money, work in hand, profit per crew-day by method.",
    ),
]


def command(
    folder: Folder = Path(),
    reprice: Reprice = False,
    tables: TablesFrom = None,
    to: To = Path("repriced.xlsx"),
    month: MonthOf = "",
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.clock import today
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.screen import answer
    from estimator.records.job_status import job_files

    day, out = on or today(), in_window(language)
    data: object
    if reprice:
        from estimator.cli.repricing import repriced
        from estimator.cli.views.jobs import write_repriced

        done = repriced(folder, tables, day, to)
        data = done.rows
        write_repriced(out, done, to, folder)
    elif month:
        from estimator.cli.views.jobs import write_month
        from estimator.records.afterwards.month import month_of

        data = sums = month_of(job_files(folder), month_typed(month))
        write_month(out, sums)
    else:
        from estimator.cli.views.jobs import as_data, write_jobs

        standings = listed(folder, day)
        data = as_data(standings)
        write_jobs(out, standings, folder)
    answer(data, as_json, out.rows)


def listed(folder: Path, day: date) -> "list[JobStatus]":
    """Where every job below the folder stands; a damaged one is a row like any other.

    Errors: FileNotFoundError where there is no such folder.
    """
    from estimator.cli.diagnosed_job import errors_in
    from estimator.records.job_status import job_files, job_status

    return [job_status(path, day, errors_in) for path in job_files(folder)]


def month_typed(text: str) -> str:
    """A month as typed. Errors: BadParameter for anything else."""
    try:
        return date.fromisoformat(f"{text}-01").strftime("%Y-%m")
    except ValueError:
        raise typer.BadParameter(f"{text} is no month; write it as --month 2026-11.") from None

"""`estimator jobs`: a folder in, every job below it with its state out; or what new price tables would change on all of them."""

from datetime import date
from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, AsJson, Language, OnDay, TablesFrom

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
    from estimator.cli.job_states import listed
    from estimator.cli.views.screen import answer, width

    day = on or today()
    if reprice:
        from estimator.cli.repricing import repriced
        from estimator.cli.views import repriced as view

        done = repriced(folder, tables, day, to)
        answer(done.rows, as_json, view.rows(done, to, folder, width(), language))
        return
    if month:
        from estimator.cli.views import month as sums
        from estimator.records.afterwards.month import month_of
        from estimator.records.standing import job_files

        found = month_of(job_files(folder), month_typed(month))
        answer(found, as_json, sums.rows(found, width(), language))
        return
    data, rows = listed(folder, day, width(), language)
    answer(data, as_json, rows)


def month_typed(text: str) -> str:
    """A month as typed. Errors: BadParameter for anything else."""
    try:
        return date.fromisoformat(f"{text}-01").strftime("%Y-%m")
    except ValueError:
        raise typer.BadParameter(f"{text} is no month; write it as --month 2026-11.") from None

"""`estimator tables workbook`: price tables in, one workbook to edit them in out."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import OnDay, TablesFrom

NewFile = Annotated[Path, typer.Argument(metavar="FILE", help="The workbook to write, ending in .xlsx; a new name.")]


def command(file: NewFile, tables: TablesFrom = None, on: OnDay = None) -> None:
    from estimator.cli.clock import today
    from estimator.cli.views.screen import show
    from estimator.cli.way import readable_tables
    from estimator.cli.writing import new_file
    from estimator.tables.as_workbook import workbook

    written = new_file(file, workbook(readable_tables(on or today(), tables)))
    show([f"{written} is written. Edit it, then look for mistakes: estimator tables check {written}"])

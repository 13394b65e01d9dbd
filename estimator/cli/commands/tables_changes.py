"""`estimator tables changes`: two sets of price tables in, every cell that differs out."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AsJson, OnDay

Old = Annotated[Path, typer.Argument(metavar="OLD", help="The earlier tables: a folder of CSV files or a workbook.")]
New = Annotated[Path | None, typer.Argument(metavar="NEW", help="The later tables; else the ones in use.")]


def command(old: Old, new: New = None, on: OnDay = None, as_json: AsJson = False) -> None:
    from estimator.cli.clock import today
    from estimator.cli.views import changes
    from estimator.cli.views.screen import answer, width
    from estimator.cli.way import readable_tables
    from estimator.records.changes import of_tables

    day = on or today()
    moved = of_tables(readable_tables(day, old), readable_tables(day, new))
    answer(moved, as_json, changes.rows(moved, "old", "new", width()))

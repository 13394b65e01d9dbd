"""`estimator tables workbook`: price tables in, one workbook to edit them in out."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, Language, OnDay, TablesFrom

NewFile = Annotated[Path, typer.Argument(metavar="FILE", help="The workbook to write, ending in .xlsx; a new name.")]


def command(file: NewFile, tables: TablesFrom = None, on: OnDay = None, language: Language = AS_SET) -> None:
    from estimator.cli.clock import today
    from estimator.cli.price_tables import readable_tables
    from estimator.cli.views.screen import show
    from estimator.cli.writing import WORKBOOK, free, new_file
    from estimator.tables.as_workbook import workbook
    from estimator.wording.say import say, speaker

    free(file, WORKBOOK)
    written = new_file(file, workbook(readable_tables(on or today(), tables), lambda text: say(text, language)))
    check = f"estimator tables check {written}"
    said = speaker(language)(
        "{file} is written. Edit it, then look for mistakes: {check}", file=str(written), check=check
    )
    show([said])

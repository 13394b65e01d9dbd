"""`estimator tables folder`: price tables in, such as the office's workbook, a folder of CSV files out."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, Language, OnDay, TablesFrom

NewFolder = Annotated[Path, typer.Argument(metavar="FOLDER", help="The folder to write; a new name.")]


def command(folder: NewFolder, tables: TablesFrom = None, on: OnDay = None, language: Language = AS_SET) -> None:
    from estimator.cli.clock import today
    from estimator.cli.price_tables import readable_tables
    from estimator.cli.views.screen import show
    from estimator.cli.writing import new_folder
    from estimator.tables.csv_folder import csv_files
    from estimator.wording.say import speaker

    written = new_folder(folder, csv_files(readable_tables(on or today(), tables)))
    check = f"estimator tables check {written}"
    said = speaker(language)(
        "{file} is written. Edit it, then look for mistakes: {check}", file=str(written), check=check
    )
    show([said])

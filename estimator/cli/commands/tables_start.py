"""`estimator tables start`: a new folder in; the fifty figures a firm needs first asked and written, the rest left as invented."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, Language, OnDayOrToday

Folder = Annotated[
    Path, typer.Argument(metavar="FOLDER", help="A new folder for your tables; or one begun before, to go on with.")
]


ForJob = Annotated[
    Path | None,
    typer.Option("--job", metavar="JOB", help="Ask for the demo figures that this job's price still rests on."),
]


def command(folder: Folder, job: ForJob = None, on: OnDayOrToday = None, language: Language = AS_SET) -> None:
    from estimator.cli.clock import today
    from estimator.cli.first_figures import talk
    from estimator.cli.interview.terminal import Terminal

    talk(folder, on or today(), Terminal(), language, job)

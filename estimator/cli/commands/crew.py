"""`estimator crew`: an issued revision in, the crew's workbook for the option that was sold, or for the one named, out."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, JobFile, Language
from estimator.cli.completing import option_letters

Option = Annotated[
    str,
    typer.Option(
        "--option",
        metavar="LETTER",
        autocompletion=option_letters,
        help="Else the accepted option, the recommended one, the first.",
    ),
]
To = Annotated[Path, typer.Option("--out", metavar="FILE", help="The workbook's name, ending in .xlsx; a new name.")]


def command(job: JobFile, to: To, option: Option = "", language: Language = AS_SET) -> None:
    from estimator.cli.crew_file import written
    from estimator.cli.views.screen import Row, show

    letter, sold_on = written(job, to, option, language)
    sold = f"accepted on {sold_on}" if sold_on else "not accepted yet"
    show([Row(f"Crew's book for option {letter}, {sold}: {to}")])

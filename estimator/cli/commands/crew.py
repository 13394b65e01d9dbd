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
    from estimator.wording.say import speaker

    letter, sold_on = written(job, to, option, language)
    speak, words = speaker(language), {"letter": letter, "file": str(to)}
    if sold_on:
        said = speak("Crew's book for option {letter}, accepted on {day}: {file}", **words, day=sold_on)
    else:
        said = speak("Crew's book for option {letter}, not accepted yet: {file}", **words)
    show([Row(said)])

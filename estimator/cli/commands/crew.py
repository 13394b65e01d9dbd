"""`estimator crew`: an issued revision in, the crew's workbook for the option that was sold, or for the one named, out."""

from pathlib import Path
from typing import Annotated

import typer

from estimator.cli.arguments import AS_SET, JobFile, Language
from estimator.cli.completing import option_letters
from estimator.model.problem import CannotGoOn, Place

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
    from estimator.cli.views.screen import show
    from estimator.wording.say import speaker

    letter, sold_on, named = written(job, to, option, language)
    speak, words = speaker(language), {"letter": letter, "file": str(to)}
    if not named:
        said = speak(
            "No crew sheet yet for option {letter}: it needs a competent person by name. One page says what is missing: {file}",
            **words,
        )
    elif sold_on:
        said = speak("Crew's book for option {letter}, accepted on {day}: {file}", **words, day=sold_on)
    else:
        said = speak("Crew's book for option {letter}, not accepted yet: {file}", **words)
    show([said])


def written(job_file: Path, to: Path, letter: str, language: str) -> tuple[str, str, bool]:
    """Write the book; return the option's letter, the day it was accepted on ("" where it was not), and whether its competent person is named.

    Errors: CannotGoOn where nothing was issued, for an unknown letter, a damaged record, or a file that stands already.
    """
    from estimator.cli.change_order import quote_of
    from estimator.cli.problems import NO_OPTION
    from estimator.cli.writing import WORKBOOK, free, new_file
    from estimator.papers.competent_person import nobody_named
    from estimator.papers.crew import crew, worked_on
    from estimator.pipeline.costing import with_job_settings
    from estimator.records.accepted import accepted
    from estimator.records.revisions import named, newest, revisions_folder
    from estimator.sheets.write import write

    free(to, WORKBOOK)
    folder = revisions_folder(job_file)
    signed = accepted(folder)
    if signed is not None and letter.upper() not in ("", signed.option.upper()):
        signed = None
    last = named(folder, f"r{signed.revision}") if signed else newest(folder) or named(folder, "r1")
    quote = quote_of(last)
    asked = signed.option if signed else letter
    try:
        option = worked_on(quote, asked)
    except ValueError:
        letters = ", ".join(o.letter for o in quote.options)
        raise CannotGoOn(NO_OPTION(Place(file=str(job_file)), letter=letter, letters=letters)) from None
    tables = with_job_settings(quote.job, last.record().inputs.tables)
    sold_on = signed.on if signed else ""
    new_file(to, write(crew(quote, language, option.letter, tables=tables, sold_on=sold_on)))
    return option.letter, sold_on, not nobody_named(quote, option)

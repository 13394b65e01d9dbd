"""A job file and an option's letter in, the crew's workbook of that option as it was issued out."""

from pathlib import Path

from estimator.cli.ordering import quote_of
from estimator.cli.problems import NO_OPTION
from estimator.cli.writing import WORKBOOK, free, new_file
from estimator.model.problem import CannotGoOn, Place
from estimator.papers.crew import crew, worked_on
from estimator.pipeline.costing import with_job_settings
from estimator.records.accepted import accepted
from estimator.records.names import revisions_folder
from estimator.records.revisions import named, newest
from estimator.sheets.write import write


def written(job_file: Path, to: Path, letter: str, language: str) -> tuple[str, str]:
    """Write the book; return the option's letter and the day it was accepted on, "" where it was not.

    Errors: CannotGoOn where nothing was issued, for an unknown letter, a damaged record, or a file that stands already.
    """
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
    return option.letter, sold_on

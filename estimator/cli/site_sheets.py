"""A job file and a sheet's name in, that sheet out, and on demand a workbook of it."""

from collections.abc import Callable, Sequence
from pathlib import Path

from estimator.cli.judged_job import Judged, judged
from estimator.cli.priced_job import priced
from estimator.cli.writing import WORKBOOK, free, new_file
from estimator.model.job import Job
from estimator.model.offer import Option
from estimator.model.problem import CannotGoOn
from estimator.model.say import Say
from estimator.onsite.plug_results import Result
from estimator.onsite.sheet import SiteSheet, of_the_house

OF_AN_OPTION = ("marks", "grade")
"""Sheets that say how one option is built; the others need no price."""
PICTURE = ".png"
Drawing = tuple[bytes, int, str]
AFTERWARDS = ("record", "callbacks")
"""Sheets of what was done: of the option sold, or over a folder of jobs."""


def made(
    job_file: Path,
    name: str,
    tables: Path | None,
    changes: Sequence[str] | None,
    letter: str = "",
    results: Sequence[Result] = (),
) -> tuple[Job | None, SiteSheet]:
    """Return the job and its sheet; no job where the sheet is over a folder of them.

    Errors: CannotGoOn with all that is wrong with the notes, or for an option that is not there.
    """
    job, sheet = _made(job_file, name, tables, changes, letter, results)
    return job, of_the_house(sheet, job) if job else sheet


def _made(
    job_file: Path,
    name: str,
    tables: Path | None,
    changes: Sequence[str] | None,
    letter: str,
    results: Sequence[Result],
) -> tuple[Job | None, SiteSheet]:
    if name in AFTERWARDS:
        from estimator.cli.site_afterwards import callbacks, record

        return record(job_file, tables, letter) if name == "record" else (None, callbacks(job_file))
    if name in OF_AN_OPTION:
        return _of_an_option(job_file, name, tables, changes, letter)
    looked = judged(job_file, tables, changes)
    if looked.job is None or looked.tables is None or looked.diagnosis is None or looked.errors:
        raise CannotGoOn(*looked.problems)
    return looked.job, _of_the_house(name, job_file, looked, results)


def _of_the_house(name: str, job_file: Path, looked: Judged, results: Sequence[Result]) -> SiteSheet:
    from estimator.fieldnotes.afterwards import read_afterwards
    from estimator.onsite.cleanout_sheet import cleanout_sheet
    from estimator.onsite.levels_sheet import levels_sheet
    from estimator.onsite.lift_sheet import lift_sheet
    from estimator.onsite.plan_sheet import plan_sheet
    from estimator.onsite.test_sheet import test_sheet
    from estimator.onsite.water_sheet import water_sheet
    from estimator.pipeline.costing import with_job_settings

    assert looked.job is not None and looked.tables is not None and looked.diagnosis is not None
    own = with_job_settings(looked.job, looked.tables)
    job, diagnosis = looked.job, looked.diagnosis
    sheets: dict[str, Callable[[], SiteSheet]] = {
        "tests": lambda: test_sheet(job, diagnosis, own, results),
        "water": lambda: water_sheet(job, own),
        "levels": lambda: levels_sheet(job, own),
        "cleanout": lambda: cleanout_sheet(job, own),
        "plan": lambda: plan_sheet(job, read_afterwards(job_file, job).lifts),
        "lift": lambda: lift_sheet(job, read_afterwards(job_file, job), own),
    }
    return sheets[name]()


def _of_an_option(
    job_file: Path, name: str, tables: Path | None, changes: Sequence[str] | None, letter: str
) -> tuple[Job, SiteSheet]:
    from estimator.onsite.grade_sheet import grade_sheet
    from estimator.onsite.marks_sheet import marks_sheet
    from estimator.pipeline.costing import with_job_settings

    run = priced(job_file, tables, changes)
    job, own = run.quote.job, with_job_settings(run.quote.job, run.tables)
    option = _named(run.quote.options, letter, job_file)
    return job, marks_sheet(option, job, own) if name == "marks" else grade_sheet(option, job, own)


def _named(options: Sequence[Option], letter: str, job_file: Path) -> Option:
    """The option asked for; else the one that was accepted, else the first."""
    from estimator.cli.problems import NO_OPTION
    from estimator.model.problem import Place
    from estimator.records.accepted import accepted
    from estimator.records.names import revisions_folder

    sold = accepted(revisions_folder(job_file))
    asked = letter.strip().upper() or (sold.option if sold else "")
    found = next((o for o in options if o.letter == asked), None)
    if found is None and (letter or not options):
        letters = ", ".join(o.letter for o in options) or Say.of("none")
        raise CannotGoOn(NO_OPTION(Place(file=str(job_file)), letter=asked or "?", letters=letters))
    return found or options[0]


def written(path: Path, sheet: SiteSheet, job: Job | None, language: str, picture: Drawing | None = None) -> Path:
    """Return the path of the workbook, or of the picture alone where the name ends so.

    Errors: CannotGoOn where a file stands already or the name ends otherwise.
    """
    from estimator.cli.clock import today
    from estimator.papers.site_sheet import site_book
    from estimator.sheets.write import write

    if picture is not None and path.suffix.lower() == PICTURE:
        return new_file(path, picture[0])
    free(path, WORKBOOK)
    return new_file(path, write(site_book(sheet, job, language, job.day if job else today(), picture)))


def picture_of(
    job: Job, job_file: Path, tables: Path | None, changes: Sequence[str] | None, letter: str, language: str
) -> Drawing | None:
    """Return the plan sketch, with the openings of an option where one is named. Errors: CannotGoOn for one that is not there."""
    from estimator.fieldnotes.afterwards import read_afterwards
    from estimator.onsite.plan_picture import plan_picture

    works = _named(priced(job_file, tables, changes).quote.options, letter, job_file).works if letter else None
    return plan_picture(job, language, works, read_afterwards(job_file, job).lifts)

"""A job file and a sheet's name in, that sheet out, and on demand a workbook of it: of the house, of an option, of the work when it was done."""

from collections.abc import Callable, Sequence
from pathlib import Path

from estimator.cli.diagnosed_job import DiagnosedJob, diagnosed
from estimator.cli.priced_job import priced
from estimator.cli.writing import WORKBOOK, free, new_file
from estimator.model.afterwards import Afterwards
from estimator.model.job import Job
from estimator.model.offer import Option
from estimator.model.problem import CannotGoOn, Place, Problem
from estimator.model.say import Say
from estimator.onsite.callbacks import DoneJob, callbacks_sheet
from estimator.onsite.plug_results import Result
from estimator.onsite.record_sheet import Sold, record_sheet
from estimator.onsite.sheet import SiteSheet, of_the_house

OF_AN_OPTION = ("marks", "grade")
"""Sheets that say how one option is built; the others need no price."""
PICTURE = ".png"
Drawing = tuple[bytes, int, str]


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
    if name == "callbacks":
        return None, _callbacks(job_file)
    if name == "record":
        job, sheet = _record(job_file, tables, letter)
    elif name in OF_AN_OPTION:
        job, sheet = _of_an_option(job_file, name, tables, changes, letter)
    else:
        job, sheet = _of_the_house(name, job_file, diagnosed(job_file, tables, changes), results)
    return job, of_the_house(sheet, job)


def _of_the_house(name: str, job_file: Path, looked: DiagnosedJob, results: Sequence[Result]) -> tuple[Job, SiteSheet]:
    from estimator.fieldnotes.afterwards import read_afterwards
    from estimator.onsite.cleanout_sheet import cleanout_sheet
    from estimator.onsite.levels_sheet import levels_sheet
    from estimator.onsite.lift_sheet import lift_sheet
    from estimator.onsite.plan_sheet import plan_sheet
    from estimator.onsite.test_sheet import test_sheet
    from estimator.onsite.water_sheet import water_sheet
    from estimator.pipeline.costing import with_job_settings

    job, tables, diagnosis = looked.job, looked.tables, looked.diagnosis
    if job is None or tables is None or diagnosis is None or looked.errors:
        raise CannotGoOn(*looked.problems)
    own = with_job_settings(job, tables)
    sheets: dict[str, Callable[[], SiteSheet]] = {
        "tests": lambda: test_sheet(job, diagnosis, own, results),
        "water": lambda: water_sheet(job, own),
        "levels": lambda: levels_sheet(job, own),
        "cleanout": lambda: cleanout_sheet(job, own),
        "plan": lambda: plan_sheet(job, read_afterwards(job_file, job).lifts),
        "lift": lambda: lift_sheet(job, read_afterwards(job_file, job), own),
    }
    return job, sheets[name]()


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
    from estimator.records.accepted import accepted
    from estimator.records.revisions import revisions_folder

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


def _record(job_file: Path, tables: Path | None, letter: str) -> tuple[Job, SiteSheet]:
    """Return the job as it was sold and the record of its work. Errors: CannotGoOn where nothing was accepted, or for what is wrong in the file."""
    from estimator.cli.clock import today
    from estimator.cli.issuing import quote_of
    from estimator.cli.price_tables import readable_tables
    from estimator.cli.views.problems import tell
    from estimator.fieldnotes.afterwards import read_afterwards
    from estimator.pipeline.costing import with_job_settings
    from estimator.records.afterwards.sold import sold
    from estimator.records.finished import day_done
    from estimator.records.reissue import job_of
    from estimator.records.revisions import revisions_folder

    folder = revisions_folder(job_file)
    signed = sold(folder, letter)
    inputs = signed.record.inputs
    quote = quote_of(job_of(inputs), inputs)
    option = next(o for o in quote.options if o.letter == signed.letter)
    now = with_job_settings(quote.job, readable_tables(today(), tables))
    as_sold = Sold(option=option, job=quote.job, tables_then=inputs.tables, tables=now, done=day_done(folder))
    after = read_afterwards(job_file, quote.job)
    tell(_pictures_missing(job_file.parent, after))
    return quote.job, record_sheet(as_sold, after)


def _pictures_missing(folder: Path, after: Afterwards) -> list[Problem]:
    from estimator.cli.problems import NO_PICTURE
    from estimator.fieldnotes.textfile import lies_below

    names = (still.file for still in after.stills)
    return [
        NO_PICTURE(Place(file=str(folder / name)), name=name)
        for name in names
        if not lies_below(name) or not (folder / name).is_file()
    ]


def _callbacks(folder: Path) -> SiteSheet:
    """Return the callbacks of all jobs below a folder that are noted as done. A job that cannot be read is named and left out."""
    from estimator.cli.views.problems import tell
    from estimator.records.job_status import job_files

    jobs = []
    for path in job_files(folder):
        try:
            jobs += _done(path)
        except CannotGoOn as stop:
            tell(stop.problems)
    return callbacks_sheet(jobs)


def _done(job_file: Path) -> list[DoneJob]:
    from estimator.fieldnotes import read_job
    from estimator.fieldnotes.afterwards import read_afterwards
    from estimator.records.afterwards.sold import sold
    from estimator.records.finished import finished
    from estimator.records.revisions import revisions_folder

    folder = revisions_folder(job_file)
    done = finished(folder)
    reading = read_job(job_file)
    if done is None:
        return []
    if reading.job is None:
        raise CannotGoOn(*reading.problems)
    takeoffs = sold(folder, done.option).option["takeoffs"]
    methods = frozenset(t["repair"]["method"] for t in takeoffs) - {"job"}
    return [DoneJob(methods, read_afterwards(job_file, reading.job).callbacks)]

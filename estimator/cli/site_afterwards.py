"""A job that was sold in, the record of its work out; a folder of jobs in, their callbacks counted out."""

from pathlib import Path

from estimator.model.afterwards import Afterwards
from estimator.model.job import Job
from estimator.model.problem import CannotGoOn, Place, Problem
from estimator.onsite.callbacks import DoneJob, callbacks_sheet
from estimator.onsite.record_sheet import Sold, record_sheet
from estimator.onsite.sheet import SiteSheet


def record(job_file: Path, tables: Path | None, letter: str) -> tuple[Job, SiteSheet]:
    """Return the job as it was sold and the record of its work. Errors: CannotGoOn where nothing was accepted, or for what is wrong in the file."""
    from estimator.cli.clock import today
    from estimator.cli.issuing import quote_of
    from estimator.cli.tables_asked import readable_tables
    from estimator.cli.views.problems import tell
    from estimator.fieldnotes.afterwards import read_afterwards
    from estimator.pipeline.costing import with_job_settings
    from estimator.records.afterwards.sold import sold
    from estimator.records.again import job_of
    from estimator.records.finished import day_done
    from estimator.records.names import revisions_folder

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


def callbacks(folder: Path) -> SiteSheet:
    """Return the callbacks of all jobs below a folder that are noted as done. A job that cannot be read is named and left out."""
    from estimator.cli.views.problems import tell
    from estimator.records.standing import job_files

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
    from estimator.records.names import revisions_folder

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

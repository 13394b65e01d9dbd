"""`estimator tables changes`: two sets of price tables in; every cell that differs, what it does to jobs, and what is odd about it, out."""

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from pathlib import Path
from typing import Annotated

import typer

from estimator import demo
from estimator.cli.arguments import AS_SET, AsJson, Language, OnDay
from estimator.cli.diagnosed_job import errors_in
from estimator.cli.views.changes import offered_at
from estimator.cli.views.layout import Layout
from estimator.cli.views.words import Words
from estimator.model.frozen import Frozen
from estimator.model.problem import CannotGoOn, Level
from estimator.model.say import Say
from estimator.records.changes import title, totals_of
from estimator.records.job_status import job_files, job_status
from estimator.studies.table_moves import JobMove, OptionMove, table_moves
from estimator.tables.changes import TableChange, changes, changes_to_come
from estimator.tables.tables import Tables
from estimator.wording.say import shown

Old = Annotated[Path, typer.Argument(metavar="OLD", help="The earlier tables: a folder of CSV files or a workbook.")]
New = Annotated[Path | None, typer.Argument(metavar="NEW", help="The later tables; else the ones in use.")]
Jobs = Annotated[
    Path | None,
    typer.Option("--jobs", metavar="FOLDER", help="Price every open job below it both ways; the demo job always is."),
]


class Effects(Frozen, kw_only=True):
    """What moved in the tables, and what it does to each job; the demo's first."""

    changes: tuple[TableChange, ...]
    jobs: tuple[JobMove[Path], ...]


def command(
    old: Old,
    new: New = None,
    jobs: Jobs = None,
    on: OnDay = None,
    language: Language = AS_SET,
    as_json: AsJson = False,
) -> None:
    from estimator.cli.clock import today
    from estimator.cli.price_tables import readable_tables, tables_for
    from estimator.cli.views.layout import in_window
    from estimator.cli.views.problems import tell
    from estimator.cli.views.screen import answer

    day = on or today()
    before, after = readable_tables(day, old), readable_tables(day, new)
    found = effects(before, after, jobs, day)
    out = in_window(language)
    write_effects(out, found)
    answer(as_data(found), as_json, out.rows)
    known = set(tables_for(day, new)[1])
    tell(tuple(problem for problem in tables_for(day, new, before)[1] if problem not in known))


def write_effects(out: Layout, found: Effects) -> None:
    """The tables first, then a block a job."""
    speak = out.speak
    if not found.changes:
        out.line(speak("Nothing moved between old and new."))
        return
    out.line(speak("The tables"), "head")
    heads = (speak("row"), speak("column"), speak("old"), speak("new"), speak("by"))
    out.table(heads, [_change(change, out) for change in found.changes], right=(4,))
    for job in found.jobs:
        _job(out, job)


def as_data(found: Effects) -> dict[str, object]:
    """The same for other programs; differences worked out."""
    jobs = [
        {"job": str(j.job), "wrong": str(j.wrong or ""), "options": [_option(o) for o in j.options]} for j in found.jobs
    ]
    return {"changes": found.changes, "jobs": jobs}


def _option(move: OptionMove) -> dict[str, object]:
    return {"option": str(move.option), "old": move.old, "new": move.new, "difference": move.difference}


def _change(change: TableChange, words: Words) -> tuple[str, ...]:
    row, whole = f"{change.table}: {change.name}", words.speak("a row")
    if change.starts is not None:
        row = words.speak("from {day}: {row}", day=change.starts.isoformat(), row=row)
    if change.what != "moved":
        return row, "", *(("—", whole) if change.what == "new" else (whole, "—")), ""
    return row, change.column, change.old or "—", change.new or "—", _percent(change.percent)


def _percent(percent: Decimal | None) -> str:
    return "" if percent is None else f"{percent:+} %"


def _job(out: Layout, job: JobMove[Path]) -> None:
    speak = out.speak
    out.heading(speak("The demo job") if job.job == demo_job() else str(job.job))
    if job.wrong:
        out.paragraph(speak("not priced: {why}", why=job.wrong), by=2, look="bad")
        return
    heads = (speak("option"), speak("old tables"), speak("new tables"), speak("moves by"), "")
    out.table(heads, [_cells(option, out) for option in job.options], right=(1, 2, 3, 4))


def _cells(o: OptionMove, words: Words) -> tuple[str, ...]:
    totals = offered_at(o.old, words), offered_at(o.new, words)
    return shown(o.option, words.language), *totals, words.moved_by(o.difference), _percent(o.percent or None)


CLOSED = ("accepted", "done", "damaged")
"""States in which new tables change nothing any more, or nobody can say."""


def effects(old: Tables, new: Tables, folder: Path | None, day: date) -> Effects:
    """Where nothing moved no job is run. Errors: FileNotFoundError where there is no such folder."""
    moved = changes(old, new)
    files = (
        [] if folder is None else [p for p in job_files(folder) if job_status(p, day, errors_in).state not in CLOSED]
    )
    jobs = [demo_job(), *files] if moved else []
    later = changes_to_come(old, new)
    return Effects(
        changes=(*moved, *later), jobs=table_moves(jobs, old, new, lambda job, tables: _totals(job, tables, day))
    )


def demo_job() -> Path:
    """The made-up job as it lies in the package."""
    return Path(demo.__file__).parent / "job.toml"


def _totals(job_file: Path, tables: Tables, day: date) -> Mapping[Say, Decimal]:
    from estimator.fieldnotes import read_job
    from estimator.pipeline import run

    reading = read_job(job_file)
    errors = tuple(p for p in reading.problems if p.level is Level.ERROR)
    if reading.job is None or errors:
        raise CannotGoOn(*(errors or reading.problems))
    quote = run(reading.job, tables, day).quote
    return totals_of((title(o), o.price.total) for o in quote.options) if quote else {}

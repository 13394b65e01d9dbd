"""What moved between two sets of tables in, and what it does to jobs; the office's lines about it out."""

from decimal import Decimal
from pathlib import Path

from estimator.cli.table_effects import Effects, demo_job
from estimator.cli.views.changes import offered_at
from estimator.cli.views.layout import Layout
from estimator.cli.views.words import Words
from estimator.studies.table_moves import JobMove, OptionMove
from estimator.tables.changes import TableChange
from estimator.wording.say import shown


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

"""What moved between two sets of tables in, and what it does to jobs; the office's lines about it out."""

from decimal import Decimal
from pathlib import Path

from estimator.cli.table_effects import Effects, demo_job
from estimator.cli.views.changes import by
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.words import ENGLISH, dollars
from estimator.studies.table_moves import JobMove, OptionMove
from estimator.tables.changes import TableChange
from estimator.wording.say import shown, speaker


def rows(found: Effects, columns: int, language: str = ENGLISH) -> list[Row]:
    """The tables first, then a block a job."""
    speak = speaker(language)
    if not found.changes:
        return [Row(speak("Nothing moved between old and new."))]
    heads = (speak("row"), speak("column"), speak("old"), speak("new"), speak("by"))
    body = table(heads, [_change(change, language) for change in found.changes], columns, right=(4,))
    blocks = [row for job in found.jobs for row in _job(job, columns, language)]
    return [Row(speak("The tables"), "head"), *(Row(text) for text in body), *blocks]


def as_data(found: Effects) -> dict[str, object]:
    """The same for other programs; differences worked out."""
    jobs = [
        {"job": str(j.job), "wrong": str(j.wrong or ""), "options": [_option(o) for o in j.options]} for j in found.jobs
    ]
    return {"changes": found.changes, "jobs": jobs}


def _option(move: OptionMove) -> dict[str, object]:
    return {"option": str(move.option), "old": move.old, "new": move.new, "difference": move.difference}


def _change(change: TableChange, language: str) -> tuple[str, ...]:
    speak = speaker(language)
    row, whole = f"{change.table}: {change.name}", speak("a row")
    if change.starts is not None:
        row = speak("from {day}: {row}", day=change.starts.isoformat(), row=row)
    if change.what != "moved":
        return row, "", *(("—", whole) if change.what == "new" else (whole, "—")), ""
    return row, change.column, change.old or "—", change.new or "—", _percent(change.percent)


def _percent(percent: Decimal | None) -> str:
    return "" if percent is None else f"{percent:+} %"


def _job(job: JobMove[Path], columns: int, language: str) -> list[Row]:
    speak = speaker(language)
    name = speak("The demo job") if job.job == demo_job() else str(job.job)
    head = [Row(""), Row(name, "head")]
    if job.wrong:
        said = speak("not priced: {why}", why=job.wrong)
        return [*head, *(Row(text, "bad") for text in indented(said, columns))]
    heads = (speak("option"), speak("old tables"), speak("new tables"), speak("moves by"), "")
    cells = [_option_cells(option, language) for option in job.options]
    return [*head, *(Row(text) for text in table(heads, cells, columns, right=(1, 2, 3, 4)))]


def _option_cells(o: OptionMove, language: str) -> tuple[str, ...]:
    totals = (_total(total, language) for total in (o.old, o.new))
    return shown(o.option, language), *totals, by(o.difference, language), _percent(o.percent or None)


def _total(total: Decimal | None, language: str) -> str:
    return speaker(language)("not offered") if total is None else dollars(total, whole=True, language=language)

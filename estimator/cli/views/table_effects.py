"""What moved between two sets of tables in, and what it does to jobs; the office's lines about it out."""

from collections.abc import Sequence
from decimal import Decimal
from pathlib import Path

from estimator.cli.table_effects import Effects, demo_job
from estimator.cli.views.changes import by
from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.words import dollars
from estimator.studies.table_moves import JobMove, OptionMove
from estimator.tables.changes import TableChange

HEADS = ("row", "column", "old", "new", "by")
OPTION_HEADS = ("option", "old tables", "new tables", "moves by", "")


def rows(found: Effects, columns: int) -> list[Row]:
    """The tables first, then a block a job."""
    if not found.changes:
        return [Row("Nothing moved between old and new.")]
    body = table(HEADS, [_change(change) for change in found.changes], columns, right=(4,))
    blocks = [row for job in found.jobs for row in _job(job, columns)]
    return [Row("The tables", "head"), *(Row(text) for text in body), *blocks]


def as_data(found: Effects) -> dict[str, object]:
    """The same for other programs; differences worked out."""
    jobs = [{"job": str(j.job), "wrong": j.wrong, "options": [_option(o) for o in j.options]} for j in found.jobs]
    return {"changes": found.changes, "jobs": jobs}


def _option(move: OptionMove) -> dict[str, object]:
    return {"option": move.option, "old": move.old, "new": move.new, "difference": move.difference}


def _change(change: TableChange) -> tuple[str, ...]:
    row = f"{change.table}: {change.name}"
    if change.what != "moved":
        return row, "", *(("—", "a row") if change.what == "new" else ("a row", "—")), ""
    return row, change.column, change.old or "—", change.new or "—", _percent(change.percent)


def _percent(percent: Decimal | None) -> str:
    return "" if percent is None else f"{percent:+} %"


def _job(job: JobMove[Path], columns: int) -> list[Row]:
    name = "The demo job" if job.job == demo_job() else str(job.job)
    head = [Row(""), Row(name, "head")]
    if job.wrong:
        return [*head, *(Row(text, "bad") for text in indented(f"not priced: {job.wrong}", columns))]
    return [*head, *(Row(text) for text in table(OPTION_HEADS, _options(job.options), columns, right=(1, 2, 3, 4)))]


def _options(options: Sequence[OptionMove]) -> list[tuple[str, ...]]:
    return [(o.option, _total(o.old), _total(o.new), by(o.difference), _percent(o.percent or None)) for o in options]


def _total(total: Decimal | None) -> str:
    return "not offered" if total is None else dollars(total, whole=True)

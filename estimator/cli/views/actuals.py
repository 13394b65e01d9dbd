"""Estimate beside what really happened in, lines for the office out; and suggested production rows over several jobs."""

from collections.abc import Sequence
from decimal import Decimal

from estimator.cli.views.screen import Row
from estimator.cli.views.table import indented, table
from estimator.cli.views.words import number
from estimator.pricing.actuals import Outcome, Suggestion

HEADS = ("task", "estimated", "real", "off", "quantity", "real", "unit", "cause")
SUGGESTED = ("task", "unit", "jobs", "in the table", "as the jobs have it", "spread")
NEVER_BY_ITSELF = (
    "low / likely / high, hours a unit: the middle of the jobs as likely, the 10th and 90th percentile around it. Nothing is "
    "changed by itself: what you agree with you write into production, with the day from which it holds."
)


def rows(
    found: Sequence[Outcome], strangers: Sequence[str], planned: Decimal, days: Decimal | None, columns: int
) -> list[Row]:
    """A row a task, all hours, hours over by cause, days, and work the estimate did not have."""
    if not found and days is None and not strangers:
        return [Row("No real hours are kept for this job yet.")]
    out = [Row("Estimate against actual, hours", "head")]
    cells = [_cells(outcome) for outcome in found]
    if cells:
        total = (
            "all of these",
            number(sum(o.hours for o in found)),
            number(sum(o.actual_hours for o in found)),
            _percent(found),
            "",
            "",
            "",
            "",
        )
        out += [Row(text) for text in table(HEADS, [*cells, total], columns, right=(1, 2, 3, 4, 5))]
    for task in strangers:
        out += [Row(text, "bad") for text in indented(f"{task}: real hours, and none in the estimate.", columns, by=0)]
    out += [Row(text) for text in by_cause(found)]
    said = "nobody said" if days is None else number(days)
    return [*out, Row(f"Crew days: {number(planned)} estimated, {said} real")]


def _cells(o: Outcome) -> tuple[str, ...]:
    off = f"{o.off_percent:+.0f} %" if o.hours else ""
    return (
        o.task,
        number(o.hours, 2),
        number(o.actual_hours, 2),
        off,
        number(o.quantity, 2),
        number(o.actual_quantity, 2),
        o.unit,
        o.cause,
    )


def _percent(found: Sequence[Outcome]) -> str:
    hours = sum(o.hours for o in found)
    return f"{(sum(o.actual_hours for o in found) - hours) * 100 / hours:+.0f} %" if hours else ""


def by_cause(found: Sequence[Outcome]) -> list[str]:
    """Hours more or less than estimated, added up for each cause that was named."""
    over: dict[str, float] = {}
    for o in found:
        over[o.cause or "no cause named"] = over.get(o.cause or "no cause named", 0.0) + o.actual_hours - o.hours
    return [f"  {cause}: {hours:+.1f} h" for cause, hours in over.items()]


def suggested(found: Sequence[Suggestion], jobs: int, least: int, columns: int) -> list[Row]:
    """A row a task with enough jobs; a sentence where there is none."""
    head = Row(
        f"Real hours of {jobs} {'job' if jobs == 1 else 'jobs'}; a task is suggested from {least} jobs on", "head"
    )
    if not found:
        return [head, Row("No task has been done on so many jobs yet.")]
    cells = [
        (s.task, s.unit, str(s.jobs), _three(*s.table), _three(s.low, s.likely, s.high), number(s.spread, 3))
        for s in found
    ]
    words = [Row(text) for text in indented(NEVER_BY_ITSELF, columns, by=0)]
    return [head, *(Row(text) for text in table(SUGGESTED, cells, columns, right=(2, 5))), *words]


def _three(low: float, likely: float, high: float) -> str:
    return " / ".join(number(value, 3) for value in (low, likely, high))

"""What a job really took in; estimate against actual, and over several jobs suggested production rows, out.

A suggestion is never applied by itself: the office changes the table or leaves it.
"""

from collections.abc import Iterable, Sequence
from statistics import pstdev

from estimator.model.frozen import Frozen
from estimator.model.price import Price, TaskHours
from estimator.pricing.draws import percentile
from estimator.tables.rows_of_hours import Production
from estimator.tables.tables import Tables

CAUSES = ("", "soil", "found more", "access", "weather", "inspection", "our error")
OURS = "our error"
"""Hours lost by our own error say nothing about the next job, so no suggestion is made from them."""


class Actual(Frozen, kw_only=True):
    """Crew-hours of a task as they turned out; the quantity where it was not as estimated; why it differed."""

    task: str
    hours: float
    quantity: float | None = None
    cause: str = ""
    note: str = ""


class Outcome(Frozen, kw_only=True):
    """One task of one job: estimated and actual. Quantities count `per` in, factors say what made it slow already."""

    task: str
    unit: str
    quantity: float
    hours: float
    actual_quantity: float
    actual_hours: float
    factor: float
    cause: str

    @property
    def off_percent(self) -> float:
        """Actual hours over the estimated, percent of the estimated.

        >>> Outcome(task="dig", unit="cy", quantity=4, hours=5, actual_quantity=4, actual_hours=6, factor=1, cause="").off_percent
        20.0
        """
        return (self.actual_hours - self.hours) * 100 / self.hours if self.hours else 0.0

    @property
    def hours_a_unit(self) -> float:
        """What production should have said: actual hours ÷ (actual quantity × factor)."""
        return self.actual_hours / (self.actual_quantity * self.factor) if self.actual_quantity else 0.0


class Suggestion(Frozen, kw_only=True):
    """A production row as the jobs would have it, beside the one in the table."""

    task: str
    unit: str
    jobs: int
    low: float
    likely: float
    high: float
    spread: float  # standard deviation of hours a unit
    table: tuple[float, float, float]


def outcomes(price: Price, actuals: Iterable[Actual]) -> tuple[Outcome, ...]:
    """Every task of the price of which actual hours are known."""
    return outcomes_of(price.tasks, actuals)


def outcomes_of(estimated: Iterable[TaskHours], actuals: Iterable[Actual]) -> tuple[Outcome, ...]:
    """The same from the hours alone; several entries of a task add up, the last cause counts."""
    entered: dict[str, list[Actual]] = {}
    for actual in actuals:
        entered.setdefault(actual.task, []).append(actual)
    return tuple(_outcome(tasks, entered[name]) for name, tasks in _by_task(estimated).items() if name in entered)


def strangers(price: Price, actuals: Iterable[Actual]) -> tuple[str, ...]:
    """Tasks entered that the estimate did not have: work that was forgotten, or a name mistyped."""
    return strangers_to(price.tasks, actuals)


def strangers_to(estimated: Iterable[TaskHours], actuals: Iterable[Actual]) -> tuple[str, ...]:
    """The same from the hours alone."""
    known = _by_task(estimated)
    return tuple(dict.fromkeys(a.task for a in actuals if a.task not in known))


def _by_task(estimated: Iterable[TaskHours]) -> dict[str, list[TaskHours]]:
    tasks: dict[str, list[TaskHours]] = {}
    for task in estimated:
        tasks.setdefault(task.task, []).append(task)
    return tasks


def _outcome(tasks: Sequence[TaskHours], entries: Sequence[Actual]) -> Outcome:
    quantity = sum(t.quantity * t.per for t in tasks)
    hours = sum(t.hours for t in tasks)
    counted = [e.quantity for e in entries if e.quantity is not None]
    return Outcome(
        task=tasks[0].task,
        unit=tasks[0].unit,
        quantity=quantity,
        hours=hours,
        actual_quantity=sum(counted) if counted else quantity,
        actual_hours=sum(e.hours for e in entries),
        factor=hours / (quantity * tasks[0].each) if quantity and tasks[0].each else 1.0,
        cause=next((e.cause for e in reversed(entries) if e.cause), ""),
    )


def suggestions(jobs: Sequence[Sequence[Outcome]], tables: Tables, least_jobs: int) -> tuple[Suggestion, ...]:
    """For each task done on at least so many jobs: the middle of them as likely, the 10th and 90th percentile around it.

    A task the table has no row for any more is passed over.
    """
    found: dict[str, list[Outcome]] = {}
    for job in jobs:
        for outcome in job:
            if outcome.cause != OURS and outcome.hours_a_unit > 0:
                found.setdefault(outcome.task, []).append(outcome)
    known = {row.task for row in tables.current("production") if isinstance(row, Production)}
    return tuple(
        _suggestion(task, seen, tables) for task, seen in found.items() if len(seen) >= least_jobs and task in known
    )


def _suggestion(task: str, seen: Sequence[Outcome], tables: Tables) -> Suggestion:
    row = tables.production(task)
    took = sorted(o.hours_a_unit for o in seen)
    return Suggestion(
        task=task,
        unit=seen[0].unit,
        jobs=len(took),
        low=percentile(took, 10),
        likely=percentile(took, 50),
        high=percentile(took, 90),
        spread=pstdev(took),
        table=(row.low, row.likely, row.high),
    )

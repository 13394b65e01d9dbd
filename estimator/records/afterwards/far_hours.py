"""Hours, quantities and days as typed in; those far from the estimate, to be asked about, out."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from pathlib import Path

from estimator.model.problem import Place, Problem
from estimator.model.say import Say
from estimator.pricing.actuals import Actual, outcomes_of, strangers_to
from estimator.records.afterwards.problems import FAR_FROM_ESTIMATE
from estimator.records.afterwards.sold import Sold

TIMES_OVER, TIMES_UNDER = 3, 5
"""Past so many times the estimate, or below such a part of it, a figure is more often a slip than a bad day (common practice)."""
SMALL_HOURS, SMALL_DAYS = 2.0, 2.0
"""What may be off by this much is never asked about: small tasks double easily."""


def far_from_estimate(folder: Path, done: Sold, entries: Sequence[Actual], days: Decimal | None) -> tuple[Problem, ...]:
    """Return a question for each figure just typed that is far from what was estimated; nothing is refused for it."""
    place = Place(file=str(folder))
    return tuple(
        FAR_FROM_ESTIMATE(place, what=what, real=f"{real:g}", estimated=f"{round(estimated, 2):g}", unit=unit)
        for what, real, estimated, unit in (*_hours(done, entries), *_quantities(done, entries), *_days(done, days))
    )


Far = tuple[Say, float, float, Say | str]
"""What is far off: its name, as typed, as estimated, its unit."""


def _far(real: float, estimated: float, small: float) -> bool:
    off = abs(real - estimated) > small
    return off and (real > TIMES_OVER * estimated or real * TIMES_UNDER < estimated)


def _hours(done: Sold, entries: Sequence[Actual]) -> Iterator[Far]:
    for one in outcomes_of(done.tasks, entries):
        if _far(one.actual_hours, one.hours, SMALL_HOURS):
            yield (Say.of("{task} (hours)", task=one.task), one.actual_hours, one.hours, Say.of("crew-hours"))
    every = sum(task.hours for task in done.tasks)
    for name in strangers_to(done.tasks, entries):
        hours = sum(e.hours for e in entries if e.task == name)
        if hours > every:
            yield (Say.of("{task} (hours)", task=name), hours, every, Say.of("crew-hours"))


def _quantities(done: Sold, entries: Sequence[Actual]) -> Iterator[Far]:
    for one in outcomes_of(done.tasks, [e for e in entries if e.quantity is not None]):
        if _far(one.actual_quantity, one.quantity, 0.0):
            yield (Say.of("{task} (quantity)", task=one.task), one.actual_quantity, one.quantity, one.unit)


def _days(done: Sold, days: Decimal | None) -> Iterator[Far]:
    if days is not None and _far(float(days), float(done.days), SMALL_DAYS):
        yield (Say.of("crew days"), float(days), float(done.days), Say.of("crew-days"))

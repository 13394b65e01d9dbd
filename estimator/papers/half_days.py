"""An option's schedule in, a bar for each crew out: two letters a day, so that bars stand under their days in letters of one width."""

from math import ceil

from estimator.model.schedule import Schedule

WORKS, OFF, FREE = "█", "▒", "·"
"""A half day a crew is there; a half day no drain may be used; a half day without."""


def days_of(schedule: Schedule) -> int:
    """Return how many days the bars are long."""
    return ceil(schedule.days_on_site)


def head(schedule: Schedule) -> str:
    """Return the days' numbers, each over its two letters."""
    return "".join(f"{day:<2}" if day < 100 else "  " for day in range(1, days_of(schedule) + 1))


def bar(schedule: Schedule, crew: str) -> str:
    """Return the half days on which a crew works."""
    return _bar(schedule, schedule.half_days_of(crew), WORKS)


def out_of_service(schedule: Schedule) -> str:
    """Return the half days on which no drain may be used."""
    return _bar(schedule, schedule.half_days_off, OFF)


def _bar(schedule: Schedule, halves: tuple[int, ...], mark: str) -> str:
    return "".join(mark if n in halves else FREE for n in range(2 * days_of(schedule)))

"""An option's schedule in, a bar for each crew out: two letters a day, so that bars stand under their days in letters of one width."""

from math import ceil

from estimator.model.schedule import Schedule

WORKS, OFF, FREE = "█", "▒", "·"
"""A half day a crew is there; a half day no drain may be used; a half day without."""
SHORT_H = 0.25
"""Hours that make no half day."""


def days_of(schedule: Schedule) -> int:
    """Return how many days the bars are long."""
    return ceil(schedule.days_on_site)


def head(schedule: Schedule) -> str:
    """Return the days' numbers, each over its two letters."""
    return "".join(f"{day:<2}" if day < 100 else "  " for day in range(1, days_of(schedule) + 1))


def bar(schedule: Schedule, crew: str) -> str:
    """Return the half days on which a crew works."""
    half = schedule.day_hours / 2
    mine = [t for t in schedule.tasks if t.crew == crew]
    there = (
        any(t.start < (n + 1) * half - SHORT_H and t.end > n * half + SHORT_H for t in mine)
        for n in range(2 * days_of(schedule))
    )
    return "".join(WORKS if works else FREE for works in there)


def out_of_service(schedule: Schedule) -> str:
    """Return the half days on which no drain may be used."""
    out = [FREE] * (2 * days_of(schedule))
    for span in schedule.calendar:
        if span.no_drains:
            for half in range(int(span.start * 2), int((span.start + span.length) * 2)):
                out[half] = OFF
    return "".join(out)

"""What has to come in before the first day, and the dates of the working days."""

from collections.abc import Sequence
from datetime import date, timedelta
from math import ceil

from estimator.model.frozen import Frozen
from estimator.model.say import Say
from estimator.model.schedule import Lead, Schedule
from estimator.model.work import Takeoff
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

SATURDAY = 5


class Dated(Frozen, kw_only=True):
    """A schedule on the calendar: the date of each site day, in order."""

    schedule: Schedule
    days: tuple[date, ...]

    def on(self, day: int) -> date:
        """The date of a site day, from 1. Errors: IndexError beyond the last."""
        return self.days[day - 1]


def leads_of(takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None) -> tuple[Lead, ...]:
    """What is asked for before the work and how many working days each usually takes; the firm's settings `lead_…`.

    Nobody works while the homeowner may cancel, which is until midnight of the last of those days (16 CFR 429.1; check with
    your lawyer): the first working day is the one after it.
    """

    def asked(*names: str) -> bool:
        return any(t.value(name) for t in takeoffs for name in names)

    dug = any(o.opens_ground for t in takeoffs for o in t.works.openings)
    known = (
        (place is not None and bool(place.cancel_business_days), Say.of("cancellation period"), ""),
        (asked("permits"), Say.of("the city's permit"), "lead_permit_days"),
        (dug, Say.of("marks of buried lines on the ground (call 811)"), "lead_locate_days"),
        (asked("engineer_letters"), Say.of("the engineer's letter"), "lead_engineer_days"),
        (asked("asbestos_tests"), Say.of("the laboratory"), "lead_lab_days"),
        (asked("liner_ft", "sectional_pieces"), Say.of("the lining, cut and delivered"), "lead_liner_days"),
    )
    cancel = place.cancel_business_days + 1 if place is not None and place.cancel_business_days else 0
    return tuple(
        Lead(what=what, working_days=int(tables.number(key)) if key else cancel) for there, what, key in known if there
    )


def dated(schedule: Schedule, first: date, *, saturdays: bool = False) -> Dated:
    """Return the schedule with the date of each site day, from the first working day on or after `first`.

    Working days are Monday to Friday (and Saturday where the firm works then) except federal holidays as observed.
    """
    from holidays import country_holidays

    free = country_holidays("US", years=(first.year, first.year + 1), observed=True)
    days: list[date] = []
    day = first
    while len(days) < ceil(schedule.days_on_site):
        if (day.weekday() < SATURDAY or (saturdays and day.weekday() == SATURDAY)) and day not in free:
            days.append(day)
        day += timedelta(days=1)
    return Dated(schedule=schedule, days=tuple(days))

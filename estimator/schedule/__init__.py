"""The schedule: who does what on which day. `schedule_of(takeoffs, tasks, set_ups, tables, place) -> Schedule`."""

from estimator.schedule.dates import dated, leads_of
from estimator.schedule.schedule import days_dug, days_off, dug_on, schedule_of

__all__ = ["dated", "days_dug", "days_off", "dug_on", "leads_of", "schedule_of"]

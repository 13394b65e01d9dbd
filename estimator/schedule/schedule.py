"""A scope's takeoffs and the hours of its tasks in, its Schedule out."""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from estimator.model.half_days import Clock
from estimator.model.money import exact
from estimator.model.price import TaskHours
from estimator.model.say import Say
from estimator.model.schedule import Risk, Schedule, Task
from estimator.model.steps import LATER
from estimator.model.work import Takeoff
from estimator.schedule.dates import leads_of
from estimator.schedule.placing import least_hours, placed, spans_of
from estimator.schedule.plan import plan_of, without_later
from estimator.schedule.work_plan import Plan
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables


def schedule_of(
    takeoffs: Sequence[Takeoff],
    tasks: Sequence[TaskHours],
    set_ups: Mapping[str, float],
    tables: Tables,
    place: PlaceRow | None,
) -> Schedule:
    """Return the tasks on their days. `tasks` are the hours of the scope's work, `set_ups` hours of set-up a day by crew.

    Crews work side by side where the order allows. Errors: ValueError where tasks wait for one another in a ring.
    """
    day = tables.number("crew_day_hours")
    plan = plan_of(takeoffs, tasks, tables)
    done = placed(plan, set_ups, day)
    return Schedule(
        tasks=done.tasks,
        waits=done.waits,
        leads=leads_of(takeoffs, tables, place),
        risks=_risks(takeoffs, tables),
        day_hours=day,
        tolerance_hours=tables.number("crew_tolerance_hours"),
        least_hours=least_hours(without_later(plan), set_ups, day),
    )


def days_off(plan: Plan, set_ups: Mapping[str, float], tables: Tables) -> float:
    """Return the days on which no drain may be used, as the schedule has them, without making it."""
    day = tables.number("crew_day_hours")
    spans = spans_of(plan, set_ups, day)
    off = [t.id for t in plan.tasks if t.drains_off] + [w.id for w in plan.waits if w.drains_off]
    end = max((spans[t.id][1] for t in plan.tasks if t.step != LATER), default=0.0)
    clock = Clock(day, tables.number("crew_tolerance_hours"), end)
    return float(clock.days_off([spans[name] for name in off]))


def days_dug(plan: Plan, set_ups: Mapping[str, float], tables: Tables) -> Mapping[str, tuple[int, ...]]:
    """Return the site days on which each repair that digs does so or fills, as the schedule has them, without making it."""
    day = tables.number("crew_day_hours")
    spans = spans_of(plan, set_ups, day)
    clock = Clock(day, tables.number("crew_tolerance_hours"), 0.0)
    return dug_on([(t, *spans[t.id]) for t in plan.tasks], clock)


def dug_on(tasks: Sequence[tuple[Task, float, float]], clock: Clock) -> Mapping[str, tuple[int, ...]]:
    """The same of tasks with their start and end, hours; the last is the day at whose end a repair is filled."""
    dug: dict[str, set[int]] = {t.repair: set() for t, _, _ in tasks if t.step == "dig"}
    filled = dict.fromkeys(dug, 0.0)
    for task, start, end in tasks:
        if task.repair in dug and task.step != "close":
            filled[task.repair] = max(end, filled[task.repair])
            if task.step in ("dig", "fill"):
                dug[task.repair] |= set(range(clock.day_at_start(start), clock.day_at_end(end) + 1))
    return {name: tuple(sorted(days | {clock.day_at_end(filled[name])})) for name, days in dug.items()}


def _risks(takeoffs: Sequence[Takeoff], tables: Tables) -> tuple[Risk, ...]:
    """Rain where ground lies open to the sky, and an inspector who asks for more where one comes."""
    out = []
    if any(o.opens_ground for t in takeoffs for o in t.works.openings):
        out.append(Risk(what=Say.of("a day of rain"), days=_days(tables, "rain_moves_days")))
    if any(t.value("inspections") for t in takeoffs):
        out.append(
            Risk(what=Say.of("an inspection that has to be repeated"), days=_days(tables, "inspection_moves_days"))
        )
    return tuple(out)


def _days(tables: Tables, key: str) -> Decimal:
    return exact(tables.number(key))

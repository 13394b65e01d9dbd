"""Tasks and waits with their order in; the same with a start and an end out: a list scheduler over the critical path.

Each crew does one thing at a time and works from its set-up in the morning to the end of its day; a task goes on the next
morning where the day ends. Of the tasks that could begin soonest the one with the most work behind it goes first. Work
with the drains off is then moved as late as it can go without moving the end, so that the drains are off in one piece.
`least_hours` is what no order can beat: the longest chain of waits, and each crew's own work with what leads to it and
follows it. Where the two agree the schedule is exact.
"""

import math
from collections.abc import Mapping

from estimator.model.frozen import replace
from estimator.model.half_days import DUST
from estimator.model.remembered import remembered
from estimator.model.schedule import Task
from estimator.model.steps import LATER
from estimator.schedule.work_plan import Plan


class Days:
    """Working hours of the crews: from the end of set-up to the end of the day."""

    def __init__(self, set_ups: Mapping[str, float], day_hours: float) -> None:
        self.set_ups, self.day = set_ups, day_hours

    def _set_up(self, crew: str) -> float:
        return self.set_ups.get(crew, 0.0)

    def of(self, task: Task, hour: float) -> float:
        """From when a task may be done that could begin here: a second visit takes a day of its own."""
        return math.ceil((hour - DUST) / self.day) * self.day if task.step == LATER else hour

    def opens(self, crew: str, hour: float) -> float:
        """The next hour from here at which the crew can work."""
        day = math.floor((hour + DUST) / self.day)
        return max(hour, day * self.day + self._set_up(crew))

    def end(self, crew: str, start: float, hours: float) -> float:
        """When so many hours of work are done that begin at `start`."""
        at, left = self.opens(crew, start), hours
        while True:
            room = (math.floor((at + DUST) / self.day) + 1) * self.day - at
            if left <= room + DUST:
                return at + left
            left -= room
            at = self.opens(crew, at + room)

    def start(self, crew: str, end: float, hours: float) -> float:
        """The latest start of so many hours of work that are done by `end`."""
        at, left = end, hours
        while True:
            day = math.ceil((at - DUST) / self.day) - 1
            opened = day * self.day + self._set_up(crew)
            room = at - opened
            if room < 0:
                at = day * self.day
                continue
            if left <= room + DUST:
                return at - left
            left -= max(0.0, room)
            at = day * self.day


Span = tuple[float, float]
"""From which hour to which, in hours of site days."""


def placed(plan: Plan, set_ups: Mapping[str, float], day_hours: float) -> Plan:
    """Every task and wait with its start and end. Errors: ValueError where tasks wait for one another in a ring."""
    spans = spans_of(plan, set_ups, day_hours)
    tasks = [
        replace(t, waits_for=tuple(plan.before[t.id]), start=spans[t.id][0], end=spans[t.id][1]) for t in plan.tasks
    ]
    waits = [replace(w, start=spans[w.id][0], end=spans[w.id][1]) for w in plan.waits]
    rank = {name: n for n, name in enumerate(spans)}
    tasks.sort(key=lambda t: (t.start, t.end, rank[t.id]))
    return replace(plan, tasks=tuple(tasks), waits=tuple(waits))


@remembered
def spans_of(plan: Plan, set_ups: Mapping[str, float], day_hours: float) -> Mapping[str, Span]:
    """When each task and wait begins and ends, by id, in the order in which they were placed. Errors: as `placed`."""
    days = Days(set_ups, day_hours)
    tails = plan.tails
    left = {name: {i for i in plan.before[name] if i in tails} for name in tails}
    tasks, waits = {t.id: t for t in plan.tasks}, {w.id for w in plan.waits}
    soonest = dict.fromkeys(tails, 0.0)
    free: dict[str, float] = {}
    spans: dict[str, Span] = {}

    def start_of(name: str) -> float:
        crew = tasks[name].crew
        return days.opens(crew, max(free.get(crew, 0.0), days.of(tasks[name], soonest[name])))

    ready = [name for name in tails if not left[name]]
    while ready:
        chosen = next((name for name in ready if name in waits), "")
        if chosen:
            start = soonest[chosen]
            end = start + plan.hours[chosen]
        else:
            start, _, chosen = min([(start_of(name), -tails[name], name) for name in ready])
            crew = tasks[chosen].crew
            end = free[crew] = days.end(crew, start, plan.hours[chosen])
        spans[chosen] = start, end
        ready.remove(chosen)
        for name in plan.after[chosen]:
            left[name].discard(chosen)
            soonest[name] = max(soonest[name], end)
            if not left[name]:
                ready.append(name)
    _late(plan, spans, days)
    return spans


def _late(plan: Plan, spans: dict[str, Span], days: Days) -> None:
    """Work with the drains off as late as the rest lets it; the inspector comes when the wait is over."""
    by_id = {t.id: t for t in plan.tasks}
    tasks = [by_id[name] for name in spans if name in by_id]
    end = max((spans[t.id][1] for t in tasks), default=0.0)
    for task in sorted(tasks, key=lambda t: -spans[t.id][1]):
        if not task.drains_off or task.step == "inspect":
            continue
        began, ended = spans[task.id]
        after = [spans[name][0] for name in plan.after[task.id]]
        same_crew = [
            spans[t.id][0] for t in tasks if t.crew == task.crew and t.id != task.id and spans[t.id][0] >= ended - DUST
        ]
        latest = min((*after, *same_crew), default=end if not after else ended)
        if latest > ended + DUST:
            start = days.start(task.crew, latest, plan.hours[task.id])
            if start > began + DUST:
                spans[task.id] = start, days.end(task.crew, start, plan.hours[task.id])


def least_hours(plan: Plan, set_ups: Mapping[str, float], day_hours: float) -> float:
    """The hour before which no order of this work can end.

    The longest chain, and for each crew its shortest way in, all its work, and the shortest way from it to the end.
    """
    days = Days(set_ups, day_hours)
    tails = plan.tails
    tasks, waits = {t.id: t for t in plan.tasks}, {w.id: w for w in plan.waits}
    heads: dict[str, float] = {}

    def ready(name: str) -> float:
        return max((head(i) for i in plan.before[name] if i in tails), default=0.0)

    def head(name: str) -> float:
        """The soonest end if no crew were ever busy."""
        if name not in heads:
            one = tasks.get(name)
            heads[name] = (
                ready(name) + waits[name].hours if one is None else days.end(one.crew, ready(name), plan.hours[name])
            )
        return heads[name]

    chain = max((head(name) for name in tails), default=0.0)
    loads = []
    for crew in {t.crew for t in plan.tasks}:
        mine = [t for t in plan.tasks if t.crew == crew]
        soonest = min(ready(t.id) for t in mine)
        follow = min(tails[t.id] - plan.hours[t.id] for t in mine)
        loads.append(days.end(crew, soonest, sum(plan.hours[t.id] for t in mine)) + follow)
    return max([chain, *loads])

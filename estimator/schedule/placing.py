"""Tasks and waits with their order in; the same with a start and an end out: a list scheduler over the critical path.

Each crew does one thing at a time and works from its set-up in the morning to the end of its day; a task goes on the next
morning where the day ends. Of the tasks that could begin soonest the one with the most work behind it goes first. Work
with the drains off is then moved as late as it can go without moving the end, so that the drains are off in one piece.
`least_hours` is what no order can beat: the longest chain of waits, and each crew's own work with what leads to it and
follows it. Where the two agree the schedule is exact.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

from estimator.model.remembered import remembered
from estimator.model.schedule import DUST, Task, Wait
from estimator.schedule.plan import Plan


class Days:
    """Working hours of the crews: from the end of set-up to the end of the day."""

    def __init__(self, set_ups: Mapping[str, float], day_hours: float) -> None:
        self.set_ups, self.day = set_ups, day_hours

    def _set_up(self, crew: str) -> float:
        return self.set_ups.get(crew, 0.0)

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


def length(task: Task) -> float:
    """Hours on the clock: gangs share it."""
    return task.crew_hours / task.gangs


def placed(plan: Plan, set_ups: Mapping[str, float], day_hours: float) -> Plan:
    """Every task and wait with its start and end. Errors: ValueError where tasks wait for one another in a ring."""
    days = Days(set_ups, day_hours)
    tails = _tails(plan)
    done: dict[str, float] = {}
    free: dict[str, float] = {}
    tasks: dict[str, Task] = {}
    waits: dict[str, Wait] = {}
    open_tasks = {t.id: t for t in plan.tasks}
    open_waits = {w.id: w for w in plan.waits}
    there = open_tasks.keys() | open_waits.keys()
    every: tuple[Task | Wait, ...] = (*plan.tasks, *plan.waits)
    before = {one.id: [i for i in one.waits_for if i in there] for one in every}

    def ready(one: Task | Wait) -> bool:
        return all(i in done for i in before[one.id])

    def soonest(one: Task | Wait) -> float:
        return max((done[i] for i in before[one.id]), default=0.0)

    while open_tasks or open_waits:
        for wait in [w for w in open_waits.values() if ready(w)]:
            start = soonest(wait)
            waits[wait.id] = replace(wait, start=start, end=start + wait.hours)
            done[wait.id] = start + wait.hours
            del open_waits[wait.id]
        now = [t for t in open_tasks.values() if ready(t)]
        if not now:
            if open_tasks and not any(ready(w) for w in open_waits.values()):
                raise ValueError(f"these wait for one another: {', '.join(sorted(open_tasks))}")
            continue
        starts = {t.id: days.opens(t.crew, max(free.get(t.crew, 0.0), soonest(t))) for t in now}
        chosen = min(now, key=lambda t: (starts[t.id], -tails[t.id], t.id))
        end = days.end(chosen.crew, starts[chosen.id], length(chosen))
        tasks[chosen.id] = replace(chosen, start=starts[chosen.id], end=end)
        done[chosen.id] = free[chosen.crew] = end
        del open_tasks[chosen.id]
    late = _late(list(tasks.values()), list(waits.values()), days)
    return Plan(tasks=tuple(sorted(late, key=lambda t: (t.start, t.end))), waits=tuple(waits.values()))


def _late(tasks: Sequence[Task], waits: Sequence[Wait], days: Days) -> list[Task]:
    """Work with the drains off, and what it alone leads to, as late as the rest lets it."""
    now = {t.id: t for t in tasks}
    starts_of_waits = {w.id: w.start for w in waits}
    end = max((t.end for t in tasks), default=0.0)
    for task in sorted(tasks, key=lambda t: -t.end):
        if not task.drains_off:
            continue
        followers = [t.start for t in now.values() if task.id in t.waits_for]
        followers += [starts_of_waits[w.id] for w in waits if task.id in w.waits_for]
        same_crew = [
            t.start for t in now.values() if t.crew == task.crew and t.id != task.id and t.start >= task.end - DUST
        ]
        latest = min((*followers, *same_crew), default=end if not followers else task.end)
        if latest > task.end + DUST:
            start = days.start(task.crew, latest, length(task))
            if start > task.start + DUST:
                now[task.id] = replace(task, start=start, end=days.end(task.crew, start, length(task)))
    return list(now.values())


@remembered
def _tails(plan: Plan) -> dict[str, float]:
    """Hours of the longest chain from the start of each task or wait to the end."""
    everything: dict[str, Task | Wait] = {t.id: t for t in plan.tasks} | {w.id: w for w in plan.waits}
    after: dict[str, list[str]] = {}
    for one in everything.values():
        for earlier in one.waits_for:
            after.setdefault(earlier, []).append(one.id)
    known: dict[str, float] = {}

    def tail(name: str, path: frozenset[str]) -> float:
        if name in path:
            raise ValueError(f"{name} waits for itself")
        if name not in known:
            one = everything[name]
            own = one.hours if isinstance(one, Wait) else length(one)
            known[name] = own + max((tail(n, path | {name}) for n in after.get(name, ())), default=0.0)
        return known[name]

    return {name: tail(name, frozenset()) for name in everything}


def least_hours(plan: Plan, set_ups: Mapping[str, float], day_hours: float) -> float:
    """The hour before which no order of this work can end.

    The longest chain, and for each crew its shortest way in, all its work, and the shortest way from it to the end.
    """
    days = Days(set_ups, day_hours)
    tails = _tails(plan)
    everything: dict[str, Task | Wait] = {t.id: t for t in plan.tasks} | {w.id: w for w in plan.waits}
    heads: dict[str, float] = {}

    def head(name: str) -> float:
        """The soonest end if no crew were ever busy."""
        if name not in heads:
            one = everything[name]
            ready = max((head(i) for i in one.waits_for if i in everything), default=0.0)
            heads[name] = ready + one.hours if isinstance(one, Wait) else days.end(one.crew, ready, length(one))
        return heads[name]

    chain = max((head(name) for name in everything), default=0.0)
    loads = []
    for crew in {t.crew for t in plan.tasks}:
        mine = [t for t in plan.tasks if t.crew == crew]
        soonest = min(max((head(i) for i in t.waits_for if i in everything), default=0.0) for t in mine)
        follow = min(tails[t.id] - length(t) for t in mine)
        loads.append(days.end(crew, soonest, sum(length(t) for t in mine)) + follow)
    return max([chain, *loads])

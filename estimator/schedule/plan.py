"""Takeoffs of a scope and the hours of its tasks in; tasks and waits with their order, not yet placed on days, out."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from estimator.model.price import TaskHours
from estimator.model.say import Say
from estimator.model.schedule import Task, Wait
from estimator.model.steps import LATER, OPENING_STEPS, STEPS
from estimator.model.work import JOB, Takeoff
from estimator.schedule.order import IN_PARTS, drains_off, step_of
from estimator.tables.tables import Tables

INSPECTOR = "inspector"
LATE_STEPS = ("film", "inspect", "fill", "close", "return")
"""Steps of the job that follow all work on the pipe; its other work on the pipe goes with that."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """What has to be placed."""

    tasks: tuple[Task, ...]
    waits: tuple[Wait, ...]


def plan_of(takeoffs: Sequence[Takeoff], hours: Sequence[TaskHours], tables: Tables) -> Plan:
    """One task for each repair, step and crew, long openings in parts; what each waits for.

    In a repair each step waits for the one before it. The job's own first steps come before all repairs; the video, and
    the inspector's visit where pipe may not be covered before it, after all pipe; every fill after the visit.
    """
    repairs = {t.repair.id: t for t in takeoffs}
    grouped = _grouped(hours, tables)
    gangs = gangs_of(tables)
    tasks: list[Task] = []
    for name, steps in grouped.items():
        if name in repairs and repairs[name].repair.method != JOB:
            tasks += _repair(repairs[name], steps, gangs, tables)
    own = _repair_tasks_of_job(takeoffs, grouped, gangs)
    return _joined(tasks, own, takeoffs, tables)


Steps = dict[str, dict[str, list[TaskHours]]]


def without_later(plan: Plan) -> Plan:
    """The plan less visits long after the rest, which hold nobody up."""
    kept = tuple(t for t in plan.tasks if t.step != LATER)
    return plan if len(kept) == len(plan.tasks) else replace(plan, tasks=kept)


def _grouped(hours: Sequence[TaskHours], tables: Tables) -> dict[str, Steps]:
    """Tasks by repair, step and crew."""
    out: dict[str, Steps] = {}
    for task in hours:
        if task.hours <= 0:
            continue
        try:
            step = step_of(tables.work_item(task.work_item))
        except KeyError:
            step = "pipe"
        out.setdefault(task.repair, {}).setdefault(step, {}).setdefault(task.crew, []).append(task)
    return out


def gangs_of(tables: Tables) -> Mapping[str, int]:
    """How many of each crew can work side by side on a long job: setting `crews_at_once`, "labor 2, tunnel 1"; else one."""
    try:
        words = tables.text("crews_at_once")
    except KeyError:
        return {}
    pairs = (part.rsplit(" ", 1) for part in words.split(",") if part.strip())
    return {name.strip(): max(1, int(count)) for name, count in pairs}


def _repair(takeoff: Takeoff, steps: Steps, gangs: Mapping[str, int], tables: Tables) -> list[Task]:
    method, name = takeoff.repair.method, takeoff.repair.id
    parts = _parts(takeoff, steps, tables)
    out: list[Task] = []
    before: tuple[str, ...] = ()
    for step in STEPS:
        if step not in steps or (step in IN_PARTS and parts > 1):
            if step == IN_PARTS[-1] and parts > 1:
                made = _in_parts(name, method, steps, parts, before, gangs)
                out += made
                before = tuple(t.id for t in made if t.step == "pipe") or tuple(t.id for t in made)
            continue
        made = _side_by_side(name, method, step, steps[step], before, gangs)
        out += made
        before = tuple(t.id for t in made)
    return out


def _parts(takeoff: Takeoff, steps: Steps, tables: Tables) -> int:
    """In how many lengths crews follow one another: one where nothing long is dug, or nobody waits for another."""
    if not (OPENING_STEPS & steps.keys()) or "pipe" not in steps:
        return 1
    return max(1, math.ceil(takeoff.repair.stretch.length_ft / tables.number("slab_open_ft_per_day") - 1e-9))


def _side_by_side(
    name: str,
    method: str,
    step: str,
    crews: Mapping[str, list[TaskHours]],
    before: tuple[str, ...],
    gangs: Mapping[str, int],
) -> list[Task]:
    """The crews of one step beside each other; all wait for the step before."""
    return [
        Task(
            id=f"{name}/{step}/{crew}",
            repair=name,
            method=method,
            step=step,
            crew=crew,
            crew_hours=sum(t.hours for t in tasks),
            items=tuple(dict.fromkeys(t.task for t in tasks)),
            waits_for=before,
            drains_off=drains_off(step, method),
            gangs=gangs.get(crew, 1),
        )
        for crew, tasks in crews.items()
    ]


def _in_parts(
    name: str, method: str, steps: Steps, parts: int, before: tuple[str, ...], gangs: Mapping[str, int]
) -> list[Task]:
    """Part after part: each part's step waits for the step before it there and for the same step in the part before."""
    out: list[Task] = []
    last: dict[str, tuple[str, ...]] = {}
    for part in range(1, parts + 1):
        here = before
        for step in IN_PARTS:
            if step not in steps:
                continue
            waits = tuple(dict.fromkeys((*here, *last.get(step, ()))))
            made = [
                replace(t, id=f"{t.id}/{part}", crew_hours=t.crew_hours / parts, part=part, parts=parts)
                for t in _side_by_side(name, method, step, steps[step], waits, gangs)
            ]
            out += made
            here = last[step] = tuple(t.id for t in made)
    return out


def _repair_tasks_of_job(
    takeoffs: Sequence[Takeoff], grouped: Mapping[str, Steps], gangs: Mapping[str, int]
) -> list[Task]:
    jobs = {t.repair.id for t in takeoffs if t.repair.method == JOB}
    named = {t.repair.id for t in takeoffs}
    loose = [name for name in grouped if name in jobs or name not in named]
    return [
        task
        for name in loose
        for step, crews in grouped[name].items()
        for task in _side_by_side(name, JOB, step, crews, (), gangs)
    ]


def _joined(tasks: list[Task], own: list[Task], takeoffs: Sequence[Takeoff], tables: Tables) -> Plan:
    """The job's own tasks hung before, beside and after those of the repairs."""
    site = [t for t in own if t.step == "site"]
    look = [_after(t, site) for t in own if t.step == "look"]
    start = look or site
    tasks = [t if t.waits_for else _after(t, start) for t in tasks]
    tasks = _first_things_first(tasks, takeoffs)
    between = [t for t in own if t.step not in ("site", "look", *LATE_STEPS)]
    opened = tasks_of(tasks, ("uncover", "open", "dig"))
    middle = [_after(_after(t, start), opened if t.step in ("pipe", "join", "test") else ()) for t in between]
    pipe = tasks_of([*tasks, *middle], ("clean", "pipe", "join", "test", "look")) or start
    visits = [t for t in own if t.step == "inspect"]
    waits: list[Wait] = []
    if visits:
        tested = tasks_of([*tasks, *middle], ("pipe", "join", "test")) or start
        waits = [
            Wait(
                id=INSPECTOR,
                why=Say.of("waiting for the inspector"),
                hours=tables.number("inspection_wait_h"),
                waits_for=tuple(t.id for t in tested),
            )
        ]
        visits = [replace(t, waits_for=(INSPECTOR,)) for t in visits]
        tasks = [_after(t, visits) if t.step in ("fill", "close") else t for t in tasks]
    last = visits or pipe
    after = [_after(t, last) for t in own if t.step in ("film", "fill", "close")]
    done = [*site, *look, *tasks, *middle, *visits, *after]
    later = [_after(t, done) for t in own if t.step == LATER]
    return Plan(tasks=(*done, *later), waits=tuple(waits))


def tasks_of(tasks: Sequence[Task], steps: Sequence[str]) -> list[Task]:
    return [t for t in tasks if t.step in steps]


def _after(task: Task, others: Sequence[Task]) -> Task:
    more = (t.id for t in others if t.id != task.id)
    waits_for = tuple(dict.fromkeys((*task.waits_for, *more)))
    return task if waits_for == task.waits_for else replace(task, waits_for=waits_for)


def _first_things_first(tasks: list[Task], takeoffs: Sequence[Takeoff]) -> list[Task]:
    """A repair with others before it cleans and lines only when their pipe is in."""
    before = {t.repair.id: {first.id for first in t.repair.first} for t in takeoffs if t.repair.first}
    out = []
    for task in tasks:
        firsts = before.get(task.repair, set())
        own_first = task.step in ("clean", "pipe") and firsts
        out.append(_after(task, [t for t in tasks if t.repair in firsts and t.step == "pipe"]) if own_first else task)
    return out

"""Takeoffs of a scope and the hours of its tasks in; tasks and waits with their order, not yet placed on days, out."""

import math
from collections.abc import Mapping, Sequence

from estimator.model.frozen import replace
from estimator.model.price import TaskHours
from estimator.model.remembered import remembered
from estimator.model.say import Say
from estimator.model.schedule import Task, Wait
from estimator.model.steps import LATER, OPENING_STEPS, STEPS
from estimator.model.work import JOB, Takeoff
from estimator.schedule.order import IN_PARTS, Order, drains_off, step_of, tasks_of
from estimator.schedule.work_plan import Plan
from estimator.tables.tables import Tables
from estimator.works.methods import known

INSPECTOR = "inspector"
LATE_STEPS = ("film", "inspect", "fill", "close", "return")
"""Steps of the job that follow all work on the pipe; its other work on the pipe goes with that."""


def plan_of(takeoffs: Sequence[Takeoff], hours: Sequence[TaskHours], tables: Tables) -> Plan:
    """One task for each repair, step and crew, long openings in parts; what each waits for.

    In a repair each step waits for the one before it. The job's own first steps come before all repairs; the video, and
    the inspector's visit where pipe may not be covered before it, after all pipe; every fill after the visit. Where a
    water test is shown, the pipe is plugged and full until the inspector has seen it.
    """
    repairs = {t.repair.id: t for t in takeoffs}
    by_repair: dict[str, list[TaskHours]] = {}
    for task in hours:
        if task.hours > 0:
            by_repair.setdefault(task.repair, []).append(task)
    tasks: list[Task] = []
    own: list[Task] = []
    for name, mine in by_repair.items():
        if name in repairs and repairs[name].repair.method != JOB:
            tasks += _repair(repairs[name], tables, *mine)
        else:
            own += _of_the_job(tables, *mine)
    return _joined(tasks, own, takeoffs, tables)


Steps = dict[str, dict[str, list[TaskHours]]]


def without_later(plan: Plan) -> Plan:
    """The plan less visits long after the rest, which hold nobody up."""
    kept = tuple(t for t in plan.tasks if t.step != LATER)
    return plan if len(kept) == len(plan.tasks) else replace(plan, tasks=kept)


def _grouped(hours: Sequence[TaskHours], tables: Tables) -> Steps:
    """The tasks of one repair by step and crew."""
    out: Steps = {}
    for task in hours:
        try:
            step = step_of(tables.work_item(task.work_item))
        except KeyError:
            step = "pipe"
        out.setdefault(step, {}).setdefault(task.crew, []).append(task)
    return out


@remembered
def gangs_of(tables: Tables) -> Mapping[str, int]:
    """How many of each crew can work side by side on a long job: setting `crews_at_once`, "labor 2, tunnel 2"; else one."""
    try:
        words = tables.text("crews_at_once")
    except KeyError:
        return {}
    pairs = (part.rsplit(" ", 1) for part in words.split(",") if part.strip())
    return {name.strip(): max(1, int(count)) for name, count in pairs}


@remembered
def _repair(takeoff: Takeoff, tables: Tables, *hours: TaskHours) -> list[Task]:
    """The tasks of one repair, each after those before it there."""
    method, name = takeoff.repair.method, takeoff.repair.id
    steps, gangs = _grouped(hours, tables), _at_the_faces(takeoff, gangs_of(tables))
    parts = _parts(takeoff, steps, tables)
    record = known(method)
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
    words, under = record.at_the_pipe if record else None, bool(takeoff.works.tunnels)
    return [replace(t, at_the_pipe=words, below=under and t.step != "close") for t in out]


def _at_the_faces(takeoff: Takeoff, gangs: Mapping[str, int]) -> Mapping[str, int]:
    """No more gangs in a tunnel than it has pits to begin from: one face has room for one."""
    if not takeoff.works.tunnels:
        return gangs
    faces = max(1, round(takeoff.value("pits")))
    return {crew: min(count, faces) for crew, count in gangs.items()}


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


@remembered
def _of_the_job(tables: Tables, *hours: TaskHours) -> list[Task]:
    """What is done once, not yet hung on anything."""
    return [
        task
        for step, crews in _grouped(hours, tables).items()
        for task in _side_by_side(hours[0].repair, JOB, step, crews, (), gangs_of(tables))
    ]


def _joined(tasks: list[Task], own: list[Task], takeoffs: Sequence[Takeoff], tables: Tables) -> Plan:
    """The job's own tasks hung before, beside and after those of the repairs."""
    order = Order((*tasks, *own))
    site, look = tasks_of(own, ("site",)), tasks_of(own, ("look",))
    order.after(look, site)
    start = look or site
    order.after([t for t in tasks if not t.waits_for], start)
    _first_things_first(order, tasks, takeoffs)
    between = [t for t in own if t.step not in ("site", "look", *LATE_STEPS)]
    order.after(between, start)
    order.after(tasks_of(between, ("pipe", "join")), tasks_of(tasks, ("uncover", "open", "dig")))
    _filled_at_once(order, tasks, between, takeoffs)
    pipe = tasks_of([*tasks, *between], ("clean", "pipe", "join", "test", "look")) or start
    visits = tasks_of(own, ("inspect",))
    tested = tasks_of([*tasks, *between], ("pipe", "join", "test")) or start
    full = any(t.step == "test" and t.drains_off for t in tested)
    visits = [replace(t, drains_off=full) for t in visits]
    waits = _inspector(order, visits, tested, full, tables)
    order.after(tasks_of(tasks, ("fill", "close")), visits)
    ending = tasks_of(own, ("film", "fill", "close"))
    order.after(ending, visits or pipe)
    done = [*site, *look, *tasks, *between, *visits, *ending]
    later = tasks_of(own, (LATER,))
    order.after(later, done)
    return Plan(tasks=(*done, *later), waits=waits, before=order.before)


def _inspector(
    order: Order, visits: Sequence[Task], tested: Sequence[Task], full: bool, tables: Tables
) -> tuple[Wait, ...]:
    """The wait for the inspector where one comes, with the pipe `full` or not; the visit waits for nothing else."""
    if not visits:
        return ()
    names = tuple(t.id for t in tested)
    hours = tables.number("inspection_wait_h")
    order.before[INSPECTOR] = names
    order.before.update({t.id: (INSPECTOR,) for t in visits})
    why = Say.of("waiting for the inspector")
    return (Wait(id=INSPECTOR, why=why, hours=hours, waits_for=names, drains_off=full),)


def _filled_at_once(order: Order, tasks: Sequence[Task], between: Sequence[Task], takeoffs: Sequence[Takeoff]) -> None:
    """The test of all new pipe comes when the last of it lies, and none of it is covered before."""
    names = {t.repair.id for t in takeoffs if t.filled_with_the_rest}
    new, tests = [t for t in tasks if t.repair in names], tasks_of(between, ("test",))
    order.after(tests, tasks_of([*new, *between], ("pipe", "join")))
    order.after(tasks_of(new, ("fill", "close")), tests)


def _first_things_first(order: Order, tasks: Sequence[Task], takeoffs: Sequence[Takeoff]) -> None:
    """A repair with others before it cleans and lines only when their pipe is in."""
    for takeoff in takeoffs:
        if takeoff.repair.first:
            firsts = {first.id for first in takeoff.repair.first}
            mine = [t for t in tasks if t.repair == takeoff.repair.id and t.step in ("clean", "pipe")]
            order.after(mine, [t for t in tasks if t.repair in firsts and t.step == "pipe"])

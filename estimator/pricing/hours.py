"""Step 1: the labor parts of a scope in; crew-hours of every task, unrounded, out."""

from collections.abc import Iterable, Mapping, Sequence, Set

from estimator.model.price import TaskHours
from estimator.model.remembered import remembered
from estimator.model.say import Say
from estimator.model.work import JOB, Takeoff
from estimator.pricing.parts import Part
from estimator.pricing.problems import cell
from estimator.tables.rows_of_hours import Factor, Production
from estimator.tables.tables import Tables
from estimator.works.methods import known


def task_hours(parts: Iterable[Part], tables: Tables, factor_cap: float) -> tuple[TaskHours, ...]:
    """hours = each × quantity × per × min(cap, Π factors), one record a labor part."""
    return tuple(_task(part, tables, factor_cap) for part in parts if part.recipe.part == "labor")


def _task(part: Part, tables: Tables, factor_cap: float) -> TaskHours:
    row = tables.production(part.ref)
    each = hours_each(row, tables)
    slowed = slowed_by(part.ref, part.facts, tables)
    factor = times(slowed, factor_cap)
    return TaskHours(
        repair=part.repair,
        work_item=part.item.item,
        task=part.ref,
        crew=part.crew,
        quantity_name=part.quantity_name,
        quantity=part.quantity,
        unit=part.unit or row.unit,
        per=part.recipe.per,
        likely=row.likely,
        low=row.low,
        high=row.high,
        each=each,
        factor=factor,
        factors=tuple(slowed),
        hours=each * part.amount * factor,
        cell=cell("production", row, "likely"),
    )


def hours_each(row: Production, tables: Tables) -> float:
    """Crew-hours a unit that prices are built on, by setting `price_expected_hours`: the mean of its triangle, or the likely.

    A bad day takes more from a task than a good day gives, so the likely hour alone is too few on the average job.
    """
    return row.expected if tables.yes("price_expected_hours") else row.likely


def slowed_by(task: str, facts: Set[str], tables: Tables) -> Mapping[str, float]:
    """The facts that slow this task down, each with its multiplier."""
    return {f.fact: f.multiplier for f in _factors_by_task(tables).get(task, ()) if f.fact in facts}


@remembered
def _factors_by_task(tables: Tables) -> Mapping[str, Sequence[Factor]]:
    out: dict[str, list[Factor]] = {}
    for row in tables.factors:
        for task in dict.fromkeys(row.tasks):
            out.setdefault(task, []).append(row)
    return out


def times(slowed: Mapping[str, float], factor_cap: float) -> float:
    """All multipliers together, never more than the cap.

    >>> times({"wet": 1.4, "rock": 3.0}, 3), times({}, 3)
    (3, 1.0)
    """
    factor = 1.0
    for multiplier in slowed.values():
        factor *= multiplier
    return min(factor_cap, factor)


def by_crew(tasks: Iterable[TaskHours]) -> dict[str, float]:
    """Hours of each crew, in the order in which the crews come."""
    hours: dict[str, float] = {}
    for task in tasks:
        hours[task.crew] = hours.get(task.crew, 0.0) + task.hours
    return hours


def facts_by_crew(parts: Iterable[Part]) -> dict[str, frozenset[str]]:
    """What each crew meets anywhere in the scope: its set-up and its rate hang on it."""
    met: dict[str, dict[int, frozenset[str]]] = {}  # the parts of a takeoff have its facts in common
    for part in parts:
        if part.recipe.part == "labor":
            met.setdefault(part.crew, {})[id(part.facts)] = part.facts
    return {crew: frozenset[str]().union(*facts.values()) for crew, facts in met.items()}


ONCE = ("reach",)
"""What comes once a job always has the way to the house in it."""


def always(method: str) -> tuple[str, ...]:
    """Classes of work in which a method has hours on every job (common practice): who digs must also close up."""
    record = known(method)
    return record.hours if record else ONCE if method == JOB else ()


def missing_hours(takeoffs: Sequence[Takeoff], tasks: Iterable[TaskHours], tables: Tables) -> tuple[Say, ...]:
    """One sentence for each class without hours, repair by repair."""
    classes = {item.item: item.work_class for item in tables.work_items}
    there = {(t.repair, classes.get(t.work_item, "")) for t in tasks if t.hours > 0}
    return tuple(
        Say.of("no hours for “{work}” in {method}: look for what is missing", work=work, method=t.repair.method)
        for t in takeoffs
        for work in always(t.repair.method)
        if (t.repair.id, work) not in there
    )

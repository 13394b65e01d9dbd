"""Step 1: the labor parts of a scope in; crew-hours of every task, unrounded, out."""

from collections.abc import Iterable, Mapping

from estimator.model.price import TaskHours
from estimator.pricing.facts import highest_step
from estimator.pricing.parts import Part, of_kind
from estimator.pricing.problems import cell
from estimator.tables.tables import Tables


def task_hours(parts: Iterable[Part], tables: Tables, factor_cap: float) -> tuple[TaskHours, ...]:
    """hours = likely × quantity × per × min(cap, Π factors), one record a labor part."""
    return tuple(_task(part, tables, factor_cap) for part in of_kind(parts, "labor"))


def _task(part: Part, tables: Tables, factor_cap: float) -> TaskHours:
    row = tables.production(part.ref)
    slowed = slowed_by(part.ref, part.facts, tables)
    factor = 1.0
    for multiplier in slowed.values():
        factor *= multiplier
    factor = min(factor_cap, factor)
    return TaskHours(
        repair=part.repair,
        work_item=part.item.item,
        task=part.ref,
        crew=part.recipe.crew or row.crew,
        quantity_name=part.quantity_name,
        quantity=part.quantity,
        unit=part.unit or row.unit,
        per=part.recipe.per,
        likely=row.likely,
        low=row.low,
        high=row.high,
        factor=factor,
        factors=tuple(slowed),
        hours=row.likely * part.amount * factor,
        cell=cell("production", row, "likely"),
    )


def slowed_by(task: str, facts: frozenset[str], tables: Tables) -> Mapping[str, float]:
    """The facts that slow this task down, each with its multiplier; of steps of one measure the highest only."""
    rows = [f for f in tables.factors if f.fact in facts and task in f.tasks]
    names = [f.fact for f in rows]
    return {f.fact: f.multiplier for f in rows if highest_step(f.fact, names)}


def by_crew(tasks: Iterable[TaskHours]) -> dict[str, float]:
    """Hours of each crew, in the order in which the crews come."""
    hours: dict[str, float] = {}
    for task in tasks:
        hours[task.crew] = hours.get(task.crew, 0.0) + task.hours
    return hours

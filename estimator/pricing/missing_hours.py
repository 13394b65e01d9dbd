"""Takeoffs and their hours in; what a method always takes and this scope has no hours for, out: a red line for the office."""

from collections.abc import Iterable, Sequence

from estimator.model.price import TaskHours
from estimator.model.say import Say
from estimator.model.work import JOB, Takeoff
from estimator.tables.tables import Tables
from estimator.works.methods import known

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

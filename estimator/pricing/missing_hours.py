"""Takeoffs and their hours in; what a method always takes and this scope has no hours for, out: a red line for the office."""

from collections.abc import Iterable, Sequence

from estimator.model.price import TaskHours
from estimator.model.say import Say
from estimator.model.work import JOB, Takeoff
from estimator.tables.tables import Tables

DIG = ("reach", "pipe", "put back")
ALWAYS: dict[str, tuple[str, ...]] = {
    JOB: ("reach",),  # mobilising
    "yard spot": DIG,
    "slab spot": DIG,
    "tunnel": DIG,
    "break-through": DIG,
    "trench": DIG,
    "burst": DIG,
    "reline": ("pipe",),
    "sectional liner": ("pipe",),
    "reroute": ("pipe",),
    "crawl replace": ("pipe",),
    "abandon": ("pipe",),
    "clean": ("pipe",),
    "isolation test": ("find",),
    "look and see": ("find",),
    "visit": ("find",),
}
"""Classes of work in which a method has hours on every job (common practice): who digs must also close up."""


def missing_hours(takeoffs: Sequence[Takeoff], tasks: Iterable[TaskHours], tables: Tables) -> tuple[Say, ...]:
    """One sentence for each class without hours, repair by repair."""
    classes = {item.item: item.work_class for item in tables.work_items}
    there = {(t.repair, classes.get(t.work_item, "")) for t in tasks if t.hours > 0}
    return tuple(
        Say.of("no hours for “{work}” in {method}: look for what is missing", work=work, method=t.repair.method)
        for t in takeoffs
        for work in ALWAYS.get(t.repair.method, ())
        if (t.repair.id, work) not in there
    )

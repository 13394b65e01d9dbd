"""Repairs that may be offered in; those of which every line can be sold out, and why the others are not offered."""

from collections.abc import Callable, Iterable

from estimator.model.judgement import Effect, Verdict
from estimator.model.say import Say
from estimator.model.work import Repair, Takeoff
from estimator.pricing.parts import holds
from estimator.tables.rows import WorkItem
from estimator.tables.tables import Tables

RULE = "line-out-of-use"


def sellable(
    repairs: Iterable[Repair], take_off: Callable[[Repair], Takeoff], tables: Tables
) -> tuple[tuple[Repair, ...], tuple[Verdict, ...]]:
    """Without the repairs that need a work item whose row is out of use: they would be sold without its line."""
    off = out_of_use(tables)
    if not off:
        return tuple(repairs), ()
    kept: list[Repair] = []
    against: list[Verdict] = []
    for repair in repairs:
        missing = [item for part in (*repair.first, repair) for item in needed(take_off(part), off)]
        if missing:
            against.append(_against(repair, missing[0]))
        else:
            kept.append(repair)
    return tuple(kept), tuple(dict.fromkeys(against))


def out_of_use(tables: Tables) -> tuple[WorkItem, ...]:
    """Work items none of whose rows is in use, once each."""
    used = {item.item for item in tables.work_items}
    rows = (row for row in tables.rows.get("work_items", ()) if isinstance(row, WorkItem) and row.item not in used)
    return tuple({row.item: row for row in rows}.values())


def needed(takeoff: Takeoff, items: Iterable[WorkItem]) -> tuple[WorkItem, ...]:
    """Those of the items that this takeoff would put on a quote."""
    return tuple(
        item
        for item in items
        if (not item.methods or takeoff.repair.method in item.methods)
        and holds(item.when, takeoff.facts)
        and takeoff.value(item.quantity) > 0
    )


def _against(repair: Repair, item: WorkItem) -> Verdict:
    return Verdict(
        rule=RULE,
        effect=Effect.BLOCKS,
        method=repair.method,
        line=repair.line,
        stretch=repair.stretch,
        homeowner=Say.of("we do not do one part of this work"),
        estimator=Say.of("the work item “{item}” is out of use, and this way needs it", item=item.item),
    )

"""What the checks between tables look up: the names of a table, what a recipe's ref means, the sizes in use."""

from collections.abc import Iterator, Sequence
from typing import Any

from estimator.model.problem import Problem
from estimator.model.remembered import answered_once
from estimator.tables import cell_problems
from estimator.tables.check_view import View
from estimator.tables.rows import PlaceRow, id_of

SETUP_TASK = "daily set-up"
"""The task each crew does on each day; no recipe names it."""

PARTS = {
    "labor": "production",
    "material": "materials",
    "equipment": "equipment",
    "sub": "subs_and_fees",
    "fee": "subs_and_fees",
}
"""Where the ref of a recipe is looked up."""


@answered_once
def ids(view: View, table: str) -> frozenset[str]:
    """Names in use, and those of rows that could not be read: they have a problem of their own already."""
    return view.lost.get(table, frozenset()) | {id_of(table, row) for row in view.tables.current(table)}


def off(view: View, table: str) -> set[str]:
    """Names whose rows say active no."""
    return {id_of(table, row) for row in view.tables.rows[table] if not row.active}


def each(value: Any) -> tuple[str, ...]:
    return value if isinstance(value, tuple) else (value,) if value else ()


def expanded(view: View, ref: str) -> tuple[str, ...]:
    """A ref with {size} filled by every size in use."""
    return tuple(ref.replace("{size}", s) for s in view.sizes()) if "{size}" in ref else (ref,)


Arms = dict[float, float]
"""The longest arm in ft, by the trap's size in inches."""


def trap_arms(written: Sequence[str]) -> Arms:
    """Each part is a trap's size in inches and its longest arm in feet.

    >>> trap_arms(("1.25 5", "1.5 6")), trap_arms(())
    ({1.25: 5.0, 1.5: 6.0}, {})

    Errors: ValueError for a part that is not two numbers above 0, or a size that stands there twice.
    """
    arms: Arms = {}
    for part in written:
        size_in, arm_ft = (float(word) for word in part.split())
        if not (0 < size_in < float("inf") and 0 < arm_ft < float("inf")) or size_in in arms:
            raise ValueError(part)
        arms[size_in] = arm_ft
    return arms


def arms_can_be_read(view: View) -> Iterator[Problem]:
    """Every part of every place's trap arms."""
    for row in view.tables.every(PlaceRow):
        for count, part in enumerate(row.trap_arms, start=1):
            try:
                trap_arms(row.trap_arms[:count])
            except ValueError:
                yield cell_problems.TRAP_ARM(view.at("places", row, "trap_arms"), text=part)
                break

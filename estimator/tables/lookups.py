"""What the checks between tables look up: the names of a table, what a recipe's ref means, the sizes in use."""

from typing import Any

from estimator.model.remembered import answered_once
from estimator.tables.check_view import View
from estimator.tables.rows import id_of

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

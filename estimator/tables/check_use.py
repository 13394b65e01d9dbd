"""Checks of use: units that do not go together, work items made of nothing, rows nothing uses."""

from collections.abc import Iterator, Mapping
from decimal import Decimal

from estimator.model.problem import Problem
from estimator.model.remembered import answered_once
from estimator.tables import problems as p
from estimator.tables.check_view import View
from estimator.tables.lookups import PARTS, SETUP_TASK, expanded
from estimator.tables.rows import TABLES, PlaceRow, Recipe, TableRow, WorkItem, id_of

SAME_KIND = {
    "sq ft": "area",
    "sf": "area",
    "cy": "volume",
    "cu yd": "volume",
    "ft": "length",
    "lf": "length",
    "ton": "weight",
    "gal": "liquid",
}
"""Units that measure; every other unit counts things, and things of any name go together."""


def units(view: View) -> Iterator[Problem]:
    """What is counted one for one is counted in one kind of unit."""
    quantities = view.known.quantities
    if quantities is None:
        return
    items = {item.item: item for item in view.tables.work_items}
    for item in items.values():
        if item.quantity in quantities and not alike(item.unit, quantities[item.quantity]):
            place = view.at("work_items", item, "unit")
            yield p.UNITS(place, ref=item.item, unit=item.unit, quantity=item.quantity, other=quantities[item.quantity])
    for row in view.tables.recipes:
        yield from _recipe_units(view, row, items, quantities)


def _recipe_units(
    view: View, row: Recipe, items: dict[str, WorkItem], quantities: Mapping[str, str]
) -> Iterator[Problem]:
    item = items.get(row.work_item)
    name = row.quantity or (item.quantity if item else "")
    if row.part == "equipment" or Decimal(str(row.per)) != 1 or name not in quantities:
        return
    for ref in expanded(view, row.ref)[:1]:
        unit = getattr(_by_id(view, PARTS[row.part]).get(ref), "unit", None)
        if unit is not None and not alike(unit, quantities[name]):
            yield p.UNITS(view.at("recipes", row, "ref"), ref=ref, unit=unit, quantity=name, other=quantities[name])


@answered_once
def _by_id(view: View, table: str) -> Mapping[str, TableRow]:
    return {id_of(table, row): row for row in view.tables.current(table)}


def alike(one: str, other: str) -> bool:
    """Two units that go together.

    >>> alike("cy", "cu yd"), alike("load", "each"), alike("ft", "sq ft")
    (True, True, False)
    """
    return SAME_KIND.get(one, "count") == SAME_KIND.get(other, "count")


def used(view: View) -> Iterator[Problem]:
    """Work items without a recipe; things no recipe, crew or place names."""
    recipes = view.tables.recipes
    made = {r.work_item for r in recipes} | set(view.lost.get("recipes", ()))
    for item in view.tables.work_items:
        if item.item not in made:
            yield p.NO_RECIPE(view.at("work_items", item, "item"), item=item.item)
    for table, parts in (
        ("materials", {"material"}),
        ("equipment", {"equipment"}),
        ("production", {"labor"}),
        ("subs_and_fees", {"sub", "fee"}),
    ):
        refs = {ref for r in recipes if r.part in parts for ref in expanded(view, r.ref)}
        refs |= {SETUP_TASK} | {fee for place in view.tables.every(PlaceRow) for fee in place.permit_item}
        yield from _unused(view, table, refs, "recipes")
    yield from _unused(view, "roles", {m.role for m in view.tables.crew_members}, "crews")


def _unused(view: View, table: str, refs: set[str], where: str) -> Iterator[Problem]:
    name = TABLES[table][1][0]
    for row in view.tables.current(table) if view.sizes() else ():
        if (item := id_of(table, row)) not in refs:
            yield p.UNUSED(view.at(table, row, name), what=name, item=item, where=where)


USE_CHECKS = (units, used)

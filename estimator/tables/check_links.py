"""Checks between rows and tables: ids that stand twice, references, units that do not go together, rows nothing uses."""

from collections.abc import Iterable, Iterator
from decimal import Decimal
from typing import Any

from estimator.model.problem import Problem
from estimator.tables import problems as p
from estimator.tables.columns import Column, columns
from estimator.tables.near import near, near_or_all
from estimator.tables.rows import HEADERS, TABLES, Kept, Recipe, WorkItem
from estimator.tables.view import View

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


def twice(view: View) -> Iterator[Problem]:
    """Two rows of one name from one day."""
    for table, (_, names) in TABLES.items():
        seen: dict[tuple[object, ...], Kept] = {}
        for row in view.tables.rows.get(table, ()):
            key = (*(getattr(row, n) for n in names), row.starts)
            if key in seen:
                name = ", ".join(_words(getattr(row, n)) for n in names if getattr(row, n))
                yield p.TWICE(view.at(table, row, names[0]), name=name, first=seen[key].cell_row)
            seen.setdefault(key, row)


def _words(value: object) -> str:
    return " ".join(value) if isinstance(value, tuple) else str(value)


def not_yet(view: View) -> Iterator[Problem]:
    """A name all of whose rows begin after the day."""
    for table, (_, names) in TABLES.items():
        first: dict[tuple[object, ...], Kept] = {}
        begun: set[tuple[object, ...]] = set()
        for row in view.tables.rows.get(table, ()):
            key = tuple(getattr(row, n) for n in names)
            if row.starts is None or row.starts <= view.tables.day:
                begun.add(key)
            elif key not in first or row.starts < (first[key].starts or row.starts):
                first[key] = row
        for key, row in first.items():
            if key not in begun:
                name = ", ".join(_words(k) for k in key if k)
                yield p.LATER(view.at(table, row, "starts"), name=name, day=view.tables.day, first=row.starts)


def _ids(view: View, table: str) -> set[str]:
    """Names in use, and those of rows that could not be read: they have a problem of their own already."""
    name = TABLES[table][1][0]
    ids = {str(getattr(row, name)) for row in view.tables.current(table)}
    return ids | set(view.lost.get(table, ()))


def _off(view: View, table: str) -> set[str]:
    """Names whose rows say active no."""
    name = TABLES[table][1][0]
    return {str(getattr(row, name)) for row in view.tables.rows[table] if not row.active}


def references(view: View) -> Iterator[Problem]:
    """Every column that refers to a table names a row of it that is in use."""
    for table in TABLES:
        for column in (c for c in columns(table) if c.refers):
            known = _ids(view, column.refers)
            if column.kind == "words" or (table, column.name) == ("recipes", "work_item"):
                known |= _off(view, column.refers)  # what is out of use is passed over there, and nothing goes unpriced
            if column.refers == "methods":  # a method without a row is named once, not wherever it stands
                known |= set(view.known.methods or ())
            for row in view.tables.current(table):
                for word in _each(getattr(row, column.name)):
                    if word not in known:
                        yield _unknown(view, table, row, column, word, known)


def _each(value: Any) -> tuple[str, ...]:
    return value if isinstance(value, tuple) else (value,) if value else ()


def _unknown(view: View, table: str, row: Kept, column: Column, word: str, known: Iterable[str]) -> Problem:
    place = view.at(table, row, column.name)
    hint = near_or_all(word, sorted(known))
    return p.UNKNOWN(place, column=column.header, text=word, refers=column.refers, near=hint)


def expanded(view: View, ref: str) -> tuple[str, ...]:
    """A ref with {size} filled by every size in use."""
    return tuple(ref.replace("{size}", s) for s in view.sizes()) if "{size}" in ref else (ref,)


def recipe_refs(view: View) -> Iterator[Problem]:
    """Every ref of a recipe stands in its table, in every size."""
    for row in view.tables.recipes:
        table = PARTS[row.part]
        known = _ids(view, table)
        for ref in expanded(view, row.ref):
            if ref not in known:
                hint = near_or_all(ref, sorted(known))
                yield p.UNKNOWN(view.at("recipes", row, "ref"), column="ref", text=ref, refers=table, near=hint)


def crew_time(view: View) -> set[str]:
    """Quantities that follow a crew of the scope: days.B, hours.B."""
    crews = _ids(view, "crews")
    return {f"{measure}.{crew}" for measure in ("days", "hours") for crew in crews}


def places(view: View) -> set[str]:
    """Facts that say where the house stands: place demo."""
    return {f"place {place}" for place in _ids(view, "places")}


def names(view: View) -> Iterator[Problem]:
    """Quantities, facts, methods and settings are names the program knows."""
    known = view.known
    for table, column, kind, words in (
        ("work_items", "quantity", p.UNKNOWN_QUANTITY, known.quantities),
        ("recipes", "quantity", p.UNKNOWN_QUANTITY, known.quantities),
        ("work_items", "when", p.UNKNOWN_FACT, known.facts),
        ("recipes", "when", p.UNKNOWN_FACT, known.facts),
        ("extras", "when", p.UNKNOWN_FACT, known.facts),
        ("terms", "when", p.UNKNOWN_FACT, known.facts),
        ("factors", "fact", p.UNKNOWN_FACT, known.facts),
        ("contingency", "fact", p.UNKNOWN_FACT, known.facts),
        ("methods", "method", p.UNKNOWN_METHOD, known.methods),
    ):
        if words is None:
            continue
        allowed = {"method": {"job"}, "quantity": crew_time(view), "when": places(view)}.get(column, set())
        for row in view.tables.current(table):
            for word in _each(getattr(row, column)):
                bare = word.removeprefix("not ").strip()
                if bare not in words and bare not in allowed:
                    header = HEADERS.get(column, column)
                    hint = near_or_all(bare, (*words, *sorted(allowed)))
                    yield kind(view.at(table, row, column), column=header, text=bare, near=hint)


def tax_words(view: View) -> Iterator[Problem]:
    """A work item's tax class is one that some place has a row for."""
    known = {str(getattr(row, "tax_class", "")) for row in view.tables.current("tax_classes")}
    for item in view.tables.work_items:
        if item.tax_class and item.tax_class not in known:
            place, hint = view.at("work_items", item, "tax_class"), near_or_all(item.tax_class, sorted(known))
            yield p.UNKNOWN(place, column="tax_class", text=item.tax_class, refers="tax_classes", near=hint)


def missing(view: View) -> Iterator[Problem]:
    """Rows the program asks for by name."""
    settings = _ids(view, "settings")
    methods = {getattr(row, "method", "") for row in view.tables.rows["methods"]} | view.lost.get(
        "methods", frozenset()
    )
    for method in view.known.methods or ():
        if method not in methods:
            yield p.MISSING_METHOD(view.raw.tables["methods"].place(), method=method)
    for key, value in (view.known.settings or {}).items():
        if key not in settings:
            hint = near(key, settings - set(view.known.settings or {}))
            yield p.MISSING_SETTING(view.raw.tables["settings"].place(), key=key, near=hint, value=value)
    classes = _ids(view, "pricing")
    for name in ("own", "sub", "allowance", "pass-through"):
        if name not in classes:
            yield p.NO_COST_CLASS(view.raw.tables["pricing"].place(), name=name)
    if SETUP_TASK not in _ids(view, "production"):
        place = view.raw.tables["production"].place()
        yield p.UNKNOWN(place, column="task", text=SETUP_TASK, refers="production", near=f"Add a row for {SETUP_TASK}.")


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


def _recipe_units(view: View, row: Recipe, items: dict[str, WorkItem], quantities: Any) -> Iterator[Problem]:
    item = items.get(row.work_item)
    name = row.quantity or (item.quantity if item else "")
    if row.part == "equipment" or Decimal(str(row.per)) != 1 or name not in quantities:
        return
    table = PARTS[row.part]
    ids = {str(getattr(r, TABLES[table][1][0])): r for r in view.tables.current(table)}
    for ref in expanded(view, row.ref)[:1]:
        unit = getattr(ids.get(ref), "unit", None)
        if unit is not None and not alike(unit, quantities[name]):
            yield p.UNITS(view.at("recipes", row, "ref"), ref=ref, unit=unit, quantity=name, other=quantities[name])


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
        refs |= {SETUP_TASK} | {str(getattr(place, "permit_item")) for place in view.tables.current("places")}  # noqa: B009
        yield from _unused(view, table, refs, "recipes")
    yield from _unused(view, "roles", {m.role for m in view.tables.crew_members}, "crews")


def _unused(view: View, table: str, refs: set[str], where: str) -> Iterator[Problem]:
    name = TABLES[table][1][0]
    for row in view.tables.current(table) if view.sizes() else ():
        if getattr(row, name) not in refs:
            yield p.UNUSED(view.at(table, row, name), what=name, item=getattr(row, name), where=where)


LINK_CHECKS = (twice, not_yet, references, recipe_refs, names, tax_words, missing, units, used)

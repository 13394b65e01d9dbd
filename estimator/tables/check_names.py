"""Checks against what the program knows by name: quantities, facts, methods, settings, price classes, tax classes."""

from collections.abc import Iterator

from estimator.model.problem import Problem
from estimator.model.say import Say
from estimator.tables import problems as p
from estimator.tables.check_view import View
from estimator.tables.lookups import SETUP_TASK, each, ids
from estimator.tables.nearest_words import near, near_or_all
from estimator.tables.own_facts import FACTS_READ
from estimator.tables.rows import HEADERS, TaxClass, id_of


def crew_time(view: View) -> set[str]:
    """Quantities that follow a crew of the scope: days.B, hours.B."""
    crews = ids(view, "crews")
    return {f"{measure}.{crew}" for measure in ("days", "hours") for crew in crews}


def places(view: View) -> set[str]:
    """Facts that say where the house stands: place demo."""
    return {f"place {place}" for place in ids(view, "places")}


def names(view: View) -> Iterator[Problem]:
    """Quantities, facts, methods and settings are names the program knows."""
    known = view.known
    own = set(view.tables.own_facts)
    for table, column, kind, words in (
        ("work_items", "quantity", p.UNKNOWN_QUANTITY, known.quantities),
        ("recipes", "quantity", p.UNKNOWN_QUANTITY, known.quantities),
        *((table, column, p.UNKNOWN_FACT, known.facts) for table, column in FACTS_READ),
        ("methods", "method", p.UNKNOWN_METHOD, known.methods),
    ):
        if words is None:
            continue
        allowed = {"method": {"job"}, "quantity": crew_time(view), "when": places(view) | own, "fact": own}.get(
            column, set()
        )
        for row in view.tables.current(table):
            for word in each(getattr(row, column)):
                bare = word.removeprefix("not ").strip()
                if bare not in words and bare not in allowed:
                    header = HEADERS.get(column, column)
                    hint = near_or_all(bare, (*words, *sorted(allowed)))
                    yield kind(view.at(table, row, column), column=header, text=bare, near=hint)


def tax_words(view: View) -> Iterator[Problem]:
    """A work item's tax class is one that some place has a row for."""
    known = {row.tax_class for row in view.tables.every(TaxClass)}
    for item in view.tables.work_items:
        if item.tax_class and item.tax_class not in known:
            place, hint = view.at("work_items", item, "tax_class"), near_or_all(item.tax_class, sorted(known))
            yield p.UNKNOWN(place, column="tax_class", text=item.tax_class, refers="tax_classes", near=hint)


def missing(view: View) -> Iterator[Problem]:
    """Rows the program asks for by name."""
    settings = ids(view, "settings")
    methods = {id_of("methods", row) for row in view.tables.rows["methods"]} | view.lost.get("methods", frozenset())
    for method in view.known.methods or ():
        if method not in methods:
            yield p.MISSING_METHOD(view.raw.tables["methods"].place(), method=method)
    for key, value in (view.known.settings or {}).items():
        if key not in settings:
            hint = near(key, settings - set(view.known.settings or {}))
            yield p.MISSING_SETTING(view.raw.tables["settings"].place(), key=key, near=hint, value=value)
    classes = ids(view, "pricing")
    for name in ("own", "sub", "allowance", "pass-through"):
        if name not in classes:
            yield p.NO_COST_CLASS(view.raw.tables["pricing"].place(), name=name)
    if SETUP_TASK not in ids(view, "production"):
        place = view.raw.tables["production"].place()
        yield p.UNKNOWN(
            place,
            column="task",
            text=SETUP_TASK,
            refers="production",
            near=Say.of("Add a row for {task}.", task=SETUP_TASK),
        )


NAME_CHECKS = (names, tax_words, missing)

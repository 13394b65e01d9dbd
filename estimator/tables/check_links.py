"""Checks between rows and tables: names that stand twice or begin too late, references to rows of other tables."""

from collections.abc import Iterable, Iterator

from estimator.model.problem import Place, Problem
from estimator.model.say import Say
from estimator.tables import problems as p
from estimator.tables.cell_problems import near, near_or_all
from estimator.tables.check_view import View
from estimator.tables.columns import Column, columns
from estimator.tables.following_rows import HEADS
from estimator.tables.lookups import PARTS, SETUP_TASK, each, expanded, ids, off
from estimator.tables.own_facts import FACTS_READ
from estimator.tables.rows import HEADERS, TABLES, TableRow, TaxClass, id_of, name_of


def twice(view: View) -> Iterator[Problem]:
    """Two rows of one name from one day."""
    for table, (_, names) in TABLES.items():
        seen: dict[tuple[object, ...], TableRow] = {}
        for row in view.tables.rows.get(table, ()):
            key = (*name_of(table, row), row.starts)
            if key in seen:
                name = ", ".join(_words(getattr(row, n)) for n in names if getattr(row, n))
                yield p.TWICE(view.at(table, row, names[0]), name=name, first=seen[key].cell_row)
            seen.setdefault(key, row)


def no_first_day(view: View) -> Iterator[Problem]:
    """A row without a first day under a dated one of its name: most often a new price that nobody would see."""
    for table in TABLES:
        dated: dict[tuple[object, ...], TableRow] = {}
        for row in view.tables.rows.get(table, ()):
            key = name_of(table, row)
            if row.starts is not None and row.starts <= view.tables.day:
                dated[key] = max(dated.get(key, row), row, key=lambda r: r.starts or view.tables.day)
            elif row.starts is None and key in dated:
                place, other = view.at(table, row, "starts"), dated[key]
                yield p.NO_FIRST_DAY(place, name=_words(key[0]), other=other.cell_row, day=other.starts)


def earlier(view: View) -> Iterator[Problem]:
    """A row below another of its name that begins before it: most often the year of a new price is mistyped."""
    for table in TABLES:
        latest: dict[tuple[object, ...], TableRow] = {}
        for row in (r for r in view.tables.rows.get(table, ()) if r.starts is not None):
            key = name_of(table, row)
            above = latest.get(key)
            if above is not None and above.starts is not None and row.starts is not None and row.starts < above.starts:
                words = {"day": row.starts, "other": above.cell_row, "newer": above.starts}
                yield p.BEGINS_EARLIER(view.at(table, row, "starts"), name=_words(key[0]), **words)
            else:
                latest[key] = row


def _words(value: object) -> str:
    return " ".join(value) if isinstance(value, tuple) else str(value)


def not_yet(view: View) -> Iterator[Problem]:
    """A name all of whose rows begin after the day; a row that replaces an older one of its head is awaited, not missed."""
    for table, (_, names) in TABLES.items():
        first: dict[tuple[object, ...], TableRow] = {}
        begun: set[tuple[object, ...]] = set()
        for row in view.tables.rows.get(table, ()):
            key = tuple(getattr(row, n) for n in HEADS.get(table, names))
            if row.starts is None or row.starts <= view.tables.day:
                begun.add(key)
            elif key not in first or row.starts < (first[key].starts or row.starts):
                first[key] = row
        for key, row in first.items():
            if key not in begun:
                name = ", ".join(_words(k) for k in key if k)
                yield p.NOT_YET(view.at(table, row, "starts"), name=name, day=view.tables.day, first=row.starts)


def references(view: View) -> Iterator[Problem]:
    """Every column that refers to a table names a row of it that is in use."""
    for table in TABLES:
        for column in (c for c in columns(table) if c.refers):
            known = ids(view, column.refers)
            if column.kind == "words" or (table, column.name) == ("recipes", "work_item"):
                known |= off(view, column.refers)  # what is out of use is passed over there, and nothing goes unpriced
            if column.refers == "methods":  # a method without a row is named once, not wherever it stands
                known |= set(view.known.methods or ())
            for row in view.tables.current(table):
                for word in each(getattr(row, column.name)):
                    if word not in known:
                        yield _unknown(view, table, row, column, word, known)


def _unknown(view: View, table: str, row: TableRow, column: Column, word: str, known: Iterable[str]) -> Problem:
    return _no_such(view, view.at(table, row, column.name), column.header, word, column.refers, known)


def _no_such(view: View, place: Place, column: str, word: str, refers: str, known: Iterable[str]) -> Problem:
    """A name whose rows are all out of use is known: what is asked is whether it, or what needs it, comes back or goes."""
    if word in off(view, refers):
        return p.OUT_OF_USE(place, column=column, text=word, refers=refers)
    return p.UNKNOWN(place, column=column, text=word, refers=refers, near=near_or_all(word, sorted(known)))


def recipe_refs(view: View) -> Iterator[Problem]:
    """Every ref of a recipe stands in its table, in every size; what makes a work item out of use is passed over."""
    gone = off(view, "work_items") - ids(view, "work_items")
    for row in (row for row in view.tables.recipes if row.work_item not in gone):
        table = PARTS[row.part]
        known = ids(view, table)
        for ref in expanded(view, row.ref):
            if ref not in known:
                yield _no_such(view, view.at("recipes", row, "ref"), "ref", ref, table, known)


LINK_CHECKS = (twice, no_first_day, earlier, not_yet, references, recipe_refs)


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

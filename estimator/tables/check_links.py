"""Checks between rows and tables: names that stand twice or begin too late, references to rows of other tables."""

from collections.abc import Iterable, Iterator

from estimator.model.problem import Place, Problem
from estimator.tables import problems as p
from estimator.tables.check_view import View
from estimator.tables.columns import Column, columns
from estimator.tables.following_rows import HEADS
from estimator.tables.lookups import PARTS, each, expanded, ids, off
from estimator.tables.nearest_words import near_or_all
from estimator.tables.rows import TABLES, Kept, name_of


def twice(view: View) -> Iterator[Problem]:
    """Two rows of one name from one day."""
    for table, (_, names) in TABLES.items():
        seen: dict[tuple[object, ...], Kept] = {}
        for row in view.tables.rows.get(table, ()):
            key = (*name_of(table, row), row.starts)
            if key in seen:
                name = ", ".join(_words(getattr(row, n)) for n in names if getattr(row, n))
                yield p.TWICE(view.at(table, row, names[0]), name=name, first=seen[key].cell_row)
            seen.setdefault(key, row)


def no_first_day(view: View) -> Iterator[Problem]:
    """A row without a first day under a dated one of its name: most often a new price that nobody would see."""
    for table in TABLES:
        dated: dict[tuple[object, ...], Kept] = {}
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
        latest: dict[tuple[object, ...], Kept] = {}
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
        first: dict[tuple[object, ...], Kept] = {}
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


def _unknown(view: View, table: str, row: Kept, column: Column, word: str, known: Iterable[str]) -> Problem:
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

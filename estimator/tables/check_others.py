"""Figures held against others: the row they follow, the firm's tables as they were, the invented ones.

Far from it, counted in another unit, off by a row, or in one another's rows.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from decimal import Decimal

from estimator.model.problem import Problem
from estimator.model.remembered import answered_once
from estimator.model.say import Say
from estimator.tables import problems as p
from estimator.tables.check_view import View
from estimator.tables.columns import Column, columns
from estimator.tables.figures import Name, answered, called, figure, figures
from estimator.tables.rows import TABLES, TableRow, name_of
from estimator.tables.tables import Tables
from estimator.tables.values import plain_number

FAR = 5
"""A figure this many times the one before, or that part of it, is asked about: a decimal point is ten, minutes for hours sixty."""
DOUBLE = 2
"""From one of the firm's own lists to the next a price or a time seldom doubles."""
SHIFTED_ROWS = 3
"""So many figures in a row that are their neighbors' are no chance."""
UNIT_OF = {"cost": ("unit",), "low": ("unit",), "likely": ("unit",), "high": ("unit",), "value": ("unit",)}
"""A figure is held against another only where what it is counted in is the same."""
NOT_HELD = ("order", "tendons_since", "min", "max", "pack", "price_for")
PRICED = ("materials", "equipment", "subs_and_fees", "production", "extras", "roles")


def far(view: View) -> Iterator[Problem]:
    """Figures many times the one of the row they follow, of the firm's tables as they were, or of the invented row."""
    for table in TABLES:
        older = _older(table, view.tables.rows.get(table, ()))
        was, invented = (_newest_first(t, table) if t else {} for t in (view.known.before, view.known.usual))
        for row, column, value in figures(view, table):
            if column.name in NOT_HELD:
                continue
            name, much = name_of(table, row), DOUBLE if _price_or_time(table, column) else FAR
            before = next((r for r in was.get(name, ()) if _starts(r) <= _starts(row)), None)
            held = (
                (older.get(id(row)), FAR, Say.of("the row before it,")),
                (before, much, Say.of("what it was before,")),
                (next(iter(invented.get(name, ())), None), FAR, Say.of("the invented figure")),
            )
            for other, limit, which in held:
                times = _times(row, other, column, value, limit) if other is not None else None
                if times is not None and other is not None:
                    stood = plain_number(figure(other, column) or 0)
                    words = {"text": plain_number(value), "times": times, "which": which, "before": stood}
                    place = view.at(table, row, column.name)
                    yield p.FAR(place, column=column.header, item=called(table, row), **words)
                    break


def _price_or_time(table: str, column: Column) -> bool:
    return table in PRICED and (column.money or column.name in ("low", "likely", "high"))


@answered_once
def _newest_first(tables: Tables, table: str) -> Mapping[Name, Sequence[TableRow]]:
    """The rows of each name, the newest first."""
    alike: dict[Name, list[TableRow]] = {}
    for row in sorted(tables.rows.get(table, ()), key=_starts, reverse=True):
        alike.setdefault(name_of(table, row), []).append(row)
    return alike


@answered_once
def _stood(tables: Tables, table: str, column: Column) -> Mapping[Name, Decimal | None]:
    """The figure of a column in each row, in the order of the file."""
    return {name_of(table, row): figure(row, column) for row in tables.rows.get(table, ())}


@answered_once
def _beside(tables: Tables, table: str, column: Column, step: int) -> Mapping[Name, Decimal | None]:
    """For each row the figure of the row so many below it."""
    stood = _stood(tables, table, column)
    names = [name_of(table, row) for row in tables.rows.get(table, ())]
    return {name: stood[names[at + step]] for at, name in enumerate(names) if 0 <= at + step < len(names)}


def other_unit(view: View) -> Iterator[Problem]:
    """A row counted in another unit than the invented one of its name, at the very same figure."""
    usual = view.known.usual
    for table in PRICED[:-1]:
        invented = {name_of(table, row): row for row in usual.rows.get(table, ())} if usual else {}
        column = next(c for c in columns(table) if c.name in ("cost", "likely", "price"))
        for row in view.tables.current(table):
            other, value = invented.get(name_of(table, row)), figure(row, column)
            unit, before = getattr(row, "unit", ""), getattr(other, "unit", "")
            if other is not None and value and unit != before and value == figure(other, column):
                words = {"item": called(table, row), "unit": unit, "text": plain_number(value), "other": before}
                yield p.OTHER_UNIT(view.at(table, row, "unit"), **words)


def _older(table: str, rows: Sequence[TableRow]) -> Mapping[int, TableRow]:
    """For each row by its id the newest older row of its name, where there is one."""
    alike: dict[Name, list[TableRow]] = {}
    for row in rows:
        alike.setdefault(name_of(table, row), []).append(row)
    out: dict[int, TableRow] = {}
    for same in alike.values():
        for row in same if len(same) > 1 else ():
            older = [r for r in same if _starts(r) < _starts(row)]
            if older:
                out[id(row)] = max(older, key=_starts)
    return out


def _starts(row: TableRow) -> date:
    return row.starts or date.min


def _times(row: TableRow, other: TableRow, column: Column, value: Decimal, much: int) -> str | None:
    """How many times the other the figure is, in words; None where it is near, or counted in something else."""
    before = figure(other, column)
    if not before or (before < 0) != (value < 0):
        return None
    if any(getattr(row, n, None) != getattr(other, n, None) for n in UNIT_OF.get(column.name, ())):
        return None
    if not value:
        return "0"
    times = value / before
    if 1 / Decimal(much) < times < much:
        return None
    return plain_number(round(times, 1)) if times >= 1 else f"1/{plain_number(round(1 / times, 1))}"


def _lists(view: View) -> Iterator[tuple[Tables, bool]]:
    """The lists a whole column is held against, and whether it is the firm's own as it was."""
    if view.known.before is not None:
        yield view.known.before, True
    if view.known.usual is not None:
        yield view.known.usual, False


def shifted(view: View) -> Iterator[Problem]:
    """A column whose figures are those of the row above, or below, several in a row."""
    for others, _ in _lists(view):
        for table in TABLES:
            rows = [row for row in view.tables.rows.get(table, ()) if row.active]
            for column in columns(table):
                if column.name in NOT_HELD or not (column.amount or column.name == "value"):
                    continue
                old = _stood(others, table, column)
                for step, side in ((-1, Say.of("above")), (1, Say.of("below"))):
                    for run in _runs(rows, table, column, old, _beside(others, table, column, step)):
                        first, last = called(table, run[0]), called(table, run[-1])
                        place = view.at(table, run[0], column.name)
                        yield p.SHIFTED(place, count=len(run), column=column.header, side=side, first=first, last=last)


def changed_places(view: View) -> Iterator[Problem]:
    """Prices that stand in one another's rows: two swapped, or rows sorted without their prices.

    Against the invented ones only where most of what differs has moved so: among many new prices a few meet by chance.
    """
    for others, own in _lists(view):
        for table in PRICED:
            old = {name_of(table, row): row for row in others.current(table)}
            for column in (c for c in columns(table) if c.money or c.name == "likely"):
                differ = [
                    (row, was, now)
                    for row in view.tables.current(table)
                    if (other := old.get(name_of(table, row))) is not None
                    and (was := figure(other, column)) != (now := figure(row, column))
                    and now is not None
                    and not answered(row, now)
                ]
                moved = _among_themselves([(was, now) for _, was, now in differ])
                if len(moved) > 1 and (own or 2 * len(moved) >= len(differ)):
                    items = ", ".join(f"{called(table, differ[at][0])} ({plain_number(differ[at][2])})" for at in moved)
                    yield p.CHANGED_PLACES(
                        view.at(table, differ[moved[0]][0], column.name), column=column.header, items=items
                    )


def _among_themselves(pairs: Sequence[tuple[Decimal | None, Decimal]]) -> list[int]:
    """Which of the (was, now) have their new figure from one of them and gave their old one to one of them."""
    left = list(range(len(pairs)))
    while True:
        given, taken = {pairs[at][0] for at in left}, {pairs[at][1] for at in left}
        still = [at for at in left if pairs[at][1] in given and pairs[at][0] in taken]
        if still == left:
            return still
        left = still


def _runs(
    rows: Sequence[TableRow],
    table: str,
    column: Column,
    old: Mapping[Name, Decimal | None],
    neighbor: Mapping[Name, Decimal | None],
) -> Iterator[list[TableRow]]:
    """Runs of rows whose figures are a neighbor's; the same figure in both rows says nothing and breaks no run."""
    run: list[TableRow] = []
    moved = 0
    for row in (*rows, None):
        name = None if row is None else name_of(table, row)
        value = None if row is None else figure(row, column)
        beside = None if name is None else neighbor.get(name)
        if row is not None and name is not None and value and value == beside:
            run.append(row)
            moved += name in old and old[name] != value
            continue
        if moved >= SHIFTED_ROWS:
            yield run
        run, moved = [], 0


AGAINST_OTHERS = (far, other_unit, shifted, changed_places)

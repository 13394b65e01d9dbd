"""A raw table in, its rows out; whatever cannot be read is a problem with its cell."""

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal
from typing import Any

from estimator.model.frozen import Frozen
from estimator.model.problem import Level, Problem
from estimator.model.say import Say
from estimator.tables import cell_problems
from estimator.tables import problems as p
from estimator.tables.cell_problems import near
from estimator.tables.columns import columns
from estimator.tables.raw import RawRow, RawTable, letters
from estimator.tables.rows import NO_NUMBER, TABLES, Setting, TableRow, id_of
from estimator.tables.values import BadCell, parse_number, plain_number, read_cell, shown

ZERO: dict[str, object] = {"number": 0.0, "dollars": Decimal(0), "whole": 0}


class RowsReading(Frozen):
    """All rows that can be read whole, all problems of the others, and the names of those others."""

    rows: tuple[TableRow, ...]
    problems: tuple[Problem, ...]
    lost: frozenset[str] = frozenset()


def read_rows(table: RawTable) -> RowsReading:
    """The rows of a raw table."""
    found, problems = _headers(table)
    name = found.get(TABLES[table.name][1][0])
    lost = {str(raw.cells[name]).strip() for raw in table.rows if name is not None and name < len(raw.cells)}
    if any(problem.level == Level.ERROR for problem in problems):
        return RowsReading((), tuple(problems), frozenset(lost))
    rows: list[TableRow] = []
    named = {column: letters(at) for column, at in found.items()} if table.letters else {}
    for raw in table.rows:
        row, wrong = _row(table, raw, found, named)
        problems += wrong
        if row is not None:
            rows.append(row)
    problems += [*_hidden(table), *_struck(table, found), *_hidden_columns(table)]
    if not table.rows:
        problems.append(p.EMPTY_TABLE(table.place(), table=table.name))
    lost -= {id_of(table.name, row) for row in rows}
    return RowsReading(tuple(rows), tuple(problems), frozenset(lost))


def _hidden(table: RawTable) -> list[Problem]:
    """The hidden rows of a sheet, those under one another in one message: a filter hides many at once."""
    runs: list[list[int]] = []
    for number in (row.number for row in table.rows if row.hidden):
        if runs and runs[-1][-1] + 1 == number:
            runs[-1].append(number)
        else:
            runs.append([number])
    return [
        cell_problems.HIDDEN_ROW(table.place(first), rows=_rows(first, last))
        for first, last in ((run[0], run[-1]) for run in runs)
    ]


def _struck(table: RawTable, found: dict[str, int]) -> list[Problem]:
    """Rows struck through by hand that count all the same; one that is out of use may look as it likes."""
    return [
        cell_problems.STRUCK(table.place(row.number)) for row in table.rows if row.struck and not _is_off(row, found)
    ]


def _hidden_columns(table: RawTable) -> list[Problem]:
    at = table.header_row
    return [cell_problems.HIDDEN_COLUMN(table.place(at, i), column=table.headers[i]) for i in table.hidden_columns]


def _rows(first: int, last: int) -> Say:
    if last > first:
        return Say.of("rows {first} to {last} are hidden, and count all the same", first=first, last=last)
    return Say.of("the row is hidden, and counts all the same")


def _headers(table: RawTable) -> tuple[dict[str, int], list[Problem]]:
    """Where each column stands, by its name."""
    wanted = {c.header: c for c in columns(table.name)}
    problems: list[Problem] = []
    found: dict[str, int] = {}
    for at, header in enumerate(table.headers):
        if header in wanted:
            name = wanted[header].name
            if name in found:
                problems.append(p.TWICE_COLUMN(table.place(table.header_row, at), column=header))
            found.setdefault(name, at)
        elif header and not header.startswith("("):  # computed columns stand in brackets
            missing = [h for h in wanted if h not in table.headers]
            hint = near(header, missing) or Say.of("Take it out, or leave it as a remark of your own.")
            problems.append(p.ODD_COLUMN(table.place(table.header_row, at), column=header, near=hint))
    for header, column in wanted.items():
        if column.name not in found and not column.optional:
            problems.append(p.NO_COLUMN(table.place(table.header_row), column=header, note=Say.of(column.note)))
    return found, problems


def _row(
    table: RawTable, raw: RawRow, found: dict[str, int], named: Mapping[str, str]
) -> tuple[TableRow | None, list[Problem]]:
    problems: list[Problem] = []
    if any(cell != "" for cell in raw.cells[len(table.headers) :]):
        long = p.LONG_ROW(table.place(raw.number), cells=len(raw.cells), headers=len(table.headers))
        return None, [*problems, long]
    values: dict[str, Any] = {"cell_row": raw.number, "sheet_columns": named}
    bad = False
    off = _is_off(raw, found)
    for column in columns(table.name):
        at = found.get(column.name)
        cell = raw.cells[at] if at is not None and at < len(raw.cells) else ""
        try:
            values[column.name] = read_cell(cell, column)
        except BadCell as wrong:
            if off and column.amount:  # a row out of use may say "call supplier"; it must still end the older row
                values[column.name] = ZERO[column.kind]
                continue
            bad = True
            or_off = p.OR_OFF if column.amount and table.name in p.MAY_BE_OFF else ""
            problems.append(wrong.kind(table.place(raw.number, at), **{**wrong.words, "or_off": or_off}))
    if bad and (filled := _remark(table, raw, found)):
        return None, [_stray(table, raw, filled)]
    return (None if bad else tidy(TABLES[table.name][0](**values))), problems


def _remark(table: RawTable, raw: RawRow, found: dict[str, int]) -> list[int]:
    """The filled cells of a row that cannot be read, where they are one alone or none that a row must have."""
    filled = [at for at, cell in enumerate(raw.cells) if not (isinstance(cell, str) and not cell.strip())]
    needed = {found[column.name] for column in columns(table.name) if not column.empty and column.name in found}
    return filled if len(filled) == 1 or not needed & set(filled) else []


def _stray(table: RawTable, raw: RawRow, filled: list[int]) -> Problem:
    places = [table.place(raw.number, at) for at in filled]
    texts = ", ".join(f"“{shown(raw.cells[at])}”" for at in filled)
    return p.STRAY(places[0], cells=", ".join(place.cell for place in places), text=texts, table=table.name)


def tidy(row: TableRow) -> TableRow:
    """A setting's number written one way, 1 for 1.0, so that a workbook and a CSV file hold the same row."""
    if isinstance(row, Setting) and row.unit not in NO_NUMBER:
        try:
            bare = row.value.removesuffix("%") if row.unit == "percent" else row.value
            return replace(row, value=plain_number(parse_number(bare, "value", "")))
        except BadCell:
            return row
    return row


def _is_off(raw: RawRow, found: dict[str, int]) -> bool:
    """active says no: what its amounts say does not matter, the row is left out."""
    at = found.get("active")
    cell = raw.cells[at] if at is not None and at < len(raw.cells) else ""
    return cell is False or (isinstance(cell, str) and cell.strip().lower() in ("no", "false"))

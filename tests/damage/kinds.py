"""Damage as an office does it to a price table: each kind is a function of raw tables, a place in them and a chance."""

import random
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import timedelta
from decimal import Decimal, InvalidOperation

from estimator.sheets.fault import Fault
from estimator.sheets.style import Percent
from estimator.tables.columns import columns
from estimator.tables.raw import CellValue, RawRow, RawTable, RawTables
from tests.tables.workbench import DAY

Cell = Callable[[CellValue], CellValue | None]
"""A cell in, what it becomes out; None where this damage cannot be done to it."""


@dataclass(frozen=True, slots=True)
class Damage:
    """One edit: its kind, table, row (counted from 0) and column ("" for a whole row or column), and the tables after it.
    `slip`: a figure wrong by its unit or its point."""

    kind: str
    table: str
    row: int
    column: str
    tables: RawTables
    slip: bool = False

    def __str__(self) -> str:
        number = (
            self.tables.tables[self.table].rows[self.row].number
            if self.row < len(self.tables.tables[self.table].rows)
            else "end"
        )
        return f"{self.table}, row {number}, {self.column or 'all'}: {self.kind}"


def _times(factor: str) -> Cell:
    def changed(cell: CellValue) -> CellValue | None:
        number = _number(cell)
        return None if not number else f"{(number * Decimal(factor)).normalize():f}"

    return changed


def _number(cell: CellValue) -> Decimal | None:
    try:
        number = Decimal(str(cell).strip())
    except InvalidOperation:
        return None
    return number if number.is_finite() else None


def _if_number(value: CellValue) -> Cell:
    return lambda cell: value if _number(cell) is not None else None


def _as_percent(cell: CellValue) -> CellValue | None:
    number = _number(cell)
    return None if not number else Percent(float(number / 100))


CELLS: dict[str, Cell] = {
    "emptied": lambda cell: "" if cell != "" else None,
    "a word": lambda cell: "call supplier",
    "a word with blanks": lambda cell: f"  {cell} " if isinstance(cell, str) and cell else None,
    "zero": _if_number("0"),
    "below zero": _if_number("-5"),
    "a tiny figure": _if_number("0.0000001"),
    "a huge figure": _if_number("9999999"),
    "shown as a percent": _as_percent,
    "a share for a percent": _times("0.01"),
    "a decimal comma": lambda cell: (
        str(cell).replace(".", ",") if "." in str(cell) and _number(cell) is not None else None
    ),
    "a day to come": lambda cell: (DAY + timedelta(days=400)).isoformat() if _is_day(cell) else None,
    "a day long gone": lambda cell: "1906-03-01" if _is_day(cell) else None,
    "a day as it is said": lambda cell: "11/25/2026" if _is_day(cell) else None,
    "another letter case": lambda cell: str(cell).upper() if str(cell).upper() != str(cell) else None,
    "with its unit": lambda cell: f"{cell}/day" if _number(cell) is not None else None,
    "another money": lambda cell: Fault("currency", "€") if _number(cell) is not None else None,
    "its sign before it": lambda cell: f"€{cell}" if _number(cell) is not None else None,
    "in brackets": lambda cell: f"({cell})" if _number(cell) else None,
    "about": lambda cell: f"~{cell}" if _number(cell) is not None else None,
    "a question": lambda cell: f"{cell}?" if _number(cell) is not None else None,
    "from and to": lambda cell: f"{cell}-{cell}9" if _number(cell) is not None else None,
    "a time of day": lambda cell: "01:30:00" if _number(cell) is not None else None,
    "a day for a figure": lambda cell: DAY if _number(cell) is not None else None,
    "blanks nobody sees": lambda cell: f"\u00a0{cell}\u200b" if cell not in ("", None) else None,
    "a long dash": lambda cell: str(cell).replace("-", "\u2011") if "-" in str(cell) and not _is_day(cell) else None,
    "a wide blank inside": lambda cell: str(cell).replace(" ", "\u00a0") if " " in str(cell) else None,
    "semicolons": lambda cell: str(cell).replace(",", ";") if "," in str(cell) else None,
    "an x for yes": lambda cell: "x" if cell in ("yes", "no") else None,
    "a formula": lambda cell: Fault("uncalculated", "='[old.xlsx]prices'!F4") if cell != "" else None,
}
SLIPS: dict[str, Cell] = {
    "times 10": _times("10"),
    "a tenth": _times("0.1"),
    "cents for dollars": _times("100"),
    "minutes for hours": _times("60"),
    "a month for an hour": _times("173"),
}


def _is_day(cell: CellValue) -> bool:
    text = str(cell)
    return len(text) == 10 and text[4:5] == text[7:8] == "-"


def _with_rows(tables: RawTables, name: str, rows: list[RawRow], headers: tuple[str, ...] | None = None) -> RawTables:
    before = tables.tables[name]
    table: RawTable = replace(before, rows=tuple(rows), headers=headers or before.headers)
    return replace(tables, tables={**tables.tables, name: table})


def _set(row: RawRow, at: int, value: CellValue) -> RawRow:
    return replace(row, cells=(*row.cells[:at], value, *row.cells[at + 1 :]))


def cell_damages(tables: RawTables, name: str, row: int, column: str) -> Iterator[Damage]:
    """Every damage to one cell."""
    table = tables.tables[name]
    at = table.headers.index(column)
    if at >= len(table.rows[row].cells):
        return
    slips = SLIPS if _money_or_time(name, column) else {}
    for kind, change in {**CELLS, **slips}.items():
        value = change(table.rows[row].cells[at])
        if value is not None:
            rows = list(table.rows)
            rows[row] = _set(rows[row], at, value)
            yield Damage(kind, name, row, column, _with_rows(tables, name, rows), slip=kind in slips)


def _money_or_time(name: str, column: str) -> bool:
    """Columns whose every figure is held against what is usual; what a tenfold of the others does, `tables changes` shows."""
    known = ("roles", "materials", "equipment", "subs_and_fees", "production", "extras")
    return name in known and any(
        c.header == column and c.amount and c.name not in ("order", "pack", "price_for") for c in columns(name)
    )


def row_damages(tables: RawTables, name: str, row: int, chance: random.Random) -> Iterator[Damage]:
    """Every damage to a whole row, or to a column from that row on."""
    table = tables.tables[name]
    rows, width = list(table.rows), len(table.headers)

    def done(kind: str, changed: list[RawRow], headers: tuple[str, ...] | None = None, column: str = "") -> Damage:
        return Damage(kind, name, row, column, _with_rows(tables, name, changed, headers))

    yield done("deleted", [r for r in rows if r is not rows[row]])
    yield done("duplicated", [*rows[: row + 1], replace(rows[row], number=rows[row].number + 1), *rows[row + 1 :]])
    yield done("key renamed", [_set(r, 0, f"{r.cells[0]} new") if r is rows[row] else r for r in rows])
    yield done("struck through", [replace(r, struck=True) if r is rows[row] else r for r in rows])
    yield done("hidden", [replace(r, hidden=True) if r is rows[row] else r for r in rows])
    cells = rows[row].cells
    for kind, moved in (("cells moved right", ("", *cells[:-1])), ("cells moved left", (*cells[1:], ""))):
        yield done(kind, [replace(r, cells=moved) if r is rows[row] else r for r in rows])
    leftover = RawRow(number=rows[-1].number + 40, cells=("", "7", *([""] * (width - 2))))
    yield done("a leftover below the table", [*rows, leftover])
    a, b = sorted(chance.sample(range(width), 2))
    yield done("two cells swapped", [replace(r, cells=_swapped(r.cells, a, b)) if r is rows[row] else r for r in rows],
               column=f"{table.headers[a]}, {table.headers[b]}")  # fmt: skip
    swapped = _swapped(table.headers, a, b)
    yield done("two headers swapped", rows, swapped, column=f"{table.headers[a]}, {table.headers[b]}")
    at = chance.randrange(width)
    unseen = replace(tables, tables={**tables.tables, name: replace(table, hidden_columns=(at,))})
    yield Damage("column hidden", name, row, table.headers[at], unseen)
    header = table.headers[at]
    yield done("a column moved down one row", _moved_down(rows, row, at), column=header)
    yield done(
        "a column pasted with its header", _moved_down([_set(rows[0], at, header), *rows[1:]], 0, at), column=header
    )
    yield done("filled down", _put(rows, at, {row + i: rows[row].cells[at] for i in range(1, 5)}), column=header)
    some = sorted(range(len(rows)), key=lambda i: str(rows[i].cells[at : at + 1]))
    yield done("sorted without this column", _put([rows[i] for i in some], at, _held(rows, at)), column=header)
    twin = replace(rows[row], number=rows[-1].number + 1, cells=(str(cells[0]).title(), *cells[1:]))
    yield done("copied in other letters", [*rows, twin])
    yield from _swaps(tables, name, row, chance)


def _swaps(tables: RawTables, name: str, row: int, chance: random.Random) -> Iterator[Damage]:
    """A price or a time swapped with that of another row: a slip, always named."""
    table = tables.tables[name]
    rows, other = list(table.rows), chance.randrange(len(table.rows))
    for header in ("cost", "wage", "likely", "price"):
        if _money_or_time(name, header) and header in table.headers:
            at = table.headers.index(header)
            held = {row: rows[other].cells[at], other: rows[row].cells[at]}
            yield Damage("swapped with another row", name, row, header,
                         _with_rows(tables, name, _put(rows, at, held)), slip=True)  # fmt: skip


def _held(rows: list[RawRow], at: int) -> dict[int, CellValue]:
    return {i: row.cells[at] for i, row in enumerate(rows) if at < len(row.cells)}


def _put(rows: list[RawRow], at: int, values: dict[int, CellValue]) -> list[RawRow]:
    """These cells of a column, by row, in place of what stands there."""
    return [_set(row, at, values[i]) if i in values and at < len(row.cells) else row for i, row in enumerate(rows)]


def _swapped(cells: tuple, a: int, b: int) -> tuple:
    if b >= len(cells):
        return cells
    out = list(cells)
    out[a], out[b] = out[b], out[a]
    return tuple(out)


def _moved_down(rows: list[RawRow], start: int, at: int) -> list[RawRow]:
    """The cells of a column from a row on, each one row lower; the last one falls off."""
    held = [row.cells[at] if at < len(row.cells) else "" for row in rows]
    return [_set(row, at, held[i - 1]) if i > start and at < len(row.cells) else row for i, row in enumerate(rows)]

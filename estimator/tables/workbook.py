"""A workbook of price tables in, headers and cells of every table out, or problems."""

from collections.abc import Mapping
from pathlib import Path

from estimator.model.problem import Place, Problem
from estimator.sheets.fault import Fault
from estimator.sheets.read import ReadRow, ReadSheet, read
from estimator.tables import cell_problems
from estimator.tables import problems as p
from estimator.tables.cell_problems import near
from estimator.tables.columns import columns
from estimator.tables.csv_folder import no_table
from estimator.tables.raw import RawRow, RawTable, RawTables
from estimator.tables.rows import TABLES


def read_workbook(path: Path) -> tuple[RawTables, tuple[Problem, ...]]:
    """A sheet of a table's name is that table; other sheets are not read."""
    reading = read(path)
    if reading.problems:
        return RawTables(path.name), reading.problems
    if not any(name in TABLES for name in reading.sheets):
        return RawTables(path.name), (p.NO_TABLES(Place(file=path.name), path=path),)
    problems: list[Problem] = []
    found: dict[str, RawTable] = {}
    for name in TABLES:
        place = Place(file=path.name, table=name)
        sheet = reading.sheets.get(name)
        if sheet is None:
            hint = near(name, [n for n in reading.sheets if n not in TABLES])
            problems.append(no_table(place, name, f"the sheet {name}", hint))
        elif not sheet.rows:
            problems.append(p.EMPTY_TABLE(place, table=name))
        else:
            found[name] = _table(name, path.name, sheet)
            problems += [cell_problems.HIDDEN_SHEET(place, table=name)] if sheet.hidden else []
            problems += _typed_over(found[name], sheet)
    return RawTables(path.name, found), (*problems, *_copies(reading.sheets, path.name))


def _typed_over(table: RawTable, sheet: ReadSheet) -> list[Problem]:
    """Cells of computed columns that hold no formula any more."""
    worked_out = [at for at, header in enumerate(table.headers) if header.startswith("(")]
    return [
        cell_problems.TYPED_OVER(table.place(row.number, at), column=table.headers[at])
        for row in sheet.rows[1:]
        for at in worked_out
        if at < len(row.cells) and row.cells[at] != "" and at not in row.formulas
    ]


def _copies(sheets: Mapping[str, ReadSheet], file: str) -> list[Problem]:
    """Sheets of another name that look like a table: a copy that somebody made, and perhaps went on with."""
    found = []
    for name, sheet in sheets.items():
        heads = {str(cell).strip() for cell in sheet.rows[0].cells} if sheet.rows and name not in TABLES else set()
        like = next((t for t in TABLES if heads >= {c.header for c in columns(t) if not c.optional}), None)
        found += [cell_problems.SHEET_NOT_READ(Place(file=file, table=name), sheet=name, table=like)] if like else []
    return found


def _table(name: str, file: str, sheet: ReadSheet) -> RawTable:
    headers = tuple("" if isinstance(cell, Fault) else str(cell).strip() for cell in sheet.rows[0].cells)
    rows = tuple(_row(row, headers) for row in sheet.rows[1:])
    filled = tuple(row for row in rows if not row.empty)
    hidden = tuple(at for at in sheet.hidden_columns if at < len(headers) and headers[at])
    return RawTable(name, file, headers, filled, letters=True, hidden_columns=hidden)


def _row(row: ReadRow, headers: tuple[str, ...]) -> RawRow:
    """The row without its computed columns, whose headers stand in brackets."""
    kept = tuple("" if at < len(headers) and headers[at].startswith("(") else cell for at, cell in enumerate(row.cells))
    return RawRow(row.number, kept, row.hidden, row.struck)

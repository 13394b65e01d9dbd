"""A folder of CSV files in, headers and cells of every table out, or problems."""

import csv
from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from io import StringIO
from pathlib import Path

from estimator.disk.whole import read_bytes
from estimator.model.problem import Place, Problem
from estimator.model.say import Say
from estimator.tables import problems as p
from estimator.tables.cell_problems import near
from estimator.tables.columns import columns
from estimator.tables.raw import RawRow, RawTable, RawTables
from estimator.tables.rows import TABLES
from estimator.tables.tables import Tables
from estimator.tables.values import plain_number


def read_folder(folder: Path) -> tuple[RawTables, tuple[Problem, ...]]:
    """Every table of the folder that is there and is text; what is not is a problem."""
    found: dict[str, RawTable] = {}
    problems: list[Problem] = []
    present = sorted(f.stem for f in folder.glob("*.csv"))
    if not any(name in TABLES for name in present):
        return RawTables(folder.name), (p.NO_TABLES(Place(file=folder.name), path=folder),)
    for name in TABLES:
        if name not in present:
            hint = near(name, [n for n in present if n not in TABLES])
            problems.append(no_table(Place(file=folder.name, table=name), name, f"{name}.csv", hint))
            continue
        table, wrong = read_file(folder / f"{name}.csv", name, folder.name)
        problems += wrong
        if table is not None:
            found[name] = table
    return RawTables(folder.name, found), tuple(problems)


def no_table(place: Place, table: str, name: str, hint: Say | str) -> Problem:
    from estimator.tables.columns import columns

    headers = ", ".join(c.header for c in columns(table))
    return p.NO_TABLE(place, table=table, name=name, near=hint, columns=headers)


def read_file(path: Path, name: str, shown_as: str) -> tuple[RawTable | None, list[Problem]]:
    """One CSV file; commas or semicolons between cells, UTF-8 with or without a mark at its start."""
    place = Place(file=shown_as, table=name)
    if path.is_dir():
        return None, [p.UNREADABLE(place, why=Say.of("it is a folder"))]
    try:
        text = read_bytes(path).decode("utf-8-sig")
    except UnicodeDecodeError as error:
        return None, [p.ENCODING(place, at=error.start + 1)]
    except OSError as error:
        return None, [p.UNREADABLE(place, why=error.strerror or type(error).__name__)]
    try:
        records = list(csv.reader(StringIO(text, newline=""), delimiter=delimiter(text), strict=True))
    except csv.Error as error:
        return None, [p.NOT_CSV(place, why=str(error))]
    if not records:
        return None, [p.EMPTY_TABLE(place, table=name)]
    headers = tuple(h.strip() for h in records[0])
    rows = [RawRow(number, tuple(cells)) for number, cells in enumerate(records[1:], start=2)]
    return RawTable(name, shown_as, headers, tuple(r for r in rows if not r.empty)), []


def delimiter(text: str) -> str:
    """Semicolon where the header line has more of them than commas, as some spreadsheet programs save."""
    header = text.split("\n", 1)[0]
    return ";" if header.count(";") > header.count(",") else ","


def csv_files(tables: Tables) -> Mapping[str, bytes]:
    """Every table by the name of its file; read again they give the same rows and the same fingerprint."""
    return {f"{name}.csv": _file(name, tables) for name in TABLES}


def _file(name: str, tables: Tables) -> bytes:
    text = StringIO(newline="")
    lines = csv.writer(text, lineterminator="\n")
    lines.writerow(column.header for column in columns(name))
    lines.writerows([written(getattr(row, c.name)) for c in columns(name)] for row in tables.rows.get(name, ()))
    return text.getvalue().encode("utf-8")


def written(value: object) -> str:
    """A value as it stands in a CSV file.

    >>> written(True), written(("tunnel", "trench")), written(None), written(4.0)
    ('yes', 'tunnel, trench', '', '4')
    """
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float | Decimal):
        return plain_number(value)
    if isinstance(value, date):
        return value.isoformat()
    return ", ".join(value) if isinstance(value, tuple) else str(value)

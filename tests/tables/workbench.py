"""What the tests of the tables share: the demo set read, copied with changes, damaged as a workbook."""

import csv
import shutil
from collections.abc import Iterable
from copy import copy
from datetime import date
from functools import cache
from io import BytesIO
from pathlib import Path

from estimator.tables import Tables, TablesReading, demo_folder, read_tables
from estimator.tables.as_workbook import workbook
from estimator.tables.rows import TABLES
from estimator.takeoff.quantities import FACTS, QUANTITIES
from estimator.works.methods import names

DAY = date(2026, 11, 25)
UNITS = {name: unit for name, (unit, _) in QUANTITIES.items()}


def reading(path: Path, day: date = DAY) -> TablesReading:
    """A set of tables with everything checked that can be."""
    return read_tables(path, day, UNITS, FACTS, names())


@cache
def demo() -> Tables:
    tables = reading(demo_folder()).tables
    assert tables is not None
    return tables


@cache
def demo_bytes() -> bytes:
    return workbook(demo())


def laid_over(folder: Path, changed: Path | None = None, without: Iterable[str] = ()) -> Path:
    """A copy of the demo tables in `folder`/tables, less some files, with the files of `changed` laid over it."""
    target = folder / "tables"
    shutil.copytree(demo_folder(), target)
    for name in without:
        (target / name).unlink()
    for path in sorted(changed.iterdir()) if changed else ():
        old = target / path.name
        if path.is_dir():
            old.unlink()
            shutil.copytree(path, old)
        else:
            shutil.copy(path, old)
    return target


def edited(folder: Path, file: str, old: str, new: str) -> Path:
    """The demo tables with one piece of text of one file changed."""
    target = laid_over(folder)
    text = (target / file).read_text("utf-8")
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times in {file}"
    (target / file).write_text(text.replace(old, new), "utf-8")
    return target


def with_edits(folder: Path, lines: Iterable[str]) -> Path:
    """The demo tables after edits: `table | row | column | value`, `| out`, `| copied as | name`, `| last from | day`."""
    target = laid_over(folder)
    for line in lines:
        table, name, *what = (part.strip() for part in line.split("|"))
        with (target / f"{table}.csv").open(encoding="utf-8", newline="") as file:
            headers, *rows = csv.reader(file)
        mine = [row for row in rows if row[0] == name]
        assert mine, line
        if what == ["out"]:
            rows = [row for row in rows if row not in mine]
        elif what[0] == "last from":  # the newest copy of a row begins on this day
            mine[-1][headers.index("from")] = what[1]
        elif what[0] == "copied as":
            rows.append([what[1], *mine[0][1:]])
        else:
            mine[0][headers.index(what[0])] = what[1]
        with (target / f"{table}.csv").open("w", encoding="utf-8", newline="") as file:
            csv.writer(file, lineterminator="\n").writerows([headers, *rows])
    return target


def damaged(folder: Path, lines: Iterable[str]) -> Path:
    """The demo's workbook after somebody did this to it: merge, hide, strike, hide-column, formula, set, format, truth, each with
    a cell; copy-sheet with a sheet;
    hide-sheet with a sheet; begin with the day that every row is to begin."""
    from openpyxl import load_workbook

    book = load_workbook(BytesIO(demo_bytes()))
    for line in lines:
        what, cell, *rest = line.split(" ", 2)
        if what == "hide-sheet":
            book[cell].sheet_state = "hidden"
            continue
        if what == "copy-sheet":
            book.copy_worksheet(book[cell]).title = rest[0]
            continue
        if what == "begin":
            for name in TABLES:
                column = next(c.column for c in book[name][1] if c.value == "from")
                for row in range(2, len(demo().rows[name]) + 2):
                    book[name].cell(row, column, cell)
            continue
        sheet, at = cell.split("!")
        if what == "merge":
            book[sheet].merge_cells(at)
        elif what == "strike":
            for cell in book[sheet][int(at)]:
                font = copy(cell.font)
                font.strike = True
                cell.font = font
        elif what == "hide-column":
            book[sheet].column_dimensions[at].hidden = True
        elif what == "hide":
            book[sheet].row_dimensions[int(at)].hidden = True
        elif what == "format":
            book[sheet][at].number_format = rest[0]
        elif what == "truth":
            book[sheet][at] = True
        elif what in ("formula", "set"):
            book[sheet][at] = rest[0]
        else:
            raise ValueError(what)
    path = folder / "prices.xlsx"
    book.save(path)
    return path

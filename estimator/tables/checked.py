"""The cells of a set of tables in; the firm's tables, or everything wrong with them, out."""

from collections.abc import Sequence
from datetime import date
from pathlib import Path

from estimator.model.problem import Level, Place, Problem
from estimator.tables import problems as p
from estimator.tables.check_figures import FIGURE_CHECKS
from estimator.tables.check_links import LINK_CHECKS, NAME_CHECKS
from estimator.tables.check_rows import ROW_CHECKS
from estimator.tables.check_settings import WORD_CHECKS
from estimator.tables.check_use import USE_CHECKS
from estimator.tables.check_view import Known, View
from estimator.tables.csv_folder import read_folder
from estimator.tables.invented_rows import fingerprint
from estimator.tables.later_rows import first_day
from estimator.tables.lookups import arms_can_be_read
from estimator.tables.own_facts import named
from estimator.tables.raw import RawTables
from estimator.tables.read import TablesReading
from estimator.tables.row_reader import read_rows
from estimator.tables.rows import TABLES, TableRow
from estimator.tables.tables import Tables


def read_path(path: Path, day: date, known: Known) -> TablesReading:
    """Read and check the tables of a folder or a workbook as of a day."""
    return read_raw(*_raw(path), day, known)


def read_raw(raw: RawTables, problems: Sequence[Problem], day: date, known: Known) -> TablesReading:
    """The same for tables whose cells are already at hand; `problems` are those met on the way to them."""
    found = list(problems)
    rows: dict[str, tuple[TableRow, ...]] = {}
    lost: dict[str, frozenset[str]] = {}
    for name, table in raw.tables.items():
        read = read_rows(table)
        rows[name], lost[name] = read.rows, read.lost
        found += read.problems
    tables = Tables(rows, day)
    if (first := first_day(tables)) > day:
        found.append(p.BEFORE_THEY_BEGIN(Place(file=raw.file), day=day, first=first))
    elif set(rows) == set(TABLES):
        found += check(View(tables, raw, known, lost))
    if any(problem.level == Level.ERROR for problem in found):
        return TablesReading(None, _ordered(found))
    tables = Tables(rows, day, fingerprint(rows), raw.file)
    return TablesReading(tables, _ordered(found))


def check(view: View) -> list[Problem]:
    """Every check of rows and between rows; a cell that has a problem is not asked about as well."""
    checks = (*ROW_CHECKS, arms_can_be_read, *LINK_CHECKS, *NAME_CHECKS, named, *WORD_CHECKS, *USE_CHECKS)
    found = [problem for one in checks for problem in one(view)]
    wrong = {problem.place for problem in found}
    for one in FIGURE_CHECKS:
        for problem in one(view):
            if problem.place not in wrong:
                wrong.add(problem.place)
                found.append(problem)
    return found


def _raw(path: Path) -> tuple[RawTables, tuple[Problem, ...]]:
    if path.is_dir():
        return read_folder(path)
    if path.is_file():
        from estimator.tables.workbook import read_workbook

        return read_workbook(path)
    return RawTables(path.name), (p.NO_TABLES(Place(file=path.name), path=path),)


def _ordered(problems: list[Problem]) -> tuple[Problem, ...]:
    """Errors first; then by table and in the order they were found."""
    levels, tables = list(Level), list(TABLES)

    def rank(problem: Problem) -> tuple[int, int]:
        table = problem.place.table
        return levels.index(problem.level), tables.index(table) if table in tables else -1

    return tuple(sorted(problems, key=rank))

"""A folder of CSV files or a workbook in; the firm's tables, or everything wrong with them, out."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cache
from hashlib import sha256
from pathlib import Path

from estimator.disk.read import read_bytes
from estimator.model.problem import Level, Place, Problem
from estimator.tables import problems as p
from estimator.tables.check_figures import FIGURE_CHECKS
from estimator.tables.check_links import LINK_CHECKS
from estimator.tables.check_names import NAME_CHECKS
from estimator.tables.check_rows import ROW_CHECKS
from estimator.tables.check_use import USE_CHECKS
from estimator.tables.csv_folder import read_file, read_folder
from estimator.tables.fingerprint import fingerprint
from estimator.tables.known import Known
from estimator.tables.own_facts import named
from estimator.tables.raw import RawTables
from estimator.tables.row_reader import read_rows
from estimator.tables.rows import TABLES, Kept
from estimator.tables.tables import Tables
from estimator.tables.trap_arms import arms_can_be_read
from estimator.tables.view import View
from estimator.tables.waiting import first_day


@dataclass(frozen=True, slots=True)
class TablesReading:
    """The tables, None when an error was found, and all problems, worst first."""

    tables: Tables | None
    problems: tuple[Problem, ...]


def demo_folder() -> Path:
    """The demo tables: price_tables/ of a checkout, or inside the installed package."""
    package = Path(__file__).resolve().parent.parent
    inside = package / "price_tables"
    return inside if inside.is_dir() else package.parent / "price_tables"


@cache
def demo_settings() -> Mapping[str, str]:
    """Every setting the program asks for, with the demo's value and unit; empty where the demo tables are gone."""
    table, _ = read_file(demo_folder() / "settings.csv", "settings", "price_tables")
    if table is None or not {"key", "value", "unit"} <= set(table.headers):
        return {}
    at = [table.headers.index(header) for header in ("key", "value", "unit")]
    rows = [[str(row.cells[i]) for i in at] for row in table.rows if len(row.cells) > max(at)]
    return {key: f"{value} {unit}" for key, value, unit in rows}


@cache
def demo_rows() -> Tables:
    """The invented rows, unchecked: what figures are held against, and what a firm's own rows differ from."""
    raw, _ = read_folder(demo_folder())
    return Tables({name: read_rows(table).rows for name, table in raw.tables.items()}, date.max)


def read_tables(
    path: Path,
    day: date,
    quantities: Mapping[str, str] | None = None,
    facts: Collection[str] | None = None,
    methods: Collection[str] | None = None,
) -> TablesReading:
    """Read and check a set of tables as of a day.

    `quantities` (name to unit), `facts` and `methods` are what the program knows by name; None: not checked. Every setting
    of the demo tables must be there, since some step asks for it.
    Never raises for anything in the files.

    >>> reading = read_tables(demo_folder(), date(2026, 11, 25))
    >>> reading.problems
    ()
    >>> reading.tables.rate("lining")
    Decimal('124.08')
    """
    usual = None if path == demo_folder() else demo_rows()
    known = Known(quantities, facts, methods, demo_settings(), usual)
    content = _content(path)
    names = frozenset((quantities or {}).items()), frozenset(facts or ()), frozenset(methods or ())
    key = content, path.name, day, names, (quantities is None, facts is None, methods is None, usual is None)
    if key in _read:
        return _read[key]
    reading = read_raw(*_raw(path), day, known)
    if content and reading.tables is not None and content == _content(path):
        while len(_read) >= MOST_READ:
            del _read[next(iter(_read))]
        _read[key] = reading
    return reading


MOST_READ = 8
"""So many sets of tables without an error are kept read: the same files on the same day are not read and checked again."""
_read: dict[object, TablesReading] = {}


def _content(path: Path) -> tuple[tuple[str, bytes], ...]:
    """Every file's name and a digest of what it holds; nothing where one cannot be read."""
    try:
        files = sorted(path.glob("*.csv")) if path.is_dir() else [path]
        return tuple((file.name, sha256(read_bytes(file)).digest()) for file in files)
    except OSError:
        return ()


def read_raw(raw: RawTables, problems: Sequence[Problem], day: date, known: Known) -> TablesReading:
    """The same for tables whose cells are already at hand; `problems` are those met on the way to them."""
    found = list(problems)
    rows: dict[str, tuple[Kept, ...]] = {}
    lost: dict[str, frozenset[str]] = {}
    for name, table in raw.tables.items():
        read = read_rows(table)
        rows[name], lost[name] = read.rows, read.lost
        found += read.problems
    tables = Tables(rows, day)
    if (first := first_day(tables)) > day:
        found.append(p.BEFORE(Place(file=raw.file), day=day, first=first))
    elif set(rows) == set(TABLES):
        found += check(View(tables, raw, known, lost))
    if any(problem.level == Level.ERROR for problem in found):
        return TablesReading(None, _ordered(found))
    tables = Tables(rows, day, fingerprint(rows), raw.file)
    return TablesReading(tables, _ordered(found))


def check(view: View) -> list[Problem]:
    """Every check of rows and between rows; a cell that has a problem is not asked about as well."""
    checks = (*ROW_CHECKS, arms_can_be_read, *LINK_CHECKS, *NAME_CHECKS, named, *USE_CHECKS)
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

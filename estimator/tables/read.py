"""A folder of CSV files or a workbook in; the firm's tables, or everything wrong with them, out."""

from collections.abc import Collection, Mapping
from datetime import date
from functools import cache
from pathlib import Path

from estimator.disk.cache import cached
from estimator.model.frozen import Frozen
from estimator.model.problem import Problem
from estimator.tables.check_view import Known
from estimator.tables.table_files import content_of
from estimator.tables.table_files import demo_folder as demo_folder
from estimator.tables.tables import Tables


class TablesReading(Frozen):
    """The tables, None when an error was found, and all problems, worst first."""

    tables: Tables | None
    problems: tuple[Problem, ...]


@cache
def demo_settings() -> Mapping[str, str]:
    """Every setting the program asks for, with the demo's value and unit; empty where the demo tables are gone."""
    from estimator.tables.csv_folder import read_file

    table, _ = read_file(demo_folder() / "settings.csv", "settings", "price_tables")
    if table is None or not {"key", "value", "unit"} <= set(table.headers):
        return {}
    at = [table.headers.index(header) for header in ("key", "value", "unit")]
    rows = [[str(row.cells[i]) for i in at] for row in table.rows if len(row.cells) > max(at)]
    return {key: f"{value} {unit}" for key, value, unit in rows}


@cache
def demo_rows() -> Tables:
    """The invented rows, unchecked: what figures are held against, and what a firm's own rows differ from."""
    from estimator.tables.csv_folder import read_folder
    from estimator.tables.row_reader import read_rows

    raw, _ = read_folder(demo_folder())
    return Tables({name: read_rows(table).rows for name, table in raw.tables.items()}, date.max)


def read_tables(
    path: Path,
    day: date,
    quantities: Mapping[str, str] | None = None,
    facts: Collection[str] | None = None,
    methods: Collection[str] | None = None,
    before: Tables | None = None,
) -> TablesReading:
    """Read and check a set of tables as of a day; `before`: the firm's own as they were, to hold its figures against.

    `quantities` (name to unit), `facts` and `methods` are what the program knows by name; None: not checked. Every setting of
    the demo tables must be there, since some step asks for it. Never raises for anything in the files.

    >>> reading = read_tables(demo_folder(), date(2026, 11, 25))
    >>> reading.problems
    ()
    >>> reading.tables.rate("lining")
    Decimal('124.08')
    """
    usual = path == demo_folder()
    content = content_of(path)
    names = sorted((quantities or {}).items()), sorted(facts or ()), sorted(methods or ())
    asked = quantities is None, facts is None, methods is None
    about = path.name, day, names, asked, usual, before and before.fingerprint
    key = repr((content, about)), content if usual else content_of(demo_folder())
    if key in _read:
        return _read[key]

    def read() -> TablesReading:
        from estimator.tables.checked import read_path

        known = Known(quantities, facts, methods, demo_settings(), None if usual else demo_rows(), before)
        return read_path(path, day, known)

    def unchanged(_: TablesReading) -> bool:
        return content == content_of(path)

    reading = cached("tables", (repr(key).encode(),), read, unchanged) if content else read()
    return _kept(key, reading) if content and reading.tables is not None and unchanged(reading) else reading


def _kept(key: object, reading: TablesReading) -> TablesReading:
    while len(_read) >= MOST_READ:
        del _read[next(iter(_read))]
    _read[key] = reading
    return reading


MOST_READ = 8
"""So many sets of tables without an error are kept read: the same files on the same day are not read and checked again."""
_read: dict[object, TablesReading] = {}

"""Tables of a day in; the day they hold from, and the rows that begin later, out."""

from collections.abc import Iterator
from datetime import date

from estimator.model.frozen import Frozen
from estimator.tables.rows import TABLES, id_of, name_of
from estimator.tables.tables import Tables


class Waiting(Frozen, order=True):
    """A row that does not count yet."""

    begins: date
    table: str
    name: str

    def __str__(self) -> str:
        return f"waiting to begin on {self.begins}: {self.name} in {self.table}"


def waiting(tables: Tables) -> tuple[Waiting, ...]:
    """The soonest first; a row that ends another one (active no) waits like any other."""
    return tuple(sorted(_later(tables)))


def first_day(tables: Tables) -> date:
    """The day by which half of everything named in the tables has begun; before it they are the tables of another time."""
    begun: dict[tuple[object, ...], date] = {}
    for table in TABLES:
        for row in tables.rows.get(table, ()):
            key = (table, *name_of(table, row))
            begun[key] = min(begun.get(key, date.max), row.starts or date.min)
    days = sorted(begun.values())
    return days[(len(days) - 1) // 2] if days else date.min


def _later(tables: Tables) -> Iterator[Waiting]:
    for table in TABLES:
        for row in tables.rows.get(table, ()):
            if row.starts is not None and row.starts > tables.day:
                yield Waiting(row.starts, table, id_of(table, row))

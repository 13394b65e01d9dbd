"""A folder of tables in, one row of it with the firm's own figures, signed and dated, out: one file is written, whole."""

import csv
from collections.abc import Callable, Mapping
from datetime import date
from io import StringIO
from pathlib import Path

from estimator.disk.whole import read_text, write_whole
from estimator.model.frozen import Frozen

Rows = list[dict[str, str]]


class OwnTables(Frozen):
    """The folder, who keeps it, and today: every row that is changed says so in changed_by and changed_on."""

    folder: Path
    by: str
    day: date

    def text(self, table: str) -> str:
        """The file of a table as it stands. Errors: OSError."""
        return read_text(self.folder / f"{table}.csv")

    def put(self, table: str, text: str) -> None:
        """The file of a table, whole or not at all. Errors: OSError."""
        write_whole(self.folder / f"{table}.csv", text.encode("utf-8"))

    def value(self, table: str, row: str, column: str) -> str:
        """What stands in a cell of the newest row of that id; "" where there is none."""
        found = [r for r in _rows(self.text(table)) if _id(r) == row]
        return found[-1].get(column, "") if found else ""

    def set(self, table: str, row: str, values: Mapping[str, str]) -> None:
        """Write values into the newest row of that id; the day of a price is today. Errors: KeyError where there is none."""
        self._changed(table, lambda rows: self._in_row(rows, row, values))

    def copy(self, table: str, row: str, to: str, values: Mapping[str, str]) -> None:
        """A row under a new id, or that row where it stands already, with these values. Errors: KeyError."""

        def changed(rows: Rows) -> Rows:
            if not any(_id(r) == to for r in rows):
                new = dict(next(r for r in rows if _id(r) == row))
                new[next(iter(new))] = to
                rows = [*rows, new]
            return self._in_row(rows, to, values)

        self._changed(table, changed)

    def crew(self, name: str, members: Mapping[str, str]) -> None:
        """Who is in a crew and how many of each, instead of who was."""

        def changed(rows: Rows) -> Rows:
            old = next(r for r in rows if _id(r) == name)
            at = rows.index(old)
            new = [self._signed({**old, "role": role, "count": count, "note": ""}) for role, count in members.items()]
            rest = [r for r in rows if _id(r) != name]
            return [*rest[:at], *new, *rest[at:]]

        self._changed("crews", changed)

    def _in_row(self, rows: Rows, row: str, values: Mapping[str, str]) -> Rows:
        at = max((i for i, r in enumerate(rows) if _id(r) == row), default=None)
        if at is None:
            raise KeyError(row)
        new = {**rows[at], **values}
        if "cost" in values and "price_day" in new:
            new["price_day"] = self.day.isoformat()
        return [*rows[:at], self._signed(new), *rows[at + 1 :]]

    def _signed(self, row: dict[str, str]) -> dict[str, str]:
        return {**row, "changed_by": self.by, "changed_on": self.day.isoformat()}

    def _changed(self, table: str, change: Callable[[Rows], Rows]) -> None:
        text = self.text(table)
        out = StringIO(newline="")
        lines = csv.DictWriter(out, _headers(text), lineterminator="\n")
        lines.writeheader()
        lines.writerows(change(_rows(text)))
        self.put(table, out.getvalue())


def _headers(text: str) -> list[str]:
    return next(csv.reader(StringIO(text)))


def _rows(text: str) -> Rows:
    return [dict(row) for row in csv.DictReader(StringIO(text))]


def _id(row: Mapping[str, str]) -> str:
    return next(iter(row.values()))

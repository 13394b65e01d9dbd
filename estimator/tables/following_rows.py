"""The rows of a table in; for each the rows that count on a day, out: a later row replaces the one that it follows.

A row follows the older one of its own name. In recipes and factors the name holds what a newer row may well change (quantity,
facts, tasks): there, where no older row has the very same name, it follows the one older row of its head: recipes by work item,
part and ref, factors by fact.
"""

from collections.abc import Iterable, Mapping
from datetime import date

from estimator.tables.rows import TABLES, TableRow, name_of

HEADS: Mapping[str, tuple[str, ...]] = {"recipes": ("work_item", "part", "ref"), "factors": ("fact",)}

Key = tuple[object, ...]


def in_force(table: str, rows: Iterable[TableRow], day: date) -> tuple[tuple[TableRow, ...], tuple[TableRow, ...]]:
    """The rows that count, those out of use (active no) among them; and those of which nobody can tell what they follow."""
    chains: dict[Key, dict[Key, TableRow]] = {}
    unclear: list[TableRow] = []
    begun = [row for row in rows if row.starts is None or row.starts <= day]
    for starts in sorted({row.starts or date.min for row in begun}):
        same_day = (row for row in begun if (row.starts or date.min) == starts)
        batch = [(row, _head(table, row), _name(table, row)) for row in same_day]
        exact: dict[Key, set[Key]] = {}
        for _, head, name in batch:
            if name in chains.get(head, {}):
                exact.setdefault(head, set()).add(name)
        before = {head: set(chain) for head, chain in chains.items()}
        for row, head, name in batch:
            older = before.get(head, set()) - exact.get(head, set())
            if table in HEADS and name not in before.get(head, set()) and older and head not in exact:
                if len(older) > 1:
                    unclear.append(row)
                else:
                    chains[head].pop(next(iter(older)), None)
            chains.setdefault(head, {})[name] = row
    return tuple(row for chain in chains.values() for row in chain.values()), tuple(unclear)


def _head(table: str, row: TableRow) -> Key:
    return tuple(getattr(row, n) for n in HEADS.get(table, TABLES[table][1]))


def _name(table: str, row: TableRow) -> Key:
    """What names a row; words in any order are the same words."""
    return tuple(tuple(sorted(v)) if isinstance(v, tuple) else v for v in name_of(table, row))

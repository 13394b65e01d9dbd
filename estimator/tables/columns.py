"""A table's name in, its columns out: header, kind of value, what it refers to, what an empty cell means."""

from collections.abc import Mapping
from dataclasses import MISSING, fields
from datetime import date
from decimal import Decimal
from functools import cache
from types import UnionType
from typing import Any, Literal, get_args, get_origin, get_type_hints

from estimator.model.frozen import Frozen
from estimator.tables.row_base import Usual
from estimator.tables.rows import HEADERS, TABLES

Kind = Literal["text", "words", "number", "dollars", "whole", "yes/no", "day"]

KINDS: Mapping[Any, Kind] = {
    str: "text",
    float: "number",
    Decimal: "dollars",
    int: "whole",
    bool: "yes/no",
    date: "day",
    tuple: "words",
}


class Column(Frozen):
    """One column. `name` is the field, `header` what stands on top, `empty` whether a cell may be empty."""

    name: str
    header: str
    kind: Kind
    empty: bool
    blank: str | None  # what an empty cell is read as
    note: str
    refers: str
    choices: tuple[str, ...]
    least: float | None
    kept: bool  # one of the columns every table has
    optional: bool  # the column itself may be missing
    above: float | None = None
    usual: Usual | None = None
    names: bool = False  # names a row of this or of another table, or a word that the program knows

    @property
    def money(self) -> bool:
        """Shown with cents."""
        return self.name in ("wage", "cost", "price", "min_charge", "deposit_cap_amount")

    @property
    def amount(self) -> bool:
        return self.kind in ("number", "dollars", "whole")

    @property
    def percent(self) -> bool:
        """Written as 8.25 for 8.25 %, whatever the cell looks like."""
        return self.amount and (self.name == "percent" or self.name.endswith("_percent"))


@cache
def columns(table: str) -> tuple[Column, ...]:
    """The table's own columns in their order, then those every table has.

    >>> [c.header for c in columns("roles")][:3]
    ['role', 'wage', 'burden_percent']
    """
    row, names = TABLES[table]
    hints = get_type_hints(row)
    all_columns = [_column(f, hints[f.name], names) for f in fields(row) if not f.metadata.get("hidden")]
    return tuple(sorted(all_columns, key=lambda c: c.kept))


def _column(f: Any, hint: Any, names: tuple[str, ...]) -> Column:
    optional = isinstance(hint, UnionType)
    plain = next(a for a in get_args(hint) if a is not type(None)) if optional else hint
    kind = KINDS[get_origin(plain) or plain]
    meta = f.metadata
    kept = f.name in ("starts", "active", "note", "changed_by", "changed_on")
    choices = meta.get("choices", ())
    needed = meta.get("needed") or (f.name == names[0]) or (choices and "" not in choices)
    may_be_empty = kept or optional or kind == "words" or (kind == "text" and not needed)
    blank = "yes" if f.name == "active" else meta.get("blank")
    return Column(
        name=f.name,
        header=HEADERS.get(f.name, f.name),
        kind=kind,
        empty=bool(may_be_empty or blank is not None),
        blank=blank,
        note=meta["note"],
        refers=meta.get("refers", ""),
        choices=choices,
        least=meta.get("least"),
        kept=kept,
        optional=kept or f.default is not MISSING,
        above=meta.get("above"),
        usual=meta.get("usual"),
        names=f.name in names or kind == "words" or bool(meta.get("refers") or choices),
    )

"""Frozen records in, JSON values out; and table rows back from them.

>>> from decimal import Decimal
>>> plain((Decimal("1.50"), None, frozenset({"b", "a"})))
['1.50', None, ['a', 'b']]
"""

import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from decimal import Decimal
from enum import Enum
from pathlib import PurePath
from types import UnionType
from typing import Any, get_args, get_origin, get_type_hints

from estimator.tables.rows import TABLES, Kept


def plain(value: object) -> Any:
    """A record as dicts, lists, text and numbers; money and days as text. Errors: TypeError for anything else."""
    if isinstance(value, Enum):
        return value.value
    if value is None or isinstance(value, (str, bool, int, float)):
        return value
    if isinstance(value, (Decimal, date, PurePath)):
        return str(value)
    if is_dataclass(value) and not isinstance(value, type):
        return {f.name: plain(getattr(value, f.name)) for f in fields(value)}
    if isinstance(value, Mapping):
        return {str(key): plain(inner) for key, inner in value.items()}
    if isinstance(value, (frozenset, set)):
        return sorted(plain(inner) for inner in value)
    if isinstance(value, (tuple, list)):
        return [plain(inner) for inner in value]
    raise TypeError(f"no plain form for {type(value).__name__}")


def dumped(value: object) -> bytes:
    """The JSON text of a plain value, the same bytes every time."""
    return (json.dumps(value, ensure_ascii=False, indent=1, allow_nan=False) + "\n").encode("utf-8", "backslashreplace")


def row_from(table: str, values: Mapping[str, Any]) -> Kept:
    """A row of a table from its plain form. Errors: KeyError, TypeError or ValueError when it is damaged."""
    kind = TABLES[table][0]
    hints = get_type_hints(kind)
    return kind(**{name: _typed(hints[name], value) for name, value in values.items()})


def _typed(hint: Any, value: Any) -> Any:
    if value is None:
        return None
    if isinstance(hint, UnionType):
        hint = next(inner for inner in get_args(hint) if inner is not type(None))
    if get_origin(hint) is tuple:
        return tuple(value)
    if hint is date:
        return date.fromisoformat(value)
    if hint is Decimal:
        return Decimal(value)
    return hint(value)

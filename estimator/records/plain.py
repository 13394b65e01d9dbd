"""Frozen records in, JSON values out.

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
from typing import Any


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

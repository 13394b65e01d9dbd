"""Frozen records in, JSON values out.

>>> from decimal import Decimal
>>> plain((Decimal("1.50"), None, frozenset({"b", "a"})))
['1.50', None, ['a', 'b']]
"""

import json
import math
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from decimal import Decimal
from enum import Enum
from functools import cache
from json.encoder import encode_basestring
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
        return {name: plain(getattr(value, name)) for name in _names(type(value))}
    if isinstance(value, Mapping):
        return {str(key): plain(inner) for key, inner in value.items()}
    if isinstance(value, (frozenset, set)):
        return sorted(plain(inner) for inner in value)
    if isinstance(value, (tuple, list)):
        return [plain(inner) for inner in value]
    raise TypeError(f"no plain form for {type(value).__name__}")


@cache
def _names(record: type) -> tuple[str, ...]:
    return tuple(field.name for field in fields(record))


def dumped(value: object) -> bytes:
    """The JSON text of a plain value, a line for each thing in it, the same bytes every time."""
    return (_lines(value, "\n") + "\n").encode("utf-8", "backslashreplace")


_ONE = json.JSONEncoder(ensure_ascii=False, allow_nan=False).encode


def _lines(value: object, start: str) -> str:
    """As `json.dumps` with an indent of 1, which takes several times as long; `start` begins a line."""
    if isinstance(value, str):
        return encode_basestring(value)
    if value is None:
        return "null"
    if not isinstance(value, (dict, list, tuple)):
        finite = not isinstance(value, bool) and isinstance(value, (int, float)) and math.isfinite(value)
        return repr(value) if finite else _ONE(value)
    if not value:
        return "{}" if isinstance(value, dict) else "[]"
    inner = f"{start} "
    if isinstance(value, dict):
        held = f",{inner}".join([f"{encode_basestring(key)}: {_lines(one, inner)}" for key, one in value.items()])
        return f"{{{inner}{held}{start}}}"
    held = f",{inner}".join([_lines(one, inner) for one in value])
    return f"[{inner}{held}{start}]"

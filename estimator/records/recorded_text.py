"""A sentence as a record keeps it in; the sentence itself, for a reader of any language, out."""

import hashlib
import json
import math
import re
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from decimal import Decimal
from enum import Enum
from functools import cache
from json.encoder import encode_basestring
from pathlib import PurePath
from typing import Any

from estimator.model.say import Days, Dollars, Feet, FromTable, Inches, Say


def sentence(held: Mapping[str, Any]) -> Say:
    """The sentence itself; its `str` is plain English. Days of the calendar stay as they were written down.

    >>> from estimator.records.recorded_text import plain
    >>> one = Say.of("{pipe} in the yard, {n}", pipe=FromTable("Clay", "Barro"), n=Feet(12.5))
    >>> sentence(plain(one)) == one
    True
    """
    return Say(held["text"], tuple((name, _value(value)) for name, value in held["words"]))


def _value(value: Any) -> object:
    match value:
        case list():
            return tuple(_value(part) for part in value)
        case {"en": english, "es": spanish}:
            return FromTable(english, spanish)
        case {"text": _, "words": _}:
            return sentence(value)
        case {"ft": ft}:
            return Feet(ft)
        case {"inches": inches}:
            return Inches(inches)
        case {"amount": amount}:
            return Dollars(Decimal(amount))
        case {"days": days}:
            return Days(Decimal(days))
    return value


END = b"\n}\n"
SUM = re.compile(rb',\n "sum": "([0-9a-f]{64})"\n}\n\Z')


class ChangedSince(ValueError):
    """The sum is missing or another one: somebody wrote in the record, or another program made it."""


def sealed(data: Mapping[str, Any]) -> bytes:
    """The same bytes every time; the sum is the last line, over all that stands before it.

    >>> unsealed(sealed({"revision": 1}))
    {'revision': 1}
    """
    body = dumped(data)
    return body.removesuffix(END) + f',\n "sum": "{hashlib.sha256(body).hexdigest()}"'.encode() + END


def unsealed(held: bytes) -> dict[str, Any]:
    """Errors: ValueError where it is no JSON, ChangedSince where it is but not as it was written.

    >>> unsealed(sealed({"revision": 1}).replace(b": 1", b": 2"))
    Traceback (most recent call last):
        ...
    estimator.records.recorded_text.ChangedSince: it was changed after it was written
    """
    found = SUM.search(held)
    body = held[: found.start()] + END if found else held
    data = json.loads(body.decode("utf-8"))
    if not found or hashlib.sha256(body).hexdigest().encode() != found[1] or not isinstance(data, dict):
        raise ChangedSince(Say.of("it was changed after it was written"))
    return data


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

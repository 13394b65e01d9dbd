"""A sentence as a record keeps it in; the sentence itself, for a reader of any language, out."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from estimator.model.say import Days, Dollars, Feet, FromTable, Inches, Say


def sentence(held: Mapping[str, Any]) -> Say:
    """The sentence itself; its `str` is plain English. Days of the calendar stay as they were written down.

    >>> from estimator.records.plain import plain
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

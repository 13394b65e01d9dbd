"""A sentence as a record keeps it in; plain English, or the sentence itself for a reader of any language, out."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from estimator.model.say import Days, Dollars, Feet, FromTable, Inches, Say


def told(said: Mapping[str, Any]) -> str:
    """A sentence of a record in plain English.

    >>> told({"text": "{n} in the yard", "words": [["n", {"ft": 12.5}]]})
    '12.5 ft in the yard'
    """
    return str(Say(said["text"], tuple((name, _word(value)) for name, value in said["words"])))


def _word(value: Any) -> Any:
    if isinstance(value, list):
        return ", ".join(str(_word(part)) for part in value)
    match value:
        case {"en": english, "es": _}:
            return english
        case {"text": _, "words": _}:
            return told(value)
        case {"ft": ft}:
            return f"{ft:g} ft"
        case {"inches": inches}:
            return f"{inches:g} in"
        case {"amount": amount}:
            return f"${amount}"
        case {"days": days}:
            return f"{days} days"
    return value


def said(held: Mapping[str, Any]) -> Say:
    """The sentence itself; days of the calendar stay as they were written down.

    >>> from estimator.records.plain import plain
    >>> one = Say.of("{pipe} in the yard, {n}", pipe=FromTable("Clay", "Barro"), n=Feet(12.5))
    >>> said(plain(one)) == one
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
            return said(value)
        case {"ft": ft}:
            return Feet(ft)
        case {"inches": inches}:
            return Inches(inches)
        case {"amount": amount}:
            return Dollars(Decimal(amount))
        case {"days": days}:
            return Days(Decimal(days))
    return value

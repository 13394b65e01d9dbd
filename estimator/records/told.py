"""A sentence as a record keeps it in, plain English out."""

from collections.abc import Mapping
from typing import Any

from estimator.model.say import Say


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

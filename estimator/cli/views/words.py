"""Findings, stretches, lengths, money and sentences in, the words a person reads in a terminal out."""

from collections.abc import Iterable
from decimal import Decimal

from estimator.model.line import Finding, Mark
from estimator.model.say import Say
from estimator.model.stretch import Stretch


def feet(value: float) -> str:
    """`12.5 ft`, without a nought too many."""
    return f"{number(value)} ft"


def number(value: float | Decimal, places: int = 1) -> str:
    """Rounded to so many places, noughts at the end left off.

    >>> number(12.50), number(3.0), number(-0.04), number(29.1667, 3)
    ('12.5', '3', '0', '29.167')
    """
    text = f"{value:,.{places}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text in ("-0", "") else text


def at(stretch: Stretch) -> str:
    """`12.5` for a point, `12.5–18` for a stretch."""
    if stretch.length_ft < 0.05:
        return number(stretch.from_ft)
    return f"{number(stretch.from_ft)} – {number(stretch.to_ft)}"


def dollars(amount: Decimal, whole: bool = False) -> str:
    """`$4,200.00`, or `$4,200` where whole."""
    return f"${amount:,.0f}" if whole else f"${amount:,.2f}"


def finding(found: Finding) -> str:
    """`hole 3 in, soil seen, at 5–7 o'clock, photo 3`."""
    parts = [" ".join(part for part in (found.kind, *_amounts(found)) if part), *found.signs]
    if found.direction:
        parts.append(found.direction)
    if found.clock:
        a, b = found.clock
        parts.append(f"at {a} o'clock" if a == b else f"at {a}–{b} o'clock")
    if found.grade != "seen":
        parts.append(found.grade)
    if found.after_cleaning:
        parts.append("after cleaning")
    if found.photo is not None:
        parts.append(f"photo {found.photo}")
    return ", ".join(parts)


def _amounts(found: Finding) -> Iterable[str]:
    if found.percent:
        low, high = found.percent
        yield f"{number(high)} %" if low == high else f"{number(low)}–{number(high)} %"
    if found.size_in is not None:
        yield f"{number(found.size_in, 3)} in"
    if found.count is not None:
        yield f"({found.count})"
    if found.grade_word:
        yield found.grade_word


def mark(seen: Mark) -> str:
    """`branch 3 in left, live, hall bath`."""
    head = [seen.word, seen.choice or "", f"{number(seen.size_in, 3)} in" if seen.size_in else "", seen.side or ""]
    parts = [" ".join(part for part in head if part), seen.live or "", seen.name or ""]
    if seen.live and seen.proven is False:
        parts.insert(2, "not proven")
    return ", ".join(part for part in parts if part)


def sentence(said: Say | str, language: str = "en_US") -> str:
    """A sentence of the program in the reader's language, with a capital."""
    from estimator.wording.say import say

    text = (said if isinstance(said, str) else say(said, language)).strip()
    return text[:1].upper() + text[1:]

"""Findings, stretches, lengths, money, days and sentences in, the words a person reads in a terminal out, by language."""

from collections.abc import Iterable
from datetime import date
from decimal import Decimal

from estimator.cli.views.vocabulary import finding_term, term
from estimator.model.line import Finding, Mark
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.wording import numbers
from estimator.wording.say import say, speaker

ENGLISH = "en_US"


def feet(value: float, language: str = ENGLISH) -> str:
    """`12.5 ft`, without a nought too many."""
    shown = number(value, language=language)
    word = numbers.FEET[numbers.family(language)][0]
    return f"{shown} {'pie' if shown == '1' and word == 'pies' else word}"


def number(value: float | Decimal, places: int = 1, language: str = ENGLISH) -> str:
    """Rounded to so many places, noughts at the end left off, marks as the language sets them.

    >>> number(12.50), number(3.0), number(-0.04), number(29.1667, 3), number(1234.5, language="es_US")
    ('12.5', '3', '0', '29.167', '1,234.5')
    """
    text = numbers.number(value, language, places)
    return "0" if text == "-0" else text


def at(stretch: Stretch, language: str = ENGLISH) -> str:
    """`12.5` for a point, `12.5–18` for a stretch."""
    if stretch.length_ft < 0.05:
        return number(stretch.from_ft, language=language)
    return f"{number(stretch.from_ft, language=language)} – {number(stretch.to_ft, language=language)}"


def dollars(amount: Decimal, whole: bool = False, language: str = ENGLISH) -> str:
    """`$4,200.00`, or `$4,200` where whole."""
    from babel.numbers import format_currency

    pattern = "¤#,##0" if whole else "¤#,##0.00"
    return format_currency(amount, "USD", pattern, locale=language, currency_digits=False)


def day(when: date, language: str = ENGLISH) -> str:
    """`Nov 18, 2026`.

    >>> day(date(2026, 11, 18)), day(date(2026, 11, 18), "es_US")
    ('Nov 18, 2026', '18 nov 2026')
    """
    from babel.dates import format_date

    return format_date(when, "medium", locale=language)


def finding(found: Finding, language: str = ENGLISH) -> str:
    """`hole 3 in, soil seen, at 5–7 o'clock, photo 3`."""
    speak = speaker(language)
    head = " ".join(part for part in (finding_term(found.kind, language), *_amounts(found, language)) if part)
    parts = [head, *(term(sign, language) for sign in found.signs)]
    if found.direction:
        parts.append(term(found.direction, language))
    if found.clock:
        a, b = found.clock
        parts.append(speak("at {hour} o'clock", hour=str(a) if a == b else f"{a}–{b}"))
    if found.grade != "seen":
        parts.append(term(found.grade, language))
    if found.after_cleaning:
        parts.append(speak("after cleaning"))
    if found.photo is not None:
        parts.append(speak("photo {number}", number=found.photo))
    return ", ".join(parts)


def _amounts(found: Finding, language: str) -> Iterable[str]:
    if found.percent:
        low, high = (number(share, language=language) for share in found.percent)
        yield f"{high} %" if low == high else f"{low}–{high} %"
    if found.size_in is not None:
        yield inches(found.size_in, language)
    if found.count is not None:
        yield f"({found.count})"
    if found.grade_word:
        yield term(found.grade_word, language)


def inches(size_in: float, language: str = ENGLISH) -> str:
    """`1.625 in`."""
    return f"{number(size_in, 3, language)} {numbers.FEET[numbers.family(language)][1]}"


def mark(seen: Mark, language: str = ENGLISH) -> str:
    """`branch 3 in left, live, hall bath`."""
    size = inches(seen.size_in, language) if seen.size_in else ""
    head = [term(seen.word, language), term(seen.choice or "", language), size, term(seen.side or "", language)]
    parts = [" ".join(part for part in head if part), term(seen.live or "", language), term(seen.name or "", language)]
    if seen.live and seen.proven is False:
        parts.insert(2, speaker(language)("not proven"))
    return ", ".join(part for part in parts if part)


def sentence(said: Say | str, language: str = ENGLISH) -> str:
    """A sentence of the program in the reader's language, with a capital."""
    return capital(said if isinstance(said, str) else say(said, language))


def capital(text: str) -> str:
    """The text with a capital at its beginning.

    >>> capital("main risk")
    'Main risk'
    """
    text = text.strip()
    return text[:1].upper() + text[1:]

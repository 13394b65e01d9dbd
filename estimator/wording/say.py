"""A Say and a language in, the sentence in that language out; catalogs are compiled ones (.mo), read once."""

import gettext
import re
from collections.abc import Callable, Mapping
from datetime import date
from decimal import Decimal
from functools import lru_cache
from pathlib import Path

from estimator.model.say import Days, Dollars, Feet, FromTable, Inches, Say, Typed, filled
from estimator.wording import numbers

LOCALES = Path(__file__).parent / "locales"
NOTES_LANGUAGE = "en"
"""Texts stand in the source in this language, so it needs no catalog."""

Speaker = Callable[..., str]
"""Says the text with its gaps filled: speak("{what} costs {price}", what=..., price=...)."""


@lru_cache(maxsize=4)
def catalog(language: str) -> gettext.NullTranslations:
    """Return the compiled catalog; English says what the source says.

    Errors: FileNotFoundError for another language that has none.
    """
    if numbers.family(language) == NOTES_LANGUAGE:
        return gettext.NullTranslations()
    with (LOCALES / language / "LC_MESSAGES" / "estimator.mo").open("rb") as file:
        return gettext.GNUTranslations(file)


def say(what: Say, language: str) -> str:
    """The sentence in the language, its gaps filled in the reader's manner.

    >>> say(Say.of("{distance} outside the house wall", distance=Feet(29.0)), "es_US")
    'a 29 pies fuera de la pared de la casa'
    """
    text = catalog(language).gettext(what.text) if what.text else ""
    said = filled(text, {name: in_gap(name, value, language) for name, value in what.words})
    return contracted(said) if numbers.family(language) == "es" else said


CONTRACTIONS = ((re.compile(r"\b([Dd])e el\b"), r"\1el"), (re.compile(r"\b([Aa]) el\b"), r"\1l"))


def contracted(spanish: str) -> str:
    """Return Spanish in which a preposition and the article after it, met where a gap was filled, are one word.

    >>> contracted("debajo de el pasillo y el patio, junto a el muro; de él")
    'debajo del pasillo y el patio, junto al muro; de él'
    """
    for two, one in CONTRACTIONS:
        spanish = two.sub(one, spanish)
    return spanish


def in_gap(gap: str, value: object, language: str) -> str:
    """Return a value as the reader writes it; in a gap named `line` a word stands for a drain, never for a room or the ground.

    >>> in_gap("line", "yard", "es_US"), in_gap("zone", "yard", "es_US")
    ('línea del patio', 'bajo el patio')
    """
    if gap == "line" and isinstance(value, str) and numbers.family(language) != NOTES_LANGUAGE:
        from estimator.wording.plain import LINES

        return say(LINES[value], language) if value in LINES else shown(value, language)
    return shown(value, language)


def shown(value: object, language: str) -> str:
    """A value as the reader writes it."""
    match value:
        case Say():
            return say(value, language)
        case Feet():
            return numbers.feet(value.ft, language)
        case Inches():
            return f"{numbers.inches(value.inches)} {numbers.FEET[numbers.family(language)][1]}"
        case Typed():
            return value.text
        case FromTable():
            return pick(language, value.en, value.es)
        case Dollars():
            return numbers.money(value.amount, language)
        case Days():
            return numbers.days(value.days, language)
        case date():
            return numbers.long_date(value, language)
        case bool():
            return say(Say.of("yes") if value else Say.of("no"), language)
        case int() | float() | Decimal():
            return numbers.number(value, language)
        case tuple():
            return numbers.listed([shown(part, language) for part in value], language)
    return plain_words(str(value), language)


def plain_words(text: str, language: str) -> str:
    """A word of the notes, or several parted by commas, in a language other than that of the notes; other text as it is.

    >>> plain_words("hole, sag", "es_US"), plain_words("Mrs. Den", "es_US"), plain_words("hole", "en_US")
    ('un hoyo, un hundimiento (panza) donde se junta agua', 'Mrs. Den', 'hole')
    """
    if numbers.family(language) == NOTES_LANGUAGE:
        return text
    from estimator.wording.typed_words import known

    parts = [text] if text in known_words() else text.split(", ")
    return ", ".join(say(found, language) if (found := known(p)) else p for p in parts)


def in_language(text: Say | str, language: str) -> str:
    """Return a sentence, or a text of the notes, in a language."""
    return say(text, language) if isinstance(text, Say) else plain_words(text, language)


@lru_cache(maxsize=1)
def known_words() -> Mapping[str, Say]:
    """Every word of the notes that has a plain one."""
    from estimator.wording import places, plain

    return {
        **places.PLACES,
        **plain.ROOMS,
        **plain.LINES,
        **plain.PIPES,
        **plain.ZONES,
        **plain.FINDINGS,
        **places.WALLS,
    }


def spoken(text: str, language: str) -> str:
    """A text without gaps (a rule's statement, a formula, a task's name) where the catalog has it; else as it stands.

    >>> spoken("common practice", "es_US"), spoken("Ines's own way", "es_US"), spoken("common practice", "en_US")
    ('práctica común', "Ines's own way", 'common practice')
    """
    if not text or numbers.family(language) == NOTES_LANGUAGE:
        return text
    return catalog(language).gettext(text)


def capital(text: str) -> str:
    """Return the text with a capital at its beginning."""
    return text[:1].upper() + text[1:]


def speaker(language: str) -> Speaker:
    """A function that says a text in one language."""

    def speak(text: str, **words: object) -> str:
        return say(Say.of(text, **words), language)

    return speak


def pick(language: str, english: str, spanish: str) -> str:
    """The text of a table row in the language; the other one where the row has none."""
    wanted, other = (spanish, english) if numbers.family(language) == "es" else (english, spanish)
    return wanted or other

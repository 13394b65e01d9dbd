"""A sentence to be said in the reader's language: the English text with named gaps, and what fills them."""

import re
from collections.abc import Iterable, Mapping
from decimal import Decimal

from estimator.model.frozen import Frozen


class Feet(Frozen):
    """A length to be shown in the reader's manner."""

    ft: float


class Dollars(Frozen):
    """An amount to be shown in the reader's manner; cents only where there are any."""

    amount: Decimal


class Days(Frozen):
    """A number of days, halves among them, to be shown with its word."""

    days: Decimal


class Inches(Frozen):
    """A size or a drop in inches."""

    inches: float


class FromTable(Frozen):
    """A text the firm keeps in its tables in both languages."""

    en: str
    es: str


class Typed(Frozen):
    """What stands as somebody typed it, in every language: a key, a command, a word of the notes."""

    text: str


class Say(Frozen):
    """`text` is the message id of the catalogs (English with {gaps}); `words` are (gap, value) pairs.

    A value is text, a number, a date, Feet, Inches, Dollars, Days, FromTable, Typed, another Say, or a tuple of these (said as a list).

    >>> Say.of("the pipe is open at {at}", at=Feet(12.5)).text
    'the pipe is open at {at}'
    """

    text: str
    words: tuple[tuple[str, object], ...] = ()

    @classmethod
    def of(cls, text: str, **words: object) -> "Say":
        return cls(text, tuple(words.items()))

    @classmethod
    def typed(cls, text: str, **words: object) -> "Say":
        """A sentence with what somebody typed in its gaps: words stand as they are in every language.

        >>> Say.typed("{file} is written", file="main.txt").words
        (('file', Typed(text='main.txt')),)
        """
        return cls(text, tuple((gap, Typed(word) if isinstance(word, str) else word) for gap, word in words.items()))

    def __str__(self) -> str:
        """Plain English, for logs and tests; people get it through wording.say()."""
        return filled(self.text, {name: str(_plain(value)) for name, value in self.words})


def chained(parts: Iterable[object], between: str = "; ") -> Say:
    """Return several sentences or words as one, each said in its own way.

    >>> str(chained([Say.of("no price"), "A"], ", "))
    'no price, A'
    """
    words = {f"part{at}": part for at, part in enumerate(parts)}
    return Say.of(between.join(f"{{{name}}}" for name in words), **words)


GAP = re.compile(r"\{(\w+)\}")


def filled(text: str, words: Mapping[str, str]) -> str:
    """Return the text with its named gaps filled; nothing else in it is read as a command, whoever wrote it.

    An empty word takes the blank beside it along.

    >>> filled("{n} ft, {n:9999999999}, {other}", {"n": "3"}), filled("{hint} Write 3. {more}", {"hint": "", "more": ""})
    ('3 ft, {n:9999999999}, {other}', 'Write 3.')
    """
    for gap in (f"{{{name}}}" for name, word in words.items() if not word):
        text = text.replace(f"{gap} ", "").replace(f" {gap}", "")
    return GAP.sub(lambda gap: words.get(gap[1], gap[0]), text)


def _plain(value: object) -> object:
    if isinstance(value, Feet):
        return f"{value.ft:g} ft"
    if isinstance(value, Dollars):
        return f"${value.amount:,}"
    if isinstance(value, Days):
        return f"{value.days.normalize():f} days"
    if isinstance(value, Inches):
        return f"{value.inches:g} in"
    if isinstance(value, FromTable):
        return value.en
    if isinstance(value, Typed):
        return value.text
    if isinstance(value, tuple):
        return ", ".join(str(_plain(part)) for part in value)
    return value

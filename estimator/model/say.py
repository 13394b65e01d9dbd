"""A sentence to be said in the reader's language: the English text with named gaps, and what fills them."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Feet:
    """A length to be shown in the reader's manner."""

    ft: float


@dataclass(frozen=True, slots=True)
class Say:
    """`text` is the message id of the catalogs (English with {gaps}); `words` are (gap, value) pairs.

    >>> Say.of("the pipe is open at {at}", at=Feet(12.5)).text
    'the pipe is open at {at}'
    """

    text: str
    words: tuple[tuple[str, object], ...] = ()

    @classmethod
    def of(cls, text: str, **words: object) -> "Say":
        return cls(text, tuple(words.items()))

    def __str__(self) -> str:
        """Plain English, for logs and tests; people get it through wording.say()."""
        shown = {name: f"{value.ft:g} ft" if isinstance(value, Feet) else value for name, value in self.words}
        return self.text.format(**shown)

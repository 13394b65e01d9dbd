"""The word for a pipe in the notes in, its family out: iron, clay, concrete, fibre, plastic or metal.

Source: common practice (the families behave alike when cut, lined or burst).
"""

from functools import cache
from typing import Literal

Family = Literal["iron", "clay", "concrete", "fibre", "plastic", "metal", "unknown"]

_WORDS: tuple[tuple[Family, tuple[str, ...]], ...] = (
    ("fibre", ("fiber", "fibre", "bituminous", "tar paper", "tar-paper")),
    ("iron", ("iron",)),
    ("clay", ("clay",)),
    ("concrete", ("concrete", "cement")),
    ("plastic", ("pvc", "abs", "hdpe", "plastic", "poly")),
    ("metal", ("galvani", "lead", "copper", "steel")),
)


@cache
def family(pipe: str) -> Family:
    """The family of a pipe by a word in its name.

    >>> family("cast iron"), family("PVC SDR 35"), family("tar paper")
    ('iron', 'plastic', 'fibre')
    """
    low = pipe.lower()
    return next((name for name, words in _WORDS if any(word in low for word in words)), "unknown")

"""A word nobody knows in, the nearest known ones out."""

from collections.abc import Iterable
from difflib import get_close_matches

from estimator.model.say import Say

NOTHING = Say("")


def near(word: str, known: Iterable[str]) -> Say:
    """A sentence that names up to three known words like this one, or an empty one.

    >>> str(near("recips", ["recipes", "roles"]))
    'Perhaps “recipes” is meant.'
    """
    lower = {k.lower(): k for k in known}
    found = [f"“{lower[m]}”" for m in get_close_matches(word.strip().lower(), lower, n=3, cutoff=0.6)]
    if len(found) > 1:
        return Say.of("Perhaps {first} or {last} is meant.", first=" or ".join(found[:-1]), last=found[-1])
    return Say.of("Perhaps {first} is meant.", first=found[0]) if found else NOTHING


def near_or_all(word: str, known: Iterable[str], most: int = 8) -> Say:
    """The nearest words; where none is near, the first of all known."""
    words = list(known)
    first, rest = ", ".join(words[:most]), len(words) - most
    if (like := near(word, words)) is not NOTHING:
        return like
    if rest > 0:
        return Say.of("Known are: {words} and {count} more.", words=first, count=rest)
    return Say.of("Known are: {words}.", words=first)

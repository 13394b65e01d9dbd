"""A word nobody knows in, the nearest known ones out."""

from collections.abc import Iterable
from difflib import get_close_matches

from estimator.model.say import Say, Typed


def near(word: str, known: Iterable[str]) -> Say | str:
    """A sentence that names up to three known words like this one, or an empty text.

    >>> str(near("recips", ["recipes", "roles"])), near("x", ["recipes"])
    ('Perhaps “recipes” is meant.', '')
    """
    lower = {k.lower(): k for k in known}
    found = [lower[m] for m in get_close_matches(word.strip().lower(), lower, n=3, cutoff=0.6)]
    match [Typed(f"“{word}”") for word in found]:
        case [one]:
            return Say.of("Perhaps {one} is meant.", one=one)
        case [one, two]:
            return Say.of("Perhaps {one} or {two} is meant.", one=one, two=two)
        case [one, two, three]:
            return Say.of("Perhaps {one} or {two} or {three} is meant.", one=one, two=two, three=three)
    return ""


def near_or_all(word: str, known: Iterable[str], most: int = 8) -> Say:
    """The nearest words; where none is near, the first of all known."""
    words = list(known)
    if isinstance(meant := near(word, words), Say):
        return meant
    shown, more = Typed(", ".join(words[:most])), len(words) - most
    if more > 0:
        return Say.of("Known are: {words} and {count} more.", words=shown, count=more)
    return Say.of("Known are: {words}.", words=shown)

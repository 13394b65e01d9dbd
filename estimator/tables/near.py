"""A word nobody knows in, the nearest known ones out."""

from collections.abc import Iterable
from difflib import get_close_matches


def near(word: str, known: Iterable[str]) -> str:
    """A sentence that names up to three known words like this one, or an empty text.

    >>> near("recips", ["recipes", "roles"])
    'Perhaps “recipes” is meant. '
    """
    lower = {k.lower(): k for k in known}
    found = [lower[m] for m in get_close_matches(word.strip().lower(), lower, n=3, cutoff=0.6)]
    if not found:
        return ""
    return f"Perhaps {' or '.join(f'“{f}”' for f in found)} is meant. "


def near_or_all(word: str, known: Iterable[str], most: int = 8) -> str:
    """The nearest words; where none is near, the first of all known."""
    words = list(known)
    more = f" and {len(words) - most} more" if len(words) > most else ""
    return near(word, words).strip() or f"Known are: {', '.join(words[:most])}{more}."

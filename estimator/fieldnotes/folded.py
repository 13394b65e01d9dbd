"""A phrase of lexicon.toml as it is written, with its choices, in; the phrases it stands for, as far as one asks, out."""

import itertools
import re
from collections.abc import Iterable, Iterator

Key = tuple[str, ...]  # the words of a phrase
Folded = tuple[tuple[Key, ...], ...]  # what may stand in each of its places


def phrase_key(phrase: str) -> Key:
    """Return the words of a phrase as they are compared: in small letters, without apostrophes, `a.b.s.` without its last dot."""
    words = phrase.lower().split()
    return tuple(map(bare, words) if "'" in phrase or "." in phrase else words)


def bare(word: str) -> str:
    """Return a word without apostrophes and without the dot of a shortening."""
    word = word.replace("'", "")
    return word.rstrip(".") if len(word) > 2 else word


def folded(phrase: str) -> Folded:
    """Return what may stand in each place of a phrase written with choices, such as `{cant,wont} pass`; an empty choice leaves
    the word out.

    >>> folded("{cant,wont} {get ,}thru")
    ((('cant',), ('wont',)), (('get', 'thru'), ('thru',)))
    """
    if "{" not in phrase:
        return ((phrase_key(phrase),),)
    places = re.findall(r"(?:\{[^}]*\}|[^ {])+", phrase)
    return tuple(tuple(dict.fromkeys(map(phrase_key, _each(place)))) for place in places)


def _each(place: str) -> Iterator[str]:
    parts = re.split(r"\{([^}]*)\}", place)
    for chosen in itertools.product(*(part.split(",") if n % 2 else [part] for n, part in enumerate(parts))):
        yield "".join(chosen)


def unfolded(folded: Folded) -> Iterator[Key]:
    """Every phrase it stands for, in the order in which its choices are written."""
    return (tuple(itertools.chain.from_iterable(chosen)) for chosen in itertools.product(*folded))


def beginning(folded: Folded, first: str) -> Iterator[Key]:
    """Those of them that begin with this word."""
    if () not in folded[0]:
        folded = (tuple(words for words in folded[0] if words[0] == first), *folded[1:])
    return (key for key in unfolded(folded) if key[:1] == (first,))


def first_words(folded: Folded) -> Iterable[str]:
    """Each word that one of them begins with."""
    if len(folded[0]) == 1 and folded[0][0]:  # most are written without a choice
        return folded[0][0][:1]
    found: dict[str, None] = {}
    for place in folded:
        found |= dict.fromkeys(words[0] for words in place if words)
        if () not in place:
            break
    return found


def single_words(folded: Folded) -> list[Key]:
    """The phrases of one word among those it stands for: all places but one are left out."""
    needed = [place for place in folded if () not in place]
    places = folded if not needed else needed if len(needed) == 1 else ()
    return [words for place in places for words in place if len(words) == 1]

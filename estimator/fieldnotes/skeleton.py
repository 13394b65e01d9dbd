"""A word typed without its vowels or its end in (`grse`, `strts`, `collap`); the words of the lexicon that it may stand for, out."""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cache, lru_cache

from estimator.fieldnotes.lexicon import lexicon

LEAST_LETTERS = 3
"""A word of fewer letters is written out only as part of a phrase: `fist sz`."""
SHORTEST_WHOLE = 4
LEAST_BEGUN = 4
"""Letters of a word that breaks off: `vert`, `collap`."""
_NO_VOWELS, _DOUBLED = dict.fromkeys(map(ord, "aeiou")), re.compile(r"(.)\1+")
SHORTEST_REMARK = 5
UNITS = ("pct", "prcnt", "cent", "deg", "pulg", "inchs", "feets", "ftg")


def skeleton(word: str) -> str:
    """Return the first letter and the consonants, each doubled one once.

    >>> skeleton("collapsed"), skeleton("clpsd"), skeleton("block"), skeleton("blk")
    ('clpsd', 'clpsd', 'blk', 'blk')
    """
    return _DOUBLED.sub(r"\1", word[:1] + word[1:].translate(_NO_VOWELS).replace("ck", "k"))


def _left_out(typed: str, whole: str) -> bool:
    """Whether only vowels, a doubled letter or the c of ck were left out: `sittin` has its vowels, and is no `situation`."""
    letters = [f"{c}?{c}" if c != "k" else "c?k" for c in typed]
    vowels = sum(c in "aeiou" for c in typed[1:])
    fewer = sum(c in "aeiou" for c in whole[1:]) - vowels
    return vowels <= max(fewer, 1) and bool(re.fullmatch("[aeiou]*".join([*letters, ""]), whole)) and typed != whole


@cache
def _whole_words() -> Mapping[str, Sequence[str]]:
    lex = lexicon()
    out: dict[str, list[str]] = defaultdict(list)
    for word in sorted(lex.english):
        if len(word) >= SHORTEST_WHOLE and word.isalpha():
            out[skeleton(word)].append(word)
    return out


def _begin_with(typed: str) -> Iterator[str]:
    return (
        word for word in sorted(lexicon().english) if word.startswith(typed) and len(word) >= len(typed) + LEAST_LETTERS
    )


@lru_cache(maxsize=4096)
def may_stand_for(typed: str) -> tuple[str, ...]:
    """Return the words of which only vowels and doubled letters were left out, or else those it begins.

    >>> may_stand_for("ofst"), may_stand_for("grse"), may_stand_for("collap")
    (('offset',), ('grease',), ('collapsed', 'collapsing'))
    """
    if not typed.isalpha() or not typed.isascii() or typed in UNITS:
        return ()
    found = tuple(word for word in _whole_words().get(skeleton(typed), ()) if _left_out(typed, word))
    broken_off = len(typed) >= LEAST_BEGUN and not lexicon().known(typed)
    return found or (tuple(_begin_with(typed)) if broken_off else ())


@lru_cache(maxsize=4096)
def written_out(typed: str) -> str:
    """Return the one word of the lexicon it stands for; what was typed where that is spelt so, or may stand for several.

    >>> written_out("grse"), written_out("bnd"), written_out("clr")
    ('grease', 'bend', 'clr')
    """
    lex = lexicon()
    if len(typed) < LEAST_LETTERS or typed in lex.whole or f"{typed}g" in lex.whole:
        return typed
    own, said = lex.means((typed,)), {word: lex.means((word,)) for word in may_stand_for(typed)}
    if any(lex.guarded((word,)) for word in said):
        return typed
    if own:  # a shortening that is listed
        said = {word: means for word, means in said.items() if own.items() <= means.items()}
    if len(typed) < SHORTEST_REMARK:
        said = {
            word: means for word, means in said.items() if "remark" not in means or means.keys() - {"remark", "plain"}
        }
    heavy = [word for word, means in said.items() if means and "plain" not in means]
    among = heavy or list(said)
    alike = len({frozenset(said[word].items()) for word in among}) == 1
    mixed = heavy and any("plain" in means for means in said.values())
    return among[0] if among and alike and not mixed and (heavy or len(among) == 1) else typed


def says_nothing(typed: str) -> bool:
    """Return whether all that it may stand for are words of the language alone."""
    words = may_stand_for(typed)
    return bool(words) and not any(lexicon().means((word,)) for word in words)


WORD = re.compile(r"(?<![\w/'])[a-z]+(?![\w/'])")


def with_vowels(text: str, but: Iterable[str] = ()) -> str:
    """Return a line in small letters with the vowels that were left out; words of `but` stay as they are.

    >>> with_vowels("36 1/8 bnd rt")
    '36 1/8 bend rt'
    """
    kept = frozenset(but)
    return WORD.sub(lambda m: m[0] if m[0] in kept else written_out(m[0]), text)

"""A word or phrase as typed in; the one of the lexicon that was meant, or the word of danger it is like, out."""

import itertools
from functools import lru_cache

from rapidfuzz import process
from rapidfuzz.distance import OSA

from estimator.fieldnotes.lexicon import SHORTEST_SLIP, lexicon
from estimator.fieldnotes.skeleton import may_stand_for

LONG_WORD = 8
"""Letters from which on two slips may be made in a word: `drowned` is no `dropped`."""


@lru_cache(maxsize=4096)
def nearest(word: str) -> tuple[str, str]:
    """(the word meant, "") or ("", a guarded word it is like) or ("", "")."""
    lex = lexicon()
    if word in lex.whole:
        return "", ""
    most = 1 if len(word) < LONG_WORD else 2
    if len(word) >= 3:
        guarded = [w for w in lex.single_guarded if abs(len(w) - len(word)) <= 1]
        hit = process.extractOne(word, guarded, scorer=OSA.distance, score_cutoff=1)
        if hit is not None:
            return "", hit[0]
    if len(word) < SHORTEST_SLIP:
        return "", ""
    hits = process.extract(word, lex.single, scorer=OSA.distance, score_cutoff=most, limit=6)
    hits = [h for h in hits if _one_slip(word, h[0], int(h[1]))]
    if not hits:
        return "", ""
    best = min(h[1] for h in hits)
    near = [h[0] for h in hits if h[1] == best]
    turned = [w for w in near if sorted(w) == sorted(word)]  # two letters in each other's place are no other word
    near = turned or near
    if not turned and len(word) < LONG_WORD and _may_be_of_a_phrase(word, near):
        return "", ""
    if any(lex.guarded((w,)) for w in near):
        return "", near[0]
    said = {frozenset(lex.means((w,)).items()) for w in near}
    return (near[0], "") if len(said) == 1 else ("", "")


def _may_be_of_a_phrase(word: str, near: list[str]) -> bool:
    """Whether a word that says nothing alone is as near: `kiked` is `kicked` as well as `kinked`."""
    lex = lexicon()
    others = process.extract(word, lex.part_list, scorer=OSA.distance, score_cutoff=1, limit=8)
    return any(
        w not in near and w[:1] == word[:1] and not lex.means((w,)) and len(w) >= len(word) and w in lex.english
        for w, _, _ in others
    )


def _one_slip(typed: str, meant: str, steps: int) -> bool:
    """Whether fingers make this of that: `batt` is no `bath`, `partial` no `partida`."""
    if steps > 1:
        return typed[0] == meant[0] and (typed[-1] == meant[-1] or (typed[:4] == meant[:4] and len(typed) > 7))
    if len(typed) == len(meant) == SHORTEST_SLIP and sorted(typed) != sorted(meant):
        return False
    return typed[0] == meant[0] or len(typed) > SHORTEST_SLIP + 1 or sorted(typed) == sorted(meant)


PIPE = frozenset(("line", "drain", "sewer"))
"""Other words for the pipe."""


def spelt_out(key: tuple[str, ...]) -> tuple[str, ...]:
    """A phrase with its slips and shortenings spelt out, and any word for the pipe as `pipe`: `rock in line`, `dirt in the botom`."""
    lex = lexicon()
    return tuple("pipe" if word in PIPE else lex.spelt.get(word, word) for word in key)


def shortened(key: tuple[str, ...]) -> tuple[str, ...] | None:
    """A phrase of which some words lack their vowels: `rt mass`, `blk plstc`; a danger only where it is typed out: `gas ln`."""
    lex = lexicon()
    each = [(word, *may_stand_for(word)) for word in key]
    if not any(others for _, *others in each):
        return None
    for first in each[0]:
        listed = lex.beginning(first)
        for right in itertools.product((first,), *each[1:]) if listed else ():
            if right in listed and (not lex.guarded(right) or any(lex.guarded((w,)) for w in key)):
                return right
    return None


def danger_misspelt(key: tuple[str, ...]) -> str:
    """A phrase of danger with a slip in one of its words, as it is spelt: `fiiber optic`."""
    lex = lexicon()
    strange = [w for w in key if not (w in lex.parts or w in lex.language or lex.means((w,)) or len(w) < SHORTEST_SLIP)]
    if len(strange) != 1 or not strange[0].isalpha():
        return ""
    for near in process.extract(strange[0], lex.part_list, scorer=OSA.distance, score_cutoff=1, limit=5):
        right = tuple(near[0] if w == strange[0] else w for w in key)
        if lex.guarded(right):
            return " ".join(right)
    return ""


def put_right(key: tuple[str, ...]) -> tuple[str, ...] | None:
    """A phrase of several words with one of them misspelt: `standing watter`."""
    lex = lexicon()
    strange = [
        w
        for w in key
        if w not in lex.parts
        and w not in lex.language
        and not lex.means((w,))
        and len(w) >= SHORTEST_SLIP - 1
        and w.isalpha()
    ]
    if len(strange) != 1:
        return None
    for near in process.extract(
        strange[0], lex.part_list, scorer=OSA.distance, score_cutoff=1 if len(strange[0]) < LONG_WORD else 2, limit=5
    ):
        right = tuple(near[0] if w == strange[0] else w for w in key)
        if lex.means(right) and not lex.guarded(right):
            return right
    return None

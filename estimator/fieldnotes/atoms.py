"""A line's tokens in, its atoms (words with what they may mean) out: a misspelt word put right where one thing can be meant."""

import itertools
import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from msgspec import field

from estimator.fieldnotes.lexicon import Meanings, bare, lexicon, phrase_key
from estimator.fieldnotes.skeleton import may_stand_for
from estimator.fieldnotes.spelling import danger_misspelt, nearest, put_right, shortened, spelt_out
from estimator.fieldnotes.tokens import Token
from estimator.model.frozen import Frozen

MOST_FILLERS = 2  # in a row, inside a phrase
LOOSE = (
    "finding", "sign", "danger", "utility", "through", "rises", "out of water", "remark", "live", "fraction", "correct",
    "zone",
)  # fmt: skip
"""Classes whose phrases hold with fillers between their words."""


class Atom(Frozen):
    """One word or phrase of the line as it is spelt, or one number. `means` is empty for a word nobody knows."""

    text: str
    first: int  # tokens it is made of
    last: int
    means: Meanings = field(default_factory=dict)
    token: Token | None = None  # of a number or a mark
    near: str = ""  # a guarded word this unknown one is like
    slip: bool = False  # read over a misspelling

    def a(self, *classes: str) -> str | None:
        """What it means in the first of these classes it has."""
        return next((self.means[c] for c in classes if c in self.means), None)

    @property
    def unknown(self) -> bool:
        return self.token is None and not self.means


def _words(token: Token) -> str:
    return bare(token.text.lower())


def split(tokens: Sequence[Token]) -> list[Token]:
    """Words joined by a stroke or a dash taken apart where nobody knows them whole: `ci/vcp`, `root-ball`."""
    lex = lexicon()
    out: list[Token] = []
    for token in tokens:
        word = _words(token)
        if token.kind == "word" and word.endswith("in") and not lex.means((word,)) and f"{word}g" in lex.parts:
            out.append(replace(token, text=f"{token.text}g"))  # `comin`, `holdin`
            continue
        if token.kind != "word" or lex.means((word,)) or word in lex.parts:
            out.append(token)
            continue
        at = token.at
        for part in re.split(r"([./&-])", token.text):
            if part:
                kind = "word" if part[0].isalpha() else "mark"
                if part != ".":
                    out.append(replace(token, kind=kind, text=part, at=at, end=at + len(part)))
            at += len(part)
    return out


def atoms(tokens: Sequence[Token], own: Iterable[str] = ()) -> list[Atom]:
    """The line's words, the longest phrase first; a misspelt word is put right where only one thing can be meant."""
    lex = lexicon()
    names = {phrase_key(name) for name in own}
    longest = max([lex.longest, *(len(n) for n in names)])
    out: list[Atom] = []
    n = 0
    while n < len(tokens):
        token = tokens[n]
        found = None
        for size in range(min(longest, len(tokens) - n), 0, -1):
            part = tokens[n : n + size]
            if any(t.kind not in ("word", "num", "frac") for t in part) or (part[0].kind != "word" and size == 1):
                continue
            key = tuple(_words(t) if t.kind == "word" else t.text for t in part)
            if key in names:
                found = Atom(" ".join(key), n, n + size - 1, {"name": " ".join(key)})
            elif means := lex.means(key):
                found = Atom(" ".join(key), n, n + size - 1, means)
            elif size > 1 and (means := lex.means(spelt_out(key))):
                found = Atom(" ".join(spelt_out(key)), n, n + size - 1, means)
            elif size > 1 and (right := shortened(key) or put_right(key)) is not None:
                found = Atom(" ".join(right), n, n + size - 1, lex.means(right), slip=True)
            elif size > 1 and (danger := danger_misspelt(key)):
                found = Atom(" ".join(key), n, n + size - 1, near=danger)
            if found:
                break
        if found and found.last > n and _shares_last(tokens, n, found):
            key = tuple(map(_words, tokens[n : found.last]))
            found = Atom(" ".join(key), n, found.last - 1, lex.means(key))
        loose = _loose(tokens, n, found.last - n + 1 if found else 1)
        found = loose or found or _single(token, n)
        out.append(found)
        n = found.last + 1
    return out


def _shares_last(tokens: Sequence[Token], n: int, found: Atom) -> bool:
    """`tee in use`: the last word of `tee in` begins `in use`, and `tee` alone says the same; so does `see no fixtures`."""
    lex, after = lexicon(), tokens[found.last + 1 : found.last + 4]
    said = [_words(t) for t in itertools.takewhile(lambda t: t.kind == "word", after)]
    if not said or any(t.kind != "word" for t in tokens[n : found.last + 1]):
        return False
    last = _words(tokens[found.last])
    if "no" in found.means:
        return any(lex.means((last, *said[:k])) for k in range(1, len(said) + 1))
    short = tuple(map(_words, tokens[n : found.last]))
    return bool(lex.means((last, said[0]))) and lex.means(short) == found.means and not lex.means((said[0],))


def _loose(tokens: Sequence[Token], n: int, longer_than: int) -> Atom | None:
    """The longest phrase that begins here and has fillers between its words."""
    if tokens[n].kind != "word":
        return None
    lex, said = lexicon(), [_words(t) if t.kind == "word" else "" for t in tokens[n:]]
    best: tuple[int, int, tuple[str, ...]] | None = None
    for key, means in lex.beginning(said[0]).items():
        if len(key) <= (best[0] if best else longer_than) or not any(c in means for c in LOOSE):
            continue
        last = _with_fillers(key, said)
        best = best if last is None else (len(key), n + last, key)
    return Atom(" ".join(best[2]), n, best[1], lex.means(best[2])) if best else None


def _with_fillers(key: tuple[str, ...], said: Sequence[str]) -> int | None:
    """Where a phrase ends that begins the words, with at most so many fillers between two of its own."""
    at = 0
    for word in key[1:]:
        at += 1
        skipped = 0
        while at < len(said) and said[at] != word and said[at] in lexicon().fillers and skipped < MOST_FILLERS:
            at, skipped = at + 1, skipped + 1
        if at >= len(said) or said[at] != word:
            return None
    return at


def _single(token: Token, n: int) -> Atom:
    if token.kind != "word":
        return Atom(token.text, n, n, token=token)
    lex = lexicon()
    word = _words(token)
    for tried in (
        word,
        word.removesuffix("s"),
        word.removesuffix("es"),
        word.removesuffix("ed"),
        word.removesuffix("ing"),
    ):
        if len(tried) >= 3 and (means := lex.means((tried,))):
            return Atom(word, n, n, means)
    wholes = may_stand_for(word)
    right, guarded = nearest(word)
    guarded = next((whole for whole in wholes if lex.guarded((whole,))), guarded)
    right = next((whole for whole in wholes if "plain" in lex.means((whole,))), right)
    if right and not guarded:
        return Atom(right, n, n, lex.means((right,)), slip=True)
    return Atom(word, n, n, near=guarded)

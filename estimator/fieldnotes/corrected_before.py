"""A correction and the line before it in; what that line says now, out."""

import re
from collections.abc import Iterable
from dataclasses import replace
from typing import TYPE_CHECKING

from estimator.fieldnotes.bare_figures import DEGREES, SIZES_IN
from estimator.fieldnotes.drafts import shown
from estimator.fieldnotes.drafts import where as written
from estimator.fieldnotes.logproblems import more_than_whole
from estimator.fieldnotes.meaning import Meaning
from estimator.fieldnotes.tokens import Token
from estimator.fieldnotes.words import GRADE_WORDS, SIDES, standard_word
from estimator.model.frozen import Frozen
from estimator.model.lengths import show
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader

_GRADE = re.compile(rf"\b(?:{'|'.join(GRADE_WORDS)})\b")
_SIDE = re.compile(rf"\b(?:{'|'.join(SIDES)})\b")
_LIVE = re.compile(r"\b(?:live|dead)\b")
_CALLED = re.compile(r"called [^,]+")
_PERCENT = r"\d+(?:\.\d+)?(?:\.\.\d+(?:\.\d+)?)?%"
_AMOUNT = re.compile(rf"(?<![\w.])\d+(?:\.\d+)?in\b|{_PERCENT}|{_GRADE.pattern}")
_DEEP = re.compile(r"(?<=loc )[\d. /ftin]+|(?<=depth )[\d. /ftin]+")
_TURN = re.compile(r"bend(?: [\d.]+)?")
FAR_FT = 10.0
"""A correction of a footage is of its last digits; a number this far off is another one of the line."""
INCHES_PER_FT = 12
WHOLE_PERCENT = 100
STRUCK = Meaning(rows=(), instead=True, score=9)
WHAT_INSTEAD = Say.of("what is there instead?")


class Correction(Frozen):
    """A line that puts the one before it right: its numbers, the findings it denies, and whether it begins with a no."""

    r: "Reader"
    numbers: tuple[tuple[int, Token], ...]
    denied: tuple[int, ...]
    no_first: bool

    @property
    def old(self) -> tuple[str, str]:
        """Where the line before lies, and the rest of it."""
        where, _, rest = self.r.context.before[-1].partition(" ")
        return where, rest

    @property
    def denied_words(self) -> set[str]:
        return {standard_word(self.r.atoms[n].means["finding"]) for n in self.denied}

    def meaning_of(self, cls: str) -> str:
        return next((self.r.atoms[n].means[cls] for n in self.r.where(cls)), "")

    @property
    def sides(self) -> list[str]:
        """The sides it says; after a no both are said, the wrong one first."""
        both = self.r.text(0) in ("no", "nope", "sorry")
        sides = ((n, a.means["side"]) for n, a in enumerate(self.r.atoms) if "side" in a.means)
        return [side for n, side in sides if both or n not in self.r.denied]

    def now_says(self, rest: str, where: str = "") -> Meaning:
        return Meaning(rows=(f"{where or self.old[0]} {rest}",), instead=True, score=9)


def among(words: Iterable[str], row: str) -> set[str]:
    """Return those of the standard words that a line in standard words has.

    >>> among(("hole", "reverse fall"), "30 reverse fall 1%, crack")
    {'reverse fall'}
    """
    text = f" {row.replace(',', ' ')} "
    return {word for word in words if f" {word} " in text}


def now(c: Correction) -> Meaning | None:
    """Return what the line before says now; None where this line is none that puts it right."""
    if c.numbers:
        return _by_numbers(c)
    for way in (_another, _only_a_part, _denied):
        if (found := way(c)) is not None:
            return found
    if c.sides and _SIDE.search(c.old[1]):
        return _turned(c)
    for way in (_graded, _live, _said, _called):
        if (found := way(c)) is not None:
            return found
    return None


# ── without a number ──────────────────────────────────────────────────────────────────────────


def _another(c: Correction) -> Meaning | None:
    """`thats not roots its a rag`"""
    return _instead(c) if c.denied and (c.r.has("finding") or c.r.has("unclear")) else None


def _only_a_part(c: Correction) -> Meaning | None:
    """`not a crack just a seam`: then nothing is there."""
    only = c.denied and not c.r.has("finding") and c.r.has("part") and not c.r.has("state")
    return STRUCK if only and among(c.denied_words, c.old[1]) and len(c.r.context.before) == 1 else None


def _denied(c: Correction) -> Meaning | None:
    """`thats not roots`"""
    says = "thats" in c.r.words() or "its" in c.r.words() or c.r.text(0) == "not"
    if c.denied and not c.r.has("finding") and says and among(c.denied_words, c.old[1]):
        return Meaning(asked=WHAT_INSTEAD, choices=("note",), score=6)
    return None


def _turned(c: Correction) -> Meaning | None:
    """`not left, right`; with `not` alone nothing is said to be right instead."""
    r = c.r
    denies = any(n in r.denied and "side" in a.means for n, a in enumerate(r.atoms))
    if c.no_first and r.text(0) == "not" and len(c.sides) == 1 and not denies:
        return None
    return c.now_says(_SIDE.sub(c.sides[-1], c.old[1], count=1))


def _graded(c: Correction) -> Meaning | None:
    grade, rest = c.meaning_of("grade"), c.old[1]
    return c.now_says(_GRADE.sub(grade, rest, count=1)) if grade and _GRADE.search(rest) else None


def _live(c: Correction) -> Meaning | None:
    live, rest = c.meaning_of("live"), c.old[1]
    if live not in ("live", "dead") or "branch" not in rest:
        return None
    return c.now_says(_LIVE.sub(live, rest, count=1) if _LIVE.search(rest) else f"{rest} {live}")


def _said(c: Correction) -> Meaning | None:
    """`its a rag`"""
    return _instead(c) if c.r.has("finding") else None


def _called(c: Correction) -> Meaning | None:
    """`thats the hall bath`: the name of a branch."""
    rooms, rest = c.r.where("room"), c.old[1]
    if not rooms or "branch" not in rest:
        return None
    called = f"called {c.r.atoms[rooms[-1]].means['room']}"
    return c.now_says(_CALLED.sub(called, rest) if "called" in rest else f"{rest} {called}")


def _instead(c: Correction) -> Meaning:
    """The thing it is instead, at the place of the line before."""
    found = c.r.without_denied(c.old[0])
    return replace(found, instead=True) if found.rows or found.asked else Meaning(asked=WHAT_INSTEAD, score=6)


# ── with a number ─────────────────────────────────────────────────────────────────────────────


def _by_numbers(c: Correction) -> Meaning | None:
    (n, t), many = c.numbers[0], len(c.numbers)
    if t.kind == "pct" and t.value > WHOLE_PERCENT:
        return Meaning(asked=more_than_whole(t.value), score=9)
    if any(cls in a.means for a in c.r.atoms[n + 1 :] for cls in ("finding", "place", "material", "part", "zone")):
        return _with_things(c, n)
    if t.kind == "in" and many == 1:
        return _amount(c, _AMOUNT, f"{shown(t.value)}in", c.old[1])
    if t.kind == "pct":
        return _amount(c, re.compile(_PERCENT), f"{shown(t.value)}%", _GRADE.sub("", c.old[1]))
    return _moved(c, t) if t.may_be_footage and many <= 2 else None


def _amount(c: Correction, old: re.Pattern[str], new: str, without: str) -> Meaning:
    """`make that 4in`; `without` is the line before without its amount, for one that had none of this unit."""
    rest, count = old.subn(new, c.old[1], count=1)
    return c.now_says(rest if count else f"{without} {new}")


def _moved(c: Correction, t: Token) -> Meaning:
    """`no 31.5`: another reading, or another depth."""
    where, rest = c.old
    if t.kind == "ft" and ("loc" in rest or "depth" in rest):
        return c.now_says(_DEEP.sub(f"{show(t.value)} ", rest))
    if (amount := _own_number(t, where, rest)) is not None:
        return c.now_says(amount)
    at = written(*t.ends)
    if t.kind == "range" and t.to is not None and t.to < min(t.value, INCHES_PER_FT):
        at = shown(t.value + t.to / INCHES_PER_FT)  # `31-6`
    if "-" in where and t.to is None:
        both = (f"{at} {rest}", f"{where.partition('-')[0]}-{at} {rest}")
        return Meaning(asked=Say.of("where does it begin and end?"), choices=both, instead=True, score=9)
    return c.now_says(rest, at)


def _own_number(t: Token, where: str, rest: str) -> str | None:
    """`make that a 4` after a branch at 34: its size, or the degrees of a bend, and no reading thirty feet back."""
    at = re.match(r"[\d.]+", where.lstrip("~"))
    if t.kind != "num" or t.point or at is None or abs(t.value - float(at[0])) < FAR_FT:
        return None
    if "branch" in rest and t.value in SIZES_IN:
        return (
            _AMOUNT.sub(f"{shown(t.value)}in", rest, count=1) if _AMOUNT.search(rest) else f"{rest} {shown(t.value)}in"
        )
    if "bend" in rest and t.value in DEGREES:
        return _TURN.sub(f"bend {shown(t.value)}", rest, count=1)
    return None


def _with_things(c: Correction, n: int) -> Meaning | None:
    """`no 2in hole`, at the place of the line before; or a line of its own from its reading on."""
    if not any(t.may_be_footage for _, t in c.numbers):
        return _instead(c)
    if n == 0:
        return None  # nothing stands before it that it could put right
    found = c.r.other(c.r.atoms[n:]).meaning()
    return replace(found, instead=True) if found.rows and not found.asked else None

"""A correction and the line before it in; what that line says now, out."""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from estimator.fieldnotes.bare_figures import DEGREES, SIZES_IN
from estimator.fieldnotes.drafts import shown
from estimator.fieldnotes.drafts import where as written
from estimator.fieldnotes.logproblems import more_than_whole
from estimator.fieldnotes.meaning import Meaning
from estimator.fieldnotes.tokens import Token
from estimator.fieldnotes.words import GRADE_WORDS, SIDES, standard_word
from estimator.model.lengths import IN_PER_FT, show
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
WHOLE_PERCENT = 100
STRUCK = Meaning(rows=(), instead=True, score=9)
THINGS = ("finding", "place", "material", "part", "zone")
WHAT_INSTEAD = Say.of("what is there instead?")


def among(words: Iterable[str], row: str) -> set[str]:
    """Return those of the standard words that a line in standard words has.

    >>> among(("hole", "reverse fall"), "30 reverse fall 1%, crack")
    {'reverse fall'}
    """
    text = f" {row.replace(',', ' ')} "
    return {word for word in words if f" {word} " in text}


def now(r: "Reader", numbers: Sequence[tuple[int, Token]], denied: Sequence[int]) -> Meaning | None:
    """Return what the line before says now, by the numbers, things and words of the line that puts it right, and the findings
    it denies; None where it is none that puts it right."""
    if any(t.kind == "pct" and t.value > WHOLE_PERCENT for _, t in numbers):
        return Meaning(asked=more_than_whole(numbers[0][1].value), score=9)
    if numbers and any(c in a.means for a in r.atoms[numbers[0][0] + 1 :] for c in THINGS):
        return _with_things(r, numbers)
    if not numbers and denied:
        return _denies(r, denied) or _put_right(r, numbers)
    found = _put_right(r, numbers)
    return _instead(r) if found is None and not numbers and r.has("finding") else found


def _denies(r: "Reader", denied: Sequence[int]) -> Meaning | None:
    """`thats not roots its a rag`, `thats not roots`, `not a crack just a seam`: another thing is there, or none."""
    if r.has("finding") or r.has("unclear"):
        return _instead(r)
    if not among((standard_word(r.atoms[n].means["finding"]) for n in denied), r.context.before[-1]):
        return None
    if r.has("part") and not r.has("state") and len(r.context.before) == 1:
        return STRUCK
    says = "thats" in r.words() or "its" in r.words() or r.text(0) == "not"
    return Meaning(asked=WHAT_INSTEAD, choices=("note",), score=6) if says else None


def _instead(r: "Reader") -> Meaning:
    """The thing it is instead, at the place of the line before."""
    found = r.without_denied(r.context.before[-1].partition(" ")[0])
    return replace(found, instead=True) if found.rows or found.asked else Meaning(asked=WHAT_INSTEAD, score=6)


def _with_things(r: "Reader", numbers: Sequence[tuple[int, Token]]) -> Meaning | None:
    """`no 2in hole`, at the place of the line before; or a line of its own from its reading on."""
    if not any(t.may_be_footage for _, t in numbers):
        return _instead(r)
    if numbers[0][0] == 0:
        return None  # nothing stands before it that it could put right
    found = r.other(r.atoms[numbers[0][0] :]).meaning()
    return replace(found, instead=True) if found.rows and not found.asked else None


def _put_right(r: "Reader", numbers: Sequence[tuple[int, Token]]) -> Meaning | None:
    """Each number and word in the place of its like: `no 31.5, 2in`, `not left, right`, `its dead`, `thats the hall bath`."""
    where, _, rest = r.context.before[-1].partition(" ")
    moved, fresh = None, list(_words_of(r, rest))
    for _, t in numbers:
        if (amount := _measured(t, where, rest)) is not None:
            rest = amount
        elif not t.may_be_footage:
            return None
        else:
            moved = moved or t
    for words, new in fresh:
        rest = words.sub(new, rest, count=1) if words.search(rest) else f"{rest} {new}"
    if moved is not None:
        at = written(*moved.ends)
        if moved.kind == "range" and moved.to is not None and moved.to < min(moved.value, IN_PER_FT):
            at = shown(moved.value + moved.to / IN_PER_FT)  # `31-6`
        if "-" in where and moved.to is None:
            both = (f"{at} {rest}", f"{where.partition('-')[0]}-{at} {rest}")
            return Meaning(asked=Say.of("where does it begin and end?"), choices=both, instead=True, score=9)
        where = at
    return Meaning(rows=(f"{where} {rest}",), instead=True, score=9) if numbers or fresh else None


def _words_of(r: "Reader", rest: str) -> Iterator[tuple[re.Pattern[str], str]]:
    """What the words of the correction stand in place of, and in which words."""
    branch, both = (
        "branch" in rest,
        r.text(0) in ("no", "nope", "sorry"),
    )  # after a no both sides are said, the wrong one first
    told = [n for n in range(len(r.atoms)) if both or n not in r.denied]
    sides = [n for n in told if "side" in r.atoms[n].means]
    nothing_else = r.text(0) == "not" and len(sides) == 1 and not any("side" in r.atoms[n].means for n in r.denied)
    for cls, words, fits in (
        ("side", _SIDE, bool(_SIDE.search(rest)) and not nothing_else), ("grade", _GRADE, bool(_GRADE.search(rest))),
        ("live", _LIVE, branch), ("room", _CALLED, branch),
    ):  # fmt: skip
        said = [r.atoms[n].means[cls] for n in told if cls in r.atoms[n].means]
        if fits and said and (cls != "live" or said[-1] in ("live", "dead")):
            yield words, f"called {said[-1]}" if cls == "room" else said[-1] if cls == "side" else said[0]
            if cls == "side":
                return


def _measured(t: Token, where: str, rest: str) -> str | None:
    """The line before with this amount: its inches, percent or depth, the size of a branch or the degrees of a bend."""
    if t.kind == "in":
        return _in_place_of(_AMOUNT, f"{shown(t.value)}in", rest, rest)
    if t.kind == "pct":
        return _in_place_of(re.compile(_PERCENT), f"{shown(t.value)}%", rest, _GRADE.sub("", rest))
    if t.kind == "ft" and ("loc" in rest or "depth" in rest):
        return _DEEP.sub(f"{show(t.value)} ", rest)
    at = re.match(r"[\d.]+", where.lstrip("~"))
    if t.kind != "num" or t.point or at is None or abs(t.value - float(at[0])) < FAR_FT:
        return None  # `make that a 4` after a branch at 34 is no reading thirty feet back
    if "branch" in rest and t.value in SIZES_IN:
        return _in_place_of(_AMOUNT, f"{shown(t.value)}in", rest, rest)
    return _TURN.sub(f"bend {shown(t.value)}", rest, count=1) if "bend" in rest and t.value in DEGREES else None


def _in_place_of(old: re.Pattern[str], new: str, rest: str, without: str) -> str:
    """`make that 4in`; `without` is the line before without its amount, for one that had none of this unit."""
    return old.sub(new, rest, count=1) if old.search(rest) else f"{without} {new}"

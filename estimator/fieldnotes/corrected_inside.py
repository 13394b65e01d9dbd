"""A correction inside its own line, and one that names the line it takes back, in; what holds, out."""

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from estimator.fieldnotes.meaning import Meaning
from estimator.fieldnotes.words import standard_word
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader

HEADS = ("finding", "place", "material", "zone", "surface", "utility")
WEAK = re.compile(
    r"(?:thats|its|call|it|was|really|actually|rather|what|not|is|no es|era)(?: (?:thats|its|it|actually|was|really|like|a))*"
)
"""Words of correction that begin any sentence too."""


def inside(r: "Reader") -> Meaning | None:
    """`35 roots lt scratch that 36 roots hvy`: what stands before the correction in the same line falls away, or is put right."""
    marks = [n for n, a in enumerate(r.atoms) if n and _corrects(a.means.get("correct"), a.text)] or _no_last(r)
    if not marks or not _heads(r, 0, marks[0]):
        return None
    numbers = [n for n, _ in r.numbers()]
    if not numbers or numbers[0] > marks[0]:
        return None
    return read_again(r, numbers[0], marks[0]) or put_right(r, numbers[0], marks[0]) or _instead(r, marks[0], numbers)


def _no_last(r: "Reader") -> list[int]:
    """`31 crack, no 32`: a no before the line's last word, a footage."""
    n = len(r.atoms) - 2
    last = r.number(n + 1) if n > 0 else None
    return (
        [n]
        if last is not None and last.may_be_footage and r.text(n) in ("no", "nope") and r.is_mark(n - 1, ",-")
        else []
    )


def _corrects(correct: str | None, text: str) -> bool:
    return correct == "strike" or (correct == "instead" and not WEAK.fullmatch(text))


def _heads(r: "Reader", low: int, high: int) -> bool:
    return any(c in a.means for a in r.atoms[low:high] for c in HEADS)


def _instead(r: "Reader", mark: int, numbers: list[int]) -> Meaning | None:
    """What stands after the correction where it says all of it; else what it changes of what stands before; else asked."""
    right = r.atoms[mark + 1 :]
    if not right:
        return Meaning(score=9) if r.atoms[mark].means["correct"] == "strike" else None
    first, after = r.other(r.atoms[:mark]).meaning(), Meaning()
    own = _heads(r, mark + 1, len(r.atoms))
    if own:  # `25 slab no its yard` has its reading before the correction
        reading = [] if any(n > mark for n in numbers) else [r.atoms[numbers[0]]]
        after = r.other([*reading, *right]).meaning()
        if after.rows and not after.asked:
            return after
    elif len(first.rows) == 1 and not first.asked:
        found = r.other(r.atoms[mark:], replace(r.context, before=first.rows)).meaning()
        if found.instead and found.rows and not found.asked:
            return replace(found, instead=False)
    choices = tuple(dict.fromkeys((*after.rows, *first.rows, "note")))
    return Meaning(asked=Say.of("a correction: what holds?"), choices=choices, score=9)


def put_right(r: "Reader", first: int, marker: int) -> Meaning | None:
    """`40.2 i mean 42 roots med`: what stands before the correction falls away."""
    numbers = r.numbers()
    after = next(((n, t) for n, t in numbers if n > marker), None)
    between = any(first < n < marker for n, _ in numbers)
    whole = _heads(r, marker, len(r.atoms))
    if whole and after is not None and after[1].may_be_footage and not between and after[0] == marker + 1:
        return r.other(r.atoms[after[0] :]).meaning()
    return None


def read_again(r: "Reader", first: int, marker: int) -> Meaning | None:
    """`9 scale, call 9.3`: the last number is the reading."""
    last, t = r.numbers()[-1]
    rest = r.atoms[last + 1 :]
    if not t.may_be_footage or last <= marker or any("plain" not in a.means and not a.token for a in rest):
        return None
    kept = [a for n, a in enumerate(r.atoms) if n < marker and n != first and not r.is_mark(n, "~(,@")]
    if not any(set(a.means) - {"plain"} for a in kept):
        return None
    return r.other([r.atoms[last], *kept]).meaning()


def named(r: "Reader") -> Meaning | None:
    """`forget the roots at 36`: one earlier line is taken back by what it says."""
    heads = [a.means.get("finding") or a.means["place"] for a in r.atoms if "finding" in a.means or "place" in a.means]
    readings = [t.value for _, t in r.readings()]
    if len(readings) > 1 or len(heads) > 1 or not (heads or readings):
        return None
    word = standard_word(heads[0]) if heads else ""
    return Meaning(gone=(word, readings[0] if readings else None), score=9)

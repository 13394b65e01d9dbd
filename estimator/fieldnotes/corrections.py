"""A line that takes back or puts right what was typed before, in; what it means, out."""

import re
from typing import TYPE_CHECKING

from estimator.fieldnotes import corrected_before
from estimator.fieldnotes.corrected_before import among
from estimator.fieldnotes.corrected_inside import WEAK, inside, named, put_right, read_again
from estimator.fieldnotes.drafts import shown
from estimator.fieldnotes.meaning import Meaning
from estimator.fieldnotes.words import BY_NAME, standard_word
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader

REALLY = re.compile(r"\b(?:really|actually|en realidad)\b")
AMENDS = ("change", "make", "fix", "correct", "edit", "update", "amend", "cambia")
_STARTS_NO = re.compile(r"\s*(?:no+|not|nope|nah|naw|oops|sorry|wait|digo|perdon)(?![\w-])")
_OTHER_SIDE = re.compile(r"\b(?:other|opposite) side\b")
_LEFT_RIGHT = re.compile(r"\b(?:left|right)\b")
SAYS_MORE = frozenset(("sign", "finding", "live", "cable end", "stop", "end", "reached", "state", "material"))
"""Classes of words that begin with a no and are none: `no more cable 27`."""
OWN = ("stop", "cable end", "reach", "rises", "out of water", "utility", "danger")
"""Classes that a line before never has to be put right by: `thats as far as camera will go 57`."""
NO_LINE = Meaning(asked=Say.of("which line is to be put right, and how? Write it again as it should be"), score=9)
"""`should be rt side` after a line that has no side."""
TURNED = {"left": "right", "right": "left"}


def correction(r: "Reader") -> Meaning | None:
    """`no 31.5`, `scratch that`, `make that 4in`, `not left, right`, `thats not roots its a rag`."""
    if any(a.means.get("remark") == "whole" for a in r.atoms) and not _strong(r):
        return None  # `customer wants call at 4`
    for way in (_amends, _of_the_counter, inside, _struck_by_name, _struck, _struck_and_said, _on_the_other_side):
        if (found := way(r)) is not None:
            return found
    found = _really_ends(r) or _of_the_line_before(r)
    if found is None:
        sided = not r.readings() and any(r.has(cls) for cls in ("side", "grade", "live"))
        return NO_LINE if sided and _strong(r) else None
    return NO_LINE if found.instead and not _of_that_line(r, found) else found


def _of_that_line(r: "Reader", found: Meaning) -> bool:
    """Whether what would stand instead of the line before lies at its place, is of its kind, or names it."""
    before, after = " ".join(r.context.before), " ".join(found.rows)
    kinds = among(BY_NAME, before)
    said = {standard_word(a.means[c]) for a in r.atoms for c in ("finding", "place") if c in a.means}
    here = before.partition(" ")[0].partition("-")[0] in re.split(r"[ -]", after)
    return not found.rows or here or bool(kinds & (among(BY_NAME, after) | said))


def _really_ends(r: "Reader") -> Meaning | None:
    """`that belly really starts 31.5`: an end of the stretch of the line before."""
    leg = next((cls for cls in ("starts", "ends") if r.has(cls)), "")
    kinds = {standard_word(r.atoms[n].means["finding"]) for n in r.where("finding")}
    readings = [t for _, t in r.readings() if t.kind != "range"]
    stretch = re.match(r"([\d.]+)-([\d.]+) (.*)", r.context.before[0]) if len(r.context.before) == 1 else None
    if not (
        leg
        and stretch
        and REALLY.search(r.words())
        and among(kinds, stretch[3])
        and len(readings) == len(r.numbers()) == 1
    ):
        return None
    low, high = (shown(readings[0].value), stretch[2]) if leg == "starts" else (stretch[1], shown(readings[0].value))
    return Meaning(rows=(f"{low}-{high} {stretch[3]}",), instead=True, score=9) if float(low) < float(high) else None


def _strong(r: "Reader") -> bool:
    """A word of correction that can be nothing else: `make that`, `i mean`; not `thats`, which begins any sentence."""
    return any(a.means.get("correct") == "instead" and not WEAK.fullmatch(a.text) for a in r.atoms)


def _says(r: "Reader", correct: str) -> bool:
    return any(a.means.get("correct") == correct for a in r.atoms)


def _amends(r: "Reader") -> Meaning | None:
    """`change 18 to 20`"""
    if r.text(0) not in AMENDS or r.number(1) is None or len(r.numbers()) < 2:
        return None
    return NO_LINE


def _of_the_counter(r: "Reader") -> Meaning | None:
    if not _says(r, "counter"):
        return None
    return Meaning(
        asked=Say.of("does this hold for every reading so far? Then correct them, or begin the run with `zero at`?"),
        score=9,
    )


def _struck_by_name(r: "Reader") -> Meaning | None:
    return named(r) if _says(r, "strike it") and "correct" in r.atoms[0].means else None


def _struck(r: "Reader") -> Meaning | None:
    """`scratch that`: the line before falls away."""
    if not _says(r, "strike") or r.numbers():
        return None
    if not r.context.before:
        return Meaning(asked=Say.of("there is no line before this one to take back?"), score=9)
    return Meaning(rows=(), instead=True, score=9)


def _struck_and_said(r: "Reader") -> Meaning | None:
    """`scratch that 36 roots hvy`: the rest of the line stands in its place."""
    if not (r.atoms and r.context.before) or r.atoms[0].means.get("correct") != "strike":
        return None
    found = r.other(r.atoms[1:]).meaning()
    return Meaning(rows=found.rows, asked=found.asked, choices=found.choices, left=found.left, instead=True, score=9)


def _on_the_other_side(r: "Reader") -> Meaning | None:
    before = r.context.before
    if not _OTHER_SIDE.search(r.words()) or r.has("side") or not before or r.has("finding") or r.has("place"):
        return None
    where, _, rest = before[-1].partition(" ")
    if len(before) == 1 and len(_LEFT_RIGHT.findall(rest)) == 1:
        turned = _LEFT_RIGHT.sub(lambda side: TURNED[side[0]], rest)
        return Meaning(rows=(f"{where} {turned}",), instead=True, score=9)
    return Meaning(asked=Say.of("which side?"), score=9)


def _of_the_line_before(r: "Reader") -> Meaning | None:
    """What the line before says now, where this one puts it right."""
    before, says_instead, no_first = r.context.before, _says(r, "instead"), _no_first(r)
    told = before[-1] if before else ""
    words = {standard_word(r.atoms[n].means["finding"]) for n in r.where("finding")}
    denied = [n for n, a in enumerate(r.atoms) if "finding" in a.means and n in r.denied]
    taken = among((standard_word(r.atoms[n].means["finding"]) for n in denied), told)
    if not (says_instead or no_first or _opposed(r) or (taken and (words or r.has("part")))):
        return None  # nothing is put right
    numbers = [(n, t) for n, t in r.numbers() if not _denied_number(r, n)]
    marker = next((n for n, a in enumerate(r.atoms) if "correct" in a.means or (n == 0 and no_first)), 0)
    if numbers and numbers[0][0] < marker:  # else `16 no 16.6 jt up` has its own reading
        both = says_instead and len(numbers) >= 2
        return read_again(r, numbers[0][0], marker) or put_right(r, numbers[0][0], marker) if both else None
    things = words | {r.atoms[n].means["place"] for n in r.where("place")} | {c for c in OWN if r.has(c)}
    begins_anew = things and not among(things, told) and r.readings()  # `thats a crack at 33`
    if not before or (begins_anew and not _strong(r)):
        return None
    return corrected_before.now(r, numbers, denied)


def _opposed(r: "Reader") -> bool:
    """`heavy not light`, `its on the left not the right`: two of a kind, one of them denied; or what the line before is."""
    if r.readings():
        return False
    said = [cls for cls in ("side", "grade", "live") if r.has(cls)]
    if r.text(0).split()[0] in ("its", "it") and said and not (r.has("finding") or r.has("place")):
        return True  # `its dead`, of the line before
    return any(cls in r.atoms[n].means for n in r.denied for cls in said)


def _no_first(r: "Reader") -> bool:
    """`no 31.5`, `not left, right`: a line that begins with a no and says at once what is right."""
    if not r.atoms:
        return False
    first, second = r.atoms[0].means, 2 if r.is_mark(1, ",") else 1
    says_no = not SAYS_MORE & set(first) and _STARTS_NO.fullmatch(r.text(0))  # not `no visible defects 26-40`
    right = r.atoms[second].means if second < len(r.atoms) else {}
    return bool(says_no) and (r.number(second) is not None or "side" in right or "correct" in right)


def _denied_number(r: "Reader", n: int) -> bool:
    """A number after a no, inside the line or where another of its kind follows: `not 3in 2in`."""
    return n > 0 and "no" in r.atoms[n - 1].means and (n > 1 or _two_amounts(r))


def _two_amounts(r: "Reader") -> bool:
    kinds = [t.kind for _, t in r.numbers()]
    return len(kinds) == 2 and kinds[0] == kinds[1] and kinds[0] in ("in", "pct")

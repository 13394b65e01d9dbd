"""A line that takes back or puts right what was typed before, in; what it means, out."""

import re
from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import shown
from estimator.model.lengths import show
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.meaning import Meaning
    from estimator.fieldnotes.understand import Reader

_STARTS_NO = re.compile(r"\s*(?:no+|not|nope|nah|naw|oops|sorry|wait|digo|perdon)\b")


AMENDS = ("change", "make", "fix", "correct", "edit", "update", "amend", "cambia")

WEAK = re.compile(
    r"(?:thats|its|call|it|was|really|actually|rather|what|not|is|no es|era)(?: (?:thats|its|it|actually|was|really|like|a))*"
)


def strong(r: "Reader") -> bool:
    """A word of correction that can be nothing else: `make that`, `i mean`; not `thats`, which begins any sentence."""
    return any(a.means.get("correct") == "instead" and not WEAK.fullmatch(a.text) for a in r.atoms)


def _two_amounts(r: "Reader") -> bool:
    """`not 3in 2in`: the first is denied, the second holds."""
    kinds = [t.kind for n in range(len(r.atoms)) if (t := r.number(n)) is not None]
    return len(kinds) == 2 and kinds[0] == kinds[1] and kinds[0] in ("in", "pct")


def correction(r: "Reader") -> "Meaning | None":
    """`no 31.5`, `scratch that`, `make that 4in`, `not left, right`, `thats not roots its a rag`."""
    from estimator.fieldnotes.corrected_inside import inside, named
    from estimator.fieldnotes.meaning import Meaning

    before = r.context.before
    if any(a.means.get("remark") == "whole" for a in r.atoms) and not strong(r):
        return None  # `customer wants call at 4`
    if r.text(0) in AMENDS and r.number(1) is not None and len([n for n in range(len(r.atoms)) if r.number(n)]) > 1:
        return Meaning(asked=Say.of("which line is to be put right, and how? Write it again as it should be"), score=9)
    said = {a.means["correct"] for a in r.atoms if "correct" in a.means}
    if "counter" in said:
        return Meaning(
            asked=Say.of(
                "does this hold for every reading so far? Then correct them, or begin the run with `zero at`?"
            ),
            score=9,
        )
    findings = r.where("finding")
    if (found_inside := inside(r)) is not None:
        return found_inside
    if "strike it" in said and "correct" in r.atoms[0].means and (struck := named(r)) is not None:
        return struck
    if "strike" in said and not any(r.number(n) for n in range(len(r.atoms))):
        if not before:
            return Meaning(asked=Say.of("there is no line before this one to take back?"), score=9)
        return Meaning(rows=(), instead=True, score=9)
    if r.atoms and r.atoms[0].means.get("correct") == "strike" and before:
        found = r.part(1).meaning()
        return Meaning(
            rows=found.rows, asked=found.asked, choices=found.choices, left=found.left, instead=True, score=9
        )
    if (
        re.search(r"\b(?:other|opposite) side\b", r.words())
        and not r.where("side")
        and before
        and not findings
        and not r.has("place")
    ):
        where, _, rest = before[-1].partition(" ")
        sides = re.findall(r"\b(?:left|right)\b", rest)
        if len(before) == 1 and len(sides) == 1:
            new = re.sub(r"\b(?:left|right)\b", {"left": "right", "right": "left"}[sides[0]], rest)
            return Meaning(rows=(f"{where} {new}",), instead=True, score=9)
        return Meaning(asked=Say.of("which side?"), score=9)
    second = 1 if len(r.atoms) > 1 and not r.is_mark(1, ",") else 2
    says_no = (
        bool(r.atoms)
        and "sign" not in r.atoms[0].means
        and "finding" not in r.atoms[0].means
        and ("no" in r.atoms[0].means or bool(_STARTS_NO.match(r.text(0))))
    )
    no_first = says_no and (
        r.number(second) is not None
        or (second < len(r.atoms) and ("side" in r.atoms[second].means or "correct" in r.atoms[second].means))
    )
    words = {r.atoms[n].means["finding"].split()[0].rstrip(",") for n in findings if n not in r.denied}
    told = before[-1] if before else ""
    fresh = (
        bool(words)
        and not words & set(told.replace(",", " ").split())
        and any((t := r.number(n)) is not None and t.kind in ("num", "range", "ft") for n in range(len(r.atoms)))
    )
    taken = {r.atoms[n].means["finding"].split()[0].rstrip(",") for n in r.denied if "finding" in r.atoms[n].means}
    instead = (
        "instead" in said or no_first or bool(taken & set(told.replace(",", " ").split()) and (words or r.has("part")))
    )
    if not instead or (not before and "instead" not in said):  # nothing is put right
        return None
    numbers = [
        (n, t)
        for n in range(len(r.atoms))
        if (t := r.number(n)) is not None and not (n and "no" in r.atoms[n - 1].means and (n > 1 or _two_amounts(r)))
    ]
    first = numbers[0][0] if numbers else len(r.atoms)
    marker = next((n for n, a in enumerate(r.atoms) if "correct" in a.means or (n == 0 and no_first)), 0)
    if numbers and first < marker:
        if "instead" in said and len(numbers) >= 2:
            return read_again(r, first, marker) or put_right(r, first, marker)
        return None  # `16 no 16.6 jt up` has its own reading: see readingput_right
    if fresh and not strong(r):
        return None  # `thats a crack at 33` begins a line of its own
    positive = [n for n in findings if n not in r.denied]
    denied = [n for n, a in enumerate(r.atoms) if "finding" in a.means and n in r.denied]
    if not before:
        return None
    old = before[-1]
    where, _, rest = old.partition(" ")
    if denied and (positive or r.has("unclear")) and not numbers:
        return _rest(r, where, positive[0] if positive else 0)
    if denied and not positive and not numbers and r.has("part") and not r.has("state"):
        taken_back = {r.atoms[n].means["finding"].split()[0] for n in denied} & set(rest.replace(",", " ").split())
        if taken_back and len(before) == 1:
            return Meaning(rows=(), instead=True, score=9)  # `not a crack just a seam`
    if denied and not positive and not numbers and ("thats" in r.words() or "its" in r.words() or r.text(0) == "not"):
        words = {r.atoms[n].means["finding"].split()[0] for n in denied}
        if any(w in rest.split() for w in words):
            return Meaning(asked=Say.of("what is there instead?"), choices=("note",), score=6)
    sides = [
        a.means["side"]
        for n, a in enumerate(r.atoms)
        if "side" in a.means and (n not in r.denied or r.text(0) in ("no", "nope", "sorry"))
    ]
    if not numbers and sides and re.search(r"\b(?:left|right|up|down)\b", rest):
        if (
            no_first
            and r.text(0) == "not"
            and len(sides) == 1
            and not any(n in r.denied for n in range(len(r.atoms)) if "side" in r.atoms[n].means)
        ):
            return None
        new = re.sub(r"\b(?:left|right|up|down)\b", sides[-1], rest, count=1)
        return Meaning(rows=(f"{where} {new}",), instead=True, score=9)
    if not numbers:
        grade = next((r.atoms[n].means["grade"] for n in r.where("grade")), "")
        if grade and re.search(r"\b(?:light|moderate|severe)\b", rest):
            return Meaning(
                rows=(f"{where} " + re.sub(r"\b(?:light|moderate|severe)\b", grade, rest, count=1),),
                instead=True,
                score=9,
            )
        live = next((r.atoms[n].means["live"] for n in r.where("live")), "")
        if live in ("live", "dead") and "branch" in rest:
            new = (
                re.sub(r"\b(?:live|dead)\b", live, rest, count=1)
                if re.search(r"\b(?:live|dead)\b", rest)
                else f"{rest} {live}"
            )
            return Meaning(rows=(f"{where} {new}",), instead=True, score=9)
        if positive:
            return _rest(r, where, positive[0])
        if r.has("room") and "branch" in rest:
            name = r.atoms[r.where("room")[-1]].means["room"]
            new = re.sub(r"called [^,]+", f"called {name}", rest) if "called" in rest else f"{rest} called {name}"
            return Meaning(rows=(f"{where} {new}",), instead=True, score=9)
        return None
    n, t = numbers[0]
    more = [
        k
        for k, a in enumerate(r.atoms)
        if k > n and any(c in a.means for c in ("finding", "place", "material", "part", "zone"))
    ]
    if t.kind == "in" and len(numbers) == 1 and not more:
        old_amount = r"(?<![\w.])\d+(?:\.\d+)?in\b|\d+(?:\.\d+)?(?:\.\.\d+(?:\.\d+)?)?%|\b(?:light|moderate|severe)\b"
        new, count = re.subn(old_amount, f"{shown(t.value)}in", rest, count=1)
        new = new if count else f"{rest} {shown(t.value)}in"
        return Meaning(rows=(f"{where} {new}",), instead=True, score=9)
    if t.kind == "pct" and t.value > 100:
        return Meaning(
            asked=Say.of("{value} percent is more than the whole pipe; how much?", value=shown(t.value)), score=9
        )
    if t.kind == "pct" and not more:
        new, count = re.subn(r"\d+(?:\.\d+)?(?:\.\.\d+(?:\.\d+)?)?%", f"{shown(t.value)}%", rest, count=1)
        new = new if count else re.sub(r"\b(?:light|moderate|severe)\b", "", rest) + f" {shown(t.value)}%"
        return Meaning(rows=(f"{where} {new}",), instead=True, score=9)
    if t.kind in ("num", "ft", "range") and len(numbers) <= 2 and not more:
        at = shown(t.value) if t.to is None else f"{shown(min(t.value, t.to))}-{shown(max(t.value, t.to))}"
        if t.kind == "range" and t.to is not None and t.to < t.value and t.to < 12:
            at = shown(t.value + t.to / 12)
        if (t.kind == "ft" and "loc" in rest) or ("depth" in rest and t.kind == "ft"):
            return Meaning(
                rows=(re.sub(r"(?<=loc )[\d. /ftin]+|(?<=depth )[\d. /ftin]+", f"{show(t.value)} ", old),),
                instead=True,
                score=9,
            )
        if "-" in where and t.to is None:
            return Meaning(
                asked=Say.of("where does it begin and end?"),
                choices=(f"{at} {rest}", f"{where.partition('-')[0]}-{at} {rest}"),
                instead=True,
                score=9,
            )
        return Meaning(rows=(f"{at} {rest}",), instead=True, score=9)
    if more and not any(t.kind in ("num", "ft", "range") for _, t in numbers):
        return _rest(r, where, n)
    if more and len(numbers) >= 1:
        rest_reader = r.part(n)
        found = rest_reader.meaning()
        if found.rows and not found.asked:
            from dataclasses import replace

            return replace(found, instead=True)
    return None


def _rest(r: "Reader", where: str, head: int) -> "Meaning":
    """The thing it is instead, at the place of the line before."""
    from dataclasses import replace

    from estimator.fieldnotes.meaning import Meaning

    found = r.without_denied(where)
    if found.rows or found.asked:
        return replace(found, instead=True)
    return Meaning(asked=Say.of("what is there instead?"), score=6)


def put_right(r: "Reader", first: int, marker: int) -> "Meaning | None":
    """`40.2 i mean 42 roots med`, and `22 branch 3in left no right`: what stands before the correction falls away."""
    numbers = [n for n in range(len(r.atoms)) if r.number(n) is not None]
    after = [n for n in numbers if n > marker]
    between = [n for n in numbers if first < n < marker]
    t = r.number(after[0]) if after else None
    if t is not None and t.kind in ("num", "ft", "range") and not between and after[0] == marker + 1:
        return r.part(after[0], skip=(first, after[0])).meaning()
    return None


def read_again(r: "Reader", first: int, marker: int) -> "Meaning | None":
    """`9 scale, call 9.3`: the last number is the reading."""
    from estimator.fieldnotes.understand import Reader

    last = max(n for n in range(len(r.atoms)) if r.number(n) is not None)
    rest = r.atoms[last + 1 :]
    t = r.number(last)
    if (
        t is None
        or t.kind not in ("num", "ft", "range")
        or last <= marker
        or any("plain" not in a.means and not a.token for a in rest)
    ):
        return None
    kept = [a for n, a in enumerate(r.atoms) if first < n < marker and not r.is_mark(n, "~(,")]
    if not any(set(a.means) - {"plain"} for a in kept):
        return None
    return Reader([r.atoms[last], *kept], r.context).meaning()

"""A correction inside its own line, and one that names the line it takes back, in; what holds, out."""

from dataclasses import replace
from typing import TYPE_CHECKING

from estimator.fieldnotes.corrections import WEAK, put_right, read_again
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.meaning import Meaning
    from estimator.fieldnotes.understand import Reader

HEADS = ("finding", "place", "material", "zone", "surface", "utility")


def inside(r: "Reader") -> "Meaning | None":
    """`35 roots lt scratch that 36 roots hvy`: what stands before the correction in the same line falls away, or is put right."""
    from estimator.fieldnotes.meaning import Meaning
    from estimator.fieldnotes.understand import Reader

    marks = [
        n
        for n, a in enumerate(r.atoms)
        if n
        and (a.means.get("correct") == "strike" or (a.means.get("correct") == "instead" and not WEAK.fullmatch(a.text)))
    ]
    if not marks or not any(c in a.means for a in r.atoms[: marks[0]] for c in HEADS):
        return None
    numbers = [n for n in range(len(r.atoms)) if r.number(n) is not None]
    if not numbers or numbers[0] > marks[0]:
        return None
    old = read_again(r, numbers[0], marks[0]) or put_right(r, numbers[0], marks[0])
    if old is not None:
        return old
    first, right = Reader(r.atoms[: marks[0]], r.context).meaning(), r.atoms[marks[0] + 1 :]
    if not right:
        return Meaning(score=9)
    heads = any(c in a.means for a in right for c in HEADS)
    own = heads and any(n > marks[0] for n in numbers)
    after = Reader(right, r.context).meaning() if own else Meaning()
    if heads and not own:  # `25 slab no its yard`
        after, own = Reader([r.atoms[numbers[0]], *right], r.context).meaning(), True
    if own and after.rows and not after.asked:
        return after
    if not own and len(first.rows) == 1 and not first.asked:
        context = replace(r.context, before=first.rows)
        found = Reader(r.atoms[marks[0] :], context).meaning()
        if found.instead and found.rows and not found.asked:
            return replace(found, instead=False)
    return Meaning(
        asked=Say.of("a correction: what holds?"),
        choices=tuple(dict.fromkeys((*after.rows, *first.rows, "note"))),
        score=9,
    )


def named(r: "Reader") -> "Meaning | None":
    """`forget the roots at 36`: one earlier line is taken back by what it says."""
    from estimator.fieldnotes.meaning import Meaning

    heads = [
        a.means.get("finding") or a.means.get("place") or ""
        for a in r.atoms
        if "finding" in a.means or "place" in a.means
    ]
    readings = [
        t.value for n in range(len(r.atoms)) if (t := r.number(n)) is not None and t.kind in ("num", "ft", "range")
    ]
    if len(readings) > 1 or len(heads) > 1 or not (heads or readings):
        return None
    kind = heads[0].replace(",", " ").split()[0] if heads else ""
    if heads and heads[0].startswith("reverse fall"):
        kind = "reverse fall"
    return Meaning(gone=(kind, readings[0] if readings else None), score=9)

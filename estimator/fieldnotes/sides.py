"""Left, right, top and bottom in a line in; each given to the thing it belongs to, out."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from estimator.fieldnotes.atoms import Atom
from estimator.fieldnotes.drafts import Draft

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader


Nearest = Callable[[int, list[Draft]], Draft | None]
"""The finding that stands nearest to a word of the line."""


def give_sides(r: "Reader", drafts: Sequence[Draft], nearest: Nearest, findings: list[Draft]) -> None:
    """Sides and parts of the pipe, each to the bend, the offset or the finding it says most about."""
    for n in r.where("side"):
        if n in r.used or ("grade" in r.atoms[n].means and findings):
            continue
        side = r.atoms[n].means["side"]
        bend = next((d for d in drafts if d.word in ("bend", "cleanout")), None)
        target = nearest(n, findings)
        if bend is not None and not bend.direction:
            bend.direction = side
        elif target is None or (target.word != "offset" and "remark" in r.atoms[n].means):  # `vertical crack`
            continue
        elif target.word == "offset":
            target.direction = target.direction or side
        elif target.clock is None and side in ("left", "right"):
            target.clock = side
        elif side in ("up", "down") and target.clock is None and target.word not in ("sag", "scale", "reverse fall"):
            target.clock = "top" if side == "up" else "bottom"
        r.used.add(n)
    for n in r.where("at"):
        way = r.text(n).partition(" ")[0]
        target = next((d for d in drafts if d.word in ("offset", "bend")), None)
        if r.text(n) in ("down at", "up at") and target is not None:
            target.direction = target.direction or way  # `offset 1in down at 44`
            r.used.add(n)
    for n in r.where("part"):
        part = r.atoms[n].means["part"]
        if part not in ("top", "bottom") or n in r.used:
            continue
        bend = next((d for d in drafts if d.word == "bend"), None)
        if bend is not None and not bend.direction:
            bend.direction = "up" if part == "top" else "down"
            r.used.add(n)
            continue
        target = nearest(n, [d for d in findings if d.word not in ("sag", "mud", "channel", "reverse fall")])
        r.used.add(n)
        if target is not None and target.word == "grease" and any(d.word == "sag" for d in findings):
            continue  # on top of the water
        if target is None:
            continue
        if target.word == "offset":
            target.direction = target.direction or ("up" if part == "top" else "down")
        elif target.clock is None:
            target.clock = part


JUST = (
    "thru", "through", "in", "into", "inside", "across", "after", "by", "at", "near", "down", "up", "next", "there", "here",
    "outside", "on", "under", "over", "past", "below", "above", "before", "behind", "where", "beside", "beneath", "against",
)  # fmt: skip


JUST_SAID = ("right", "rt", "rite", "at right")


def just_there(every: list[Atom]) -> list[Atom]:
    """`right on the invert`, `right under the sink`: that right is no side, unless the size of a branch stands before it."""
    before = [None, *(a.token for a in every)]
    branch = any(a.means.get("place") == "branch" or "room" in a.means for a in every)
    sized = [branch and t is not None and t.kind == "in" for t in before]
    after = ["" if "live" in a.means else a.text.split()[0] for a in every[1:]] + [""]
    return [
        replace(a, means={"plain": "plain"})
        if _left_behind(every[n : n + 3])
        or (
            (a.text in JUST_SAID or (a.slip and a.means.get("side") == "right"))
            and not size
            and (
                (word in JUST and not (word == "at" and (branch or a.text == "rt")))
                or _at_a_thing(every[n + 1 : n + 3])
            )
        )
        else a
        for n, (a, word, size) in enumerate(zip(every, after, sized, strict=False))
    ]


def _left_behind(words: list[Atom]) -> bool:
    """`roots cut out left a hole`: that left is no side."""
    return [a.text for a in words[:2]] in (["left", "a"], ["left", "an"]) and "finding" in words[-1].means


def _at_a_thing(after: list[Atom]) -> bool:
    """`right at the hub`; `right at 33` may be a side."""
    return len(after) > 1 and after[0].text in ("at", "at the") and "part" in after[1].means

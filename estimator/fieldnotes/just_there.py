"""The words of a line in; the same, with `right` that says only "just" made a plain word, out."""

from dataclasses import replace

from estimator.fieldnotes.atoms import Atom

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
        if (a.text in JUST_SAID or (a.slip and a.means.get("side") == "right"))
        and not size
        and ((word in JUST and not (word == "at" and (branch or a.text == "rt"))) or _at_a_thing(every[n + 1 : n + 3]))
        else a
        for n, (a, word, size) in enumerate(zip(every, after, sized, strict=False))
    ]


def _at_a_thing(after: list[Atom]) -> bool:
    """`right at the hub`; `right at 33` may be a side."""
    return len(after) > 1 and after[0].text in ("at", "at the") and "part" in after[1].means

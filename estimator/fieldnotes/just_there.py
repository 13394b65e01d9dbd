"""The words of a line in; the same, with `right` that says only "just" made a plain word, out."""

from dataclasses import replace

from estimator.fieldnotes.atoms import Atom

JUST = (
    "thru",
    "through",
    "in",
    "into",
    "inside",
    "across",
    "after",
    "by",
    "near",
    "down",
    "up",
    "next",
    "there",
    "here",
    "outside",
    "on",
    "under",
    "over",
    "past",
    "below",
    "above",
    "before",
    "behind",
    "where",
    "beside",
    "beneath",
    "against",
)


def just_there(every: list[Atom]) -> list[Atom]:
    """`right on the invert`, `right under the sink`: that right is no side, unless a size stands before it."""
    before = [None, *(a.token for a in every)]
    sized = [t is not None and t.kind == "in" for t in before]
    after = ["" if "live" in a.means else a.text.split()[0] for a in every[1:]] + [""]
    return [
        replace(a, means={"plain": "plain"}) if a.text in ("right", "rt", "rite") and word in JUST and not size else a
        for a, word, size in zip(every, after, sized, strict=False)
    ]

"""A line of several things in; its parts that can each be read by themselves, out."""

import itertools
from typing import TYPE_CHECKING

from estimator.fieldnotes.atoms import Atom

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader

MOST_PARTS = 6


def apart(r: "Reader") -> list[list[Atom]]:
    """Parts of the line that each have a thing and a reading of their own: `tile from 27, carpet from 33`."""
    for marks, words in ((",;/", ()), (",;/&", ("and", "y"))):
        groups = _carried(_cut(r.atoms, marks, words))
        if 2 <= len(groups) <= MOST_PARTS and all(_stands_alone(g) for g in groups):
            return groups
    return _by_turns(r)


def _cut(every: list[Atom], marks: str, words: tuple[str, ...]) -> list[list[Atom]]:
    groups: list[list[Atom]] = [[]]
    for a in every:
        if (a.token is not None and a.token.kind == "mark" and a.token.text in marks) or a.text in words:
            groups.append([])
        else:
            groups[-1].append(a)
    return [g for g in groups if g]


def _carried(groups: list[list[Atom]]) -> list[list[Atom]]:
    """A part that names nothing but says how much is of the thing before it: `bellys 30-33 2in, 36-38 1in`, `33 same`."""
    out: list[list[Atom]] = []
    head: list[Atom] = []
    last: list[Atom] = []
    for group in groups:
        same = any("again" in a.means for a in group)
        amount = (
            same
            or any(c in a.means for a in group for c in ("grade", "side", "fraction", "clock"))
            or any(a.token is not None and a.token.kind in ("in", "pct", "frac", "clock") for a in group)
        )
        if not _heads(group) and head and amount:
            readings = [a for a in group if a.token is not None and a.token.kind in ("num", "range")]
            fresh = [a for a in group if a not in readings and not ("again" in a.means or "plain" in a.means)]
            told = {c for a in fresh for c in ("grade", "side") if c in a.means} | {
                a.token.kind for a in fresh if a.token
            }
            kept = [
                a
                for a in last
                if not (a.token is not None and a.token.kind in ("num", "range", *told)) and not told & set(a.means)
            ]
            group = [*readings, *kept, *fresh] if same and readings else [*head, *group]
        elif _heads(group):
            head = [a for a in group if "finding" in a.means or a.means.get("place") in ("branch", "bend")][:1]
        out.append(group)
        last = group
    first = (
        [a for a in out[0] if a.token is not None and a.token.number and a.token.kind in ("num", "range")]
        if out
        else []
    )
    counted = len(first) == 1 and first[0].token is not None and first[0].token.value == len(out) - 1
    return out[1:] if len(out) > 2 and _heads(out[0]) and (not first or counted) else out


def _by_turns(r: "Reader") -> list[list[Atom]]:
    """`small offset 27 med offset 33`: each thing with its reading, one after the other."""
    things = [n for n, a in enumerate(r.atoms) if "finding" in a.means and n not in r.denied]
    places = [n for n, a in enumerate(r.atoms) if a.token is not None and a.token.kind in ("num", "range")]
    if not 2 <= len(things) == len(places) <= MOST_PARTS:
        return []
    pairs = list(zip(things, places, strict=True))
    if all(t < p for t, p in pairs) and all(p < t for (_, p), (t, _) in itertools.pairwise(pairs)):
        cuts = [_begins(r, t, p) for (_, p), (t, _) in itertools.pairwise(pairs)]
    elif all(p < t for t, p in pairs) and all(t < p for (t, _), (_, p) in itertools.pairwise(pairs)):
        cuts = places[1:]
    else:
        return []
    groups = [r.atoms[a:b] for a, b in itertools.pairwise((0, *cuts, len(r.atoms)))]
    return groups if all(_stands_alone(g) for g in groups) else []


def _begins(r: "Reader", thing: int, after: int) -> int:
    """Where the part of a thing begins: `med` of `med offset 33` belongs to it."""
    while thing - 1 > after and {"grade", "doubt", "plain"} & set(r.atoms[thing - 1].means):
        thing -= 1
    return thing


def _heads(group: list[Atom]) -> bool:
    return any(c in a.means for a in group for c in ("finding", "place", "material", "surface", "zone", "room"))


def _stands_alone(group: list[Atom]) -> bool:
    """It names something, and has readings that can be nothing else."""
    readings = [a.token for a in group if a.token and a.token.kind in ("num", "range")]
    if not _heads(group) or not readings or any(t.value < 7 and not t.point for t in readings):
        return False
    if len(readings) > 1 and (any(t.kind == "range" for t in readings) or not any("finding" in a.means for a in group)):
        return False
    return not any(a.means.get("place") == "loc" or "anchor" in a.means for a in group)

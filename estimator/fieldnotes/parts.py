"""A line of several things in; what its parts say, where it can be cut in one way alone so that each is read in silence, out."""

import itertools
import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from estimator.fieldnotes.atoms import Atom
from estimator.fieldnotes.drafts import shown
from estimator.fieldnotes.meaning import Meaning
from estimator.fieldnotes.tokens import Token

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader

MOST_JOINTS = 9
JOINTS = ("and", "y", "then", "luego", "with", "w", "w/", "con", "plus", "also")
HEADS = (
    "finding", "place", "material", "surface", "zone", "room", "utility", "danger", "cable end", "reach", "cleaned",
)  # fmt: skip
"""Classes of the lexicon that name a thing."""
THINGS = ("finding", "place", "utility", "danger", "cable end", "reach", "cleaned")
AMOUNTS = ("grade", "side", "fraction", "clock")
LOOSE_LOCATE = re.compile(r"\bloc\b(?! [\d,])|\bloc, (?!\d|flag)")
HOLDS = {"material", "surface", "zone"}
"""What holds from there on: `sidewalk 52 to 56 then yard again` needs no second reading."""
Cuts = tuple[int, ...]


def apart(r: "Reader") -> Meaning | None:
    """What the parts say: `tile from 27, carpet from 33`, `roots lt 26 and 32, hvy at 35`; None where nothing, or more than one thing."""
    for ways in _ways(r):
        found = [m for cuts in ways if cuts and (m := _read(r, cuts)) is not None]
        if found:
            return found[0] if len({frozenset(m.rows) for m in found}) == 1 else None
    return None


def _ways(r: "Reader") -> Iterator[list[Cuts]]:
    """At every joint, at every turn from one thing to the next, or at one or two of the joints."""
    joints = [n for n, a in enumerate(r.atoms) if n and _joins(a)][:MOST_JOINTS]
    marks = tuple(n for n in joints if r.atoms[n].token is not None)
    yield [marks]
    ends = (*marks[1:], len(r.atoms))
    yield [
        tuple(n for n, end in zip(marks, ends, strict=False) if _readings(r.atoms[n:end]))
    ]  # the others say more of it
    yield [tuple(joints)]
    if not joints:
        yield [_turns(r)]
    for many in (1, 2):
        yield list(itertools.combinations(joints, many))


def _joins(a: Atom) -> bool:
    return (a.token is not None and a.token.kind == "mark" and a.token.text in ",;/&+") or a.text in JOINTS


def _read(r: "Reader", cuts: Cuts) -> Meaning | None:
    """What the parts say, where each names a thing and a reading and leaves no question."""
    pieces = (r.atoms[a:b] for a, b in itertools.pairwise((0, *cuts, len(r.atoms))))
    groups = _carried([g[1:] if g and _joins(g[0]) else g for g in pieces if g])
    if any(_hangs(g) for g in groups[1:]):
        return None
    if len(groups) < 2 or not all(_named(g) and _readings(g) for g in groups):
        return None
    each = []
    for group in groups:
        m = r.other(group, replace(r.context, last_ft=None)).alone()
        if m.asked or not m.rows:
            return None
        each.append(m)
    each = [replace(m, rows=tuple(_without_count(row, len(groups)) for row in m.rows)) for m in each]
    rows = tuple(row for m in each for row in m.rows)
    if any(" depth " in row for row in rows) and any(LOOSE_LOCATE.search(row) for row in rows):
        return None  # of which reading is the depth?
    return Meaning(rows=rows, left="; ".join(m.left for m in each if m.left), score=max(m.score for m in each) + 1)


def _without_count(row: str, places: int) -> str:
    """`2 bellies 27-29 15% and 41-44 35%`: there are as many as are told, each once."""
    return row.replace(f" {places} places", "")


def _hangs(group: Sequence[Atom]) -> bool:
    """`down and @ 36.3 hole` after `90 bend,`: what stands before the joint may be of the part before."""
    first = list(itertools.takewhile(lambda a: a.text not in JOINTS, group))
    return 0 < len(first) < len(group) and all({"side", "grade", "live"} & a.means.keys() for a in first)


def _named(group: Sequence[Atom]) -> bool:
    return any(c in a.means for a in group for c in HEADS)


def _readings(group: Sequence[Atom]) -> list[Token]:
    return [a.token for a in group if a.token is not None and a.token.may_be_footage]


def _carried(groups: list[list[Atom]]) -> list[list[Atom]]:
    """A part that names nothing but says how much is of the thing before it: `bellys 30-33 2in, 36-38 1in`, `33 same`."""
    out: list[list[Atom]] = []
    head: list[Atom] = []
    last: list[Atom] = []
    for group in groups:
        same = any("again" in a.means for a in group)
        amount = same or any(c in a.means for a in group for c in AMOUNTS)
        amount = amount or any(a.token is not None and a.token.kind in ("in", "pct", "frac", "clock") for a in group)
        carried = not _named(group)
        if carried and head and amount:
            group = _same(group, last) if same and _readings(group) else [*head, *group]
        elif not carried:
            things = [a for a in group if any(c in a.means for c in THINGS)]
            head = [a for a in things if "finding" in a.means or a.means.get("place") in ("branch", "bend")][:1]
            head = head if len(things) == 1 else []  # of which of them would it be?
        group = _from_there(group, last, carried)
        out.append(group)
        last = group
    said = [a for a in out[0] if not (a.token or "plain" in a.means)]
    return (
        out[1:]
        if len(out) > 2 and len(said) == 1 and _only_counts(out[0], len(out) - 1) and _heads(groups[0], groups[1:])
        else out
    )


def _heads(first: Sequence[Atom], rest: Sequence[Sequence[Atom]]) -> bool:
    """Whether the first part names what all the others are, and none of them is another thing."""
    said = {pair for a in first for pair in a.means.items() if pair[0] in HEADS}
    named = [{pair for a in g for pair in a.means.items() if pair[0] in HEADS} for g in rest]
    return bool(said) and all(not pairs or pairs & said for pairs in named)


def _only_counts(group: Sequence[Atom], places: int) -> bool:
    """`two taps`, `bellys`: the places follow."""
    numbers = [a.token.value for a in group if a.token is not None and a.token.number]
    return not numbers or numbers == [places]


def _same(group: list[Atom], last: list[Atom]) -> list[Atom]:
    """`30 gap 1in, 33 same but 2in`: all of the part before at another reading, but what this one says anew."""
    readings = [a for a in group if a.token is not None and a.token.may_be_footage]
    fresh = [a for a in group if a not in readings and not ("again" in a.means or "plain" in a.means)]
    told = {c for a in fresh for c in ("grade", "side") if c in a.means} | {a.token.kind for a in fresh if a.token}
    kept = [
        a
        for a in last
        if not (a.token is not None and (a.token.may_be_footage or a.token.kind in told)) and not told & set(a.means)
    ]
    return [*readings, *kept, *fresh]


def _from_there(group: list[Atom], last: list[Atom], carried: bool) -> list[Atom]:
    """`22-24.5 light, then hvy to 27`, `grease from there to 38`: it begins where the part before ended."""
    ends, before = _readings(group), _readings(last)
    end_ft = before[-1].to or 0.0 if before else 0.0
    if (
        not ends
        and before
        and end_ft > before[-1].value
        and all(HOLDS & set(a.means) for a in group if not a.means.keys() & {"plain", "again"})
    ):
        return [
            Atom(shown(end_ft), 0, 0, token=replace(before[-1], kind="num", value=end_ft, to=None)),
            *group,
        ]
    if len(ends) != 1 or not before or ends[0].kind == "range":
        return group
    end, begins = ends[0], before[-1].ends[1] or before[-1].value
    n = next(k for k, a in enumerate(group) if a.token is end)
    there = any(a.text in ("there", "ahi", "alli") or "from there" in a.text for a in group[:n])
    if not n or "till" not in group[n - 1].means or not (there or carried) or begins >= end.value:
        return group
    stretch = replace(end, kind="range", value=begins, to=end.value, tight=True)
    return [*group[:n], replace(group[n], token=stretch), *group[n + 1 :]]


def _turns(r: "Reader") -> Cuts:
    """Where the next part begins in `small offset 27 med offset 33`: each thing with its reading, one after the other."""
    things = [n for n, a in enumerate(r.atoms) if "finding" in a.means and n not in r.denied]
    places = [n for n, a in enumerate(r.atoms) if a.token is not None and a.token.may_be_footage]
    if not 2 <= len(things) == len(places):
        return ()
    pairs = list(zip(things, places, strict=True))
    if all(t < p for t, p in pairs) and all(p < t for (_, p), (t, _) in itertools.pairwise(pairs)):
        return tuple(_begins(r, t, p) for (_, p), (t, _) in itertools.pairwise(pairs))
    if all(p < t for t, p in pairs) and all(t < p for (t, _), (_, p) in itertools.pairwise(pairs)):
        return tuple(places[1:])
    return ()


def _begins(r: "Reader", thing: int, after: int) -> int:
    """Where the part of a thing begins: `med` of `med offset 33` belongs to it."""
    while thing - 1 > after and {"grade", "doubt", "plain"} & set(r.atoms[thing - 1].means):
        thing -= 1
    return thing

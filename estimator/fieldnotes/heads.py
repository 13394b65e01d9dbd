"""The things a line names: its atoms come in, drafts of findings, branches, bends, zones, pipe and the rest go out."""

from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import FILLS, Draft
from estimator.fieldnotes.numbers_of_a_line import Numbers

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader
from estimator.fieldnotes.head_ends import _ends
from estimator.fieldnotes.head_findings import _findings, _signs, _states
from estimator.fieldnotes.head_holds import _pipe_beside, _pipe_changed, _pipes, _zones
from estimator.fieldnotes.head_places import _places
from estimator.fieldnotes.head_words import _asked, _rooms
from estimator.model.say import Say


def drafts(r: "Reader", numbers: Numbers) -> list[Draft]:
    out: list[Draft] = []
    _dangers(r, numbers, out)
    _utilities(r, numbers, out)
    if r.ask:
        return out
    if numbers.inches and (r.has("unclear", "opening") or _left_open(r)):
        _asked(r, "opening")
    _findings(r, numbers, out)
    _water(r, numbers, out)
    _states(r, numbers, out)
    _signs(r, numbers, out)
    _places(r, numbers, out)
    _ends(r, numbers, out)
    if not any(d.finding for d in out):
        _pipes(r, numbers, out)
        _zones(r, numbers, out)
        _rooms(r, numbers, out)
        _unclear(r, numbers, out)
    elif not any(d.word in ("branch", "loc") for d in out):
        _pipe_beside(r, out)
        _pipe_changed(r, out)
    return sorted(out, key=lambda d: d.at)


def _left_open(r: "Reader") -> bool:
    """`scale only 2 1/2in left`, `scale down to 2in hole`: inches that are left of the pipe, or a side."""
    fills = any(r.atoms[n].means["finding"].split()[0] in FILLS for n in r.where("finding"))
    return fills and any(
        t.kind == "in"
        and (r.text(_past_small(r, n)) in LEFT_OPEN or (r.text(n - 1), r.text(n + 1)) == ("down to", "hole"))
        for n, t in r.numbers()
    )


LEFT_OPEN = ("left", "open", "clear", "opened")


def _past_small(r: "Reader", n: int) -> int:
    """The atom after a number that is neither a small word nor the hole it measures: `2in of hole left`."""
    k = n + 1
    while k < n + 4 and (r.text(k) in ("of", "hole", "opening", "pipe", "only")):
        k += 1
    return k


HELD = {"water", "agua", "holding", "holds", "standing"}


def _water(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    """`22-26 half full of water`, `1 1/2in of water 28 thru 31`: water that stands, by how much there is of it."""
    water = [n for n, a in enumerate(r.atoms) if HELD & set(a.text.split()) and "unclear" not in a.means]
    if not water or r.ask:
        return
    clause = r.clause[water[0]]
    amounts = [n for n, _ in (*numbers.inches, *numbers.percents)]
    much = any(r.clause[n] == clause for n in amounts) if out else bool(amounts)
    other = any(
        c in a.means and a.means[c] not in ("depth", "down", "up") and (not out or r.clause[n] == clause)
        for n, a in enumerate(r.atoms)
        for c in ("live", "room", "utility", "crossing", "place", "side", "material", "rises", "out of water")
    ) or any("run" in a.means and a.text not in ("from", "start", "pulled", "desde") for a in r.atoms)
    alone = not (out or amounts or r.single_place()) and all(
        a.token or ("plain" in a.means and "grade" not in a.means) for a in r.atoms
    )
    held = [n for n in water if r.text(n) in ("holds", "holding") and _amount_follows(r, n)]  # `laid flat holds 3/4"`
    if any(d.word == "sag" for d in out):
        return
    if held or ((much or alone) and not other and not any(d.clause == clause for d in out)):
        out.append(Draft("sag", held[0] if held else water[0], clause))


def _amount_follows(r: "Reader", n: int) -> bool:
    near = (t for k in (n + 1, n + 2) if (t := r.number(k)) is not None)
    return next((t.kind in ("in", "pct", "frac") for t in near), False)


def _dangers(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    for n in r.where("danger"):
        r.used.add(n)
        if r.atoms[n].means["danger"] == "cross bore":
            draft = Draft("utility", n, r.clause[n])
            for k in r.where("utility"):
                draft.choice = r.atoms[k].means["utility"]
                r.used.add(k)
            out.append(draft)
        else:
            _asked(r, r.atoms[n].means["danger"])


def _utilities(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    where = r.where("utility")
    lines = r.where("unclear", "water line")
    if lines and not where and r.has("place", "crossing"):
        out.append(Draft("crossing", lines[0], r.clause[lines[0]], choice="water", lengths=list(numbers.lengths)))
        numbers.lengths.clear()
        r.used |= {*lines, *r.where("place", "crossing")}
    if not where or any(d.word == "utility" for d in out):
        return
    n = where[0]
    what = r.atoms[n].means["utility"]
    for k in where:
        r.used.add(k)
    through = list(r.where("through"))
    crossing = r.where("place", "crossing")
    beside = bool(numbers.lengths)
    r.used |= {*through, *crossing}
    if what == "gas" and not through and not crossing and all(label == "away" for label, _ in numbers.lengths):
        r.ask.append((
            Say.of("does the gas line cross the drain, run through it, or lie beside it? Treat it as live until its owner says where it is."),
            ("crossing gas", "utility gas", "note"),
        ))  # fmt: skip
        r.used |= set(r.where("place", "loc"))
        return
    if through and not crossing and not beside:
        out.append(Draft("utility", n, r.clause[n], choice=what))
    elif (crossing and not through) or (beside and not through):
        out.append(Draft("crossing", n, r.clause[n], choice=what, lengths=list(numbers.lengths)))
        numbers.lengths.clear()
    else:
        r.ask.append((
            Say.of("does the {what} line run through the drain, or cross outside it? Treat it as live until its owner says what it is?", what=what),
            (f"utility {what}", f"crossing {what}"),
        ))  # fmt: skip


def _unclear(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    if out or r.ask:
        return
    water, crossing = r.where("unclear", "water line"), r.where("place", "crossing")
    footings = r.where("unclear", "footing")
    if footings and any(label in ("away", "deep") for label, _ in numbers.lengths):
        out.append(Draft("footing", footings[0], r.clause[footings[0]], lengths=list(numbers.lengths)))
        numbers.lengths.clear()
        r.used |= {*footings}
        return
    for n in r.where("unclear"):
        if n in water and crossing:  # it says that it crosses
            continue
        r.used.add(n)
        _asked(r, r.atoms[n].means["unclear"])
        if n in water and r.has("through"):
            question, (first, second, *rest) = r.ask.pop()
            r.ask.append((question, (second, first, *rest)))
        return

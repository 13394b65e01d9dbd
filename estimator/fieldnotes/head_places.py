"""Words of places in (branches, bends, ends, locates); what a line may mean by them, out."""

from typing import TYPE_CHECKING

from estimator.fieldnotes.bare_figures import DEGREES, SIZES_IN
from estimator.fieldnotes.drafts import Draft
from estimator.fieldnotes.head_branches import _branch
from estimator.fieldnotes.numbers_of_a_line import Numbers

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader
from estimator.fieldnotes.head_ends import _locates
from estimator.model.say import Say

COMES_IN = ("coming in", "comes in", "entra", "enters", "te", "stack", "combo", "llega")
WHERE_IT_IS = ("at", "in", "near", "by", "from", "past", "the", "en")


def _places(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    findings = [d for d in out if d.finding]
    _branches(r, numbers, out, findings)
    if findings:  # they say where
        where = {n for n in r.where("place") if r.atoms[n].means["place"] not in ("loc", "pothole", "crossing")}
        r.used |= {n for n in where if "side" not in r.atoms[n].means}
    if any(d.word in ("intruding", "fitting") for d in findings):
        r.used |= set(_rooms_said(r))
    if not findings:
        _cleanout(r, numbers, out)
    _bend(r, numbers, out, findings)
    if not findings:
        _beams_and_trees(r, numbers, out)
    _locates(r, numbers, out)
    joints = r.where("part", "joint")
    if numbers.every_ft and not any(d.finding for d in out):
        n = joints[0] if joints else 0
        out.append(Draft("joint", n, r.clause[n], every_ft=numbers.every_ft))
        numbers.every_ft = None
        r.used |= set(joints)
    _cleaned(r, numbers, out, findings)


def _rooms_said(r: "Reader") -> list[int]:
    return [n for n in r.where("room") if r.text(n) not in ("closet bend", "closet flange")]


def _branches(r: "Reader", numbers: Numbers, out: list[Draft], findings: list[Draft]) -> None:
    """A branch by its own word, or by a room with a size or a side; not one that says where a finding lies."""
    branches, rooms = r.where("place", "branch"), _rooms_said(r)
    elsewhere = r.has("under") or r.has("place", "loc")
    if not findings and not r.has("side") and not numbers.inches and r.where("reach") and _drain_reached(r, branches):
        r.used |= set(branches)
        branches = []
    named = bool(branches) and not any(d.word in ("intruding", "fitting") for d in findings)
    if findings and (
        all(r.text(n) in COMES_IN for n in branches)
        or (not numbers.inches and all(r.text(n - 1) in WHERE_IT_IS for n in branches))  # `roots at tee`
    ):
        named = False
    sized = any(v in SIZES_IN for _, v in numbers.inches) or _bare_size(r)
    implied = bool(rooms) and sized and not (elsewhere or r.has("surface") or numbers.depth)
    told = rooms or (numbers.inches and (r.has("live") or r.has("sign", "capped") or r.has("sign", "dry")))
    sided = any(r.atoms[n].means["side"] in ("left", "right") for n in r.where("side"))
    on_a_side = told and sided and not (elsewhere or r.has("place", "bend"))
    if named or (not branches and not findings and (implied or on_a_side)):
        _branch(r, numbers, out, branches, rooms)
    elif branches:
        r.used |= set(branches)


def _cleanout(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    for n in r.where("place", "cleanout"):
        if n in r.used:
            continue
        if "run" in r.atoms[n].means and _pipe_from_access(r):
            r.used.add(n)
        elif not (any(d.word == "branch" for d in out) or numbers.tapes):
            two_way = r.where("sign", "two-way")
            out.append(Draft("cleanout", n, r.clause[n], signs=["two-way" for _ in two_way]))
            r.used |= {n, *two_way}
            return


def _bend(r: "Reader", numbers: Numbers, out: list[Draft], findings: list[Draft]) -> None:
    bends = [n for n in r.where("place", "bend") if r.text(n) != "turns" or not r.has("material")]
    turned = not bends and not out and _bend_by_degrees(r)
    if turned and not r.has("side") and not numbers.degrees and not r.has("part"):
        values = [t.value for _, t in r.numbers()]
        r.ask.append((Say.of("a bend, or a stretch?"), tuple(f"bend {v:g}" for v in values if v in DEGREES)))
    if (bends or turned) and not findings and not any(d.word in ("branch", "cleanout") for d in out):
        n = bends[0] if bends else 0
        turns = [float(w) for w in r.text(n).split() if w.isdigit()]  # `street 90`
        kind = r.text(n) if r.text(n) in ("long sweep", "sweep") else ""
        out.append(Draft("bend", n, r.clause[n], choice=kind, degrees=turns[0] if turns else None))
        r.used |= set(bends)


def _beams_and_trees(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    for word in ("beam", "property line"):
        for n in r.where("place", word)[:1]:
            out.append(Draft(word, n, r.clause[n], lengths=list(numbers.lengths) if word == "beam" else []))
            r.used.add(n)
    for n in r.where("place", "tree")[:1]:
        if "finding" not in r.atoms[n].means and not any(d.word in ("branch", "cleanout") for d in out):
            out.append(Draft("tree", n, r.clause[n], lengths=list(dict(numbers.lengths).items())))
            r.used |= {n, *r.where("grade"), *r.where("side")}


def _cleaned(r: "Reader", numbers: Numbers, out: list[Draft], findings: list[Draft]) -> None:
    """`ran 4in cutter`, `jetted to 40`; with findings behind it they are those after cleaning."""
    if numbers.tool and not findings and not r.has("cleaned") and r.text(0) in ("ran", "run", "used", "put"):
        out.append(Draft("cleaned", 0, r.clause[0], choice="cutter"))
        r.used.add(0)
        numbers.inches.clear()
    cleaned = r.where("cleaned")
    if cleaned and findings and cleaned[0] < min(d.at for d in findings):  # `jetted, roots 34 down to 10%`
        r.used |= set(cleaned)
        for d in findings:
            d.after_cleaning = True
    if r.has("sign", "cut yearly"):
        r.used |= set(cleaned)
    for n in cleaned[:1]:
        if not findings or ("finding" not in r.atoms[n].means and all(d.at == n for d in findings)):
            out.append(Draft("cleaned", n, r.clause[n], choice=_cleaned_by(r.text(n))))
            r.used.add(n)
            if numbers.tool:
                numbers.inches.clear()


CUT = ("cut", "corta", "corte", "ran cutter", "ran blade", "ran a blade", "roots cut")
CLEANERS = (
    ("jet", ("jet",)), ("descaled", ("descale", "mill", "chain", "scale")),
    ("cable machine", ("snake", "cable", "rod", "rooter")),
)  # fmt: skip
"""What a drain was cleaned with, by a part of the word that says so."""


def _cleaned_by(said: str) -> str:
    if said.startswith(CUT):
        return "cutter"
    return next((how for how, parts in CLEANERS if any(part in said for part in parts)), "")


def _drain_reached(r: "Reader", branches: list[int]) -> bool:
    """`lateral hits manhole`: the drain itself, which reaches an end."""
    whole = all(r.text(n) in ("lateral", "line", "hits main", "connection") for n in branches)
    return bool(branches) and whole and (r.has("reached") or r.has("end"))


def _bare_size(r: "Reader") -> bool:
    return any(n > 0 and t.kind == "num" and t.value in SIZES_IN and not t.point for n, t in r.numbers())


def _pipe_from_access(r: "Reader") -> bool:
    return r.has("material") and (r.has("change") or r.has("reached"))


def _bend_by_degrees(r: "Reader") -> bool:
    """`15 45 left`: two numbers, one of them the degrees of a bend."""
    values = r.numbers()
    plain = [t for _, t in values if t.kind in ("num", "deg")]
    heads = any(
        c in a.means and "side" not in a.means
        for a in r.atoms
        for c in ("finding", "place", "material", "room", "surface", "zone", "utility", "reach", "unclear")
    )
    return (
        not heads
        and len(plain) == len(values)
        and any(t.value in (90.0, 45.0, 22.5) for t in plain)
        and (len(values) == 2 or any(t.kind == "deg" for t in plain) or r.has("side"))
    )

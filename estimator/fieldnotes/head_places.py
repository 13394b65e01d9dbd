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


def _places(r: "Reader", numbers: Numbers, out: list[Draft]) -> None:
    findings = [d for d in out if d.finding]
    branches = r.where("place", "branch")
    rooms = [n for n in r.where("room") if r.text(n) not in ("closet bend", "closet flange")]
    words = {d.word for d in findings}
    tied = bool(branches) and not (words & {"intruding", "fitting"})
    if (
        tied
        and findings
        and all(
            r.text(n) in ("coming in", "comes in", "entra", "enters", "te", "stack", "combo", "llega") for n in branches
        )
    ):
        tied = False
    if (
        tied
        and findings
        and not numbers.inches
        and all(r.text(n - 1) in ("at", "in", "near", "by", "from", "past", "the", "en") for n in branches)
    ):
        tied = False  # `roots at tee` says where
    if not findings and not r.has("side") and not numbers.inches and r.where("reach") and _drain_reached(r, branches):
        tied = False
        r.used |= set(branches)
        branches = []
    implied = (
        not branches
        and not findings
        and bool(rooms)
        and bool([1 for _, v in numbers.inches if v in SIZES_IN] or _bare_size(r))
        and not r.has("under")
        and not r.has("place", "loc")
        and not r.has("surface")
        and not numbers.depth
    )
    left_room = (
        not branches
        and not findings
        and (rooms or ((r.has("live") or r.has("sign", "capped") or r.has("sign", "dry")) and numbers.inches))
        and any(r.atoms[n].means["side"] in ("left", "right") for n in r.where("side"))
        and not r.has("under")
        and not r.has("place", "loc")
        and not r.has("place", "bend")
    )
    if tied or implied or left_room:
        _branch(r, numbers, out, branches, rooms)
    elif branches:
        r.used |= set(branches)
    if findings:  # they say where
        where = {n for n in r.where("place") if r.atoms[n].means["place"] not in ("loc", "pothole", "crossing")}
        r.used |= {n for n in where if "side" not in r.atoms[n].means}
    if words & {"intruding", "fitting"}:
        r.used |= set(rooms)
    for n in r.where("place", "cleanout"):
        if n in r.used or findings:
            continue
        if "run" in r.atoms[n].means and _pipe_from_access(r):
            r.used.add(n)
            continue
        if any(d.word == "branch" for d in out) or numbers.tapes:
            continue
        draft = Draft("cleanout", n, r.clause[n])
        for k in r.where("sign", "two-way"):
            draft.signs.append("two-way")
            r.used.add(k)
        out.append(draft)
        r.used.add(n)
        break
    bends = [n for n in r.where("place", "bend") if r.text(n) not in ("turns",) or not r.has("material")]
    turned = not bends and not out and _bend_by_degrees(r)
    if turned and not r.has("side") and not numbers.degrees and not r.has("part"):
        values = [t.value for _, t in r.numbers()]
        r.ask.append((Say.of("a bend, or a stretch?"), tuple(f"bend {v:g}" for v in values if v in DEGREES)))
    if (bends or turned) and not findings and not any(d.word in ("branch", "cleanout") for d in out):
        n = bends[0] if bends else 0
        turns = [float(w) for w in r.text(n).split() if w.isdigit()]  # `street 90`
        out.append(
            Draft(
                "bend",
                n,
                r.clause[n],
                choice="long sweep" if r.text(n) == "long sweep" else "sweep" if r.text(n) == "sweep" else "",
                degrees=turns[0] if turns else None,
            )
        )
        r.used |= set(bends)
    for word in ("beam", "property line"):
        for n in r.where("place", word)[:1]:
            if not findings:
                out.append(Draft(word, n, r.clause[n], lengths=list(numbers.lengths) if word == "beam" else []))
                r.used.add(n)
    for n in r.where("place", "tree")[:1]:
        if (
            "finding" not in r.atoms[n].means
            and not findings
            and not any(d.word in ("branch", "cleanout") for d in out)
        ):
            draft = Draft("tree", n, r.clause[n], lengths=list(dict(numbers.lengths).items()))
            out.append(draft)
            r.used |= {n, *r.where("grade"), *r.where("side")}
    _locates(r, numbers, out)
    joints = r.where("part", "joint")
    if numbers.every_ft and not any(d.finding for d in out):
        n = joints[0] if joints else 0
        out.append(Draft("joint", n, r.clause[n], every_ft=numbers.every_ft))
        numbers.every_ft = None
        r.used |= set(joints)
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
        if not findings or (
            "cleaned" in r.atoms[n].means and "finding" not in r.atoms[n].means and all(d.at == n for d in findings)
        ):
            how = (
                "cutter"
                if r.text(n).startswith(
                    ("cut", "corta", "corte", "ran cutter", "ran blade", "ran a blade", "roots cut")
                )
                else "jet"
                if "jet" in r.text(n)
                else "descaled"
                if any(w in r.text(n) for w in ("descale", "mill", "chain", "scale"))
                else "cable machine"
                if any(w in r.text(n) for w in ("snake", "cable", "rod", "rooter"))
                else ""
            )
            out.append(Draft("cleaned", n, r.clause[n], choice=how))
            r.used.add(n)
            if numbers.tool:
                numbers.inches.clear()


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

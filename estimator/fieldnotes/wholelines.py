"""Lines that are something else than things at a reading: corrections, the begin of a camera run, its turning back, remarks, tapes."""

import re
from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import shown
from estimator.model.lengths import show

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Meaning, Reader

_STARTS_NO = re.compile(r"\s*(?:no+|not|nope|oops|sorry|wait|digo|perdon)\b")


def correction(r: "Reader") -> "Meaning | None":
    """`no 31.5`, `scratch that`, `make that 4in`, `not left, right`, `thats not roots its a rag`."""
    from estimator.fieldnotes.understand import Meaning

    before = r.context.before
    said = {a.means["correct"] for a in r.atoms if "correct" in a.means}
    if "counter" in said:
        return Meaning(
            asked="does this hold for every reading so far? Then correct them, or begin the run with `zero at`", score=9
        )
    findings = r.where("finding")
    if "strike" in said and not any(r.number(n) for n in range(len(r.atoms))):
        if not before:
            return Meaning(asked="there is no line before this one to take back", score=9)
        return Meaning(rows=(), instead=True, score=9)
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
    instead = "instead" in said or no_first
    if not instead or (not before and "instead" not in said):
        return None
    numbers = [(n, t) for n in range(len(r.atoms)) if (t := r.number(n)) is not None]
    first = numbers[0][0] if numbers else len(r.atoms)
    marker = next((n for n, a in enumerate(r.atoms) if "correct" in a.means or (n == 0 and no_first)), 0)
    if numbers and first < marker:
        if "instead" in said and len(numbers) >= 2:
            return _read_again(r, first, marker) or _put_right(r, first, marker)
        return None  # `16 no 16.6 jt up` has its own reading: see reading_put_right
    positive = [n for n in findings if n not in r.denied]
    denied = [n for n, a in enumerate(r.atoms) if "finding" in a.means and n in r.denied]
    if not before:
        return None
    old = before[-1]
    where, _, rest = old.partition(" ")
    if denied and (positive or r.has("unclear")) and not numbers:
        return _rest(r, where, positive[0] if positive else 0)
    if denied and not positive and not numbers and ("thats" in r.words() or "its" in r.words() or r.text(0) == "not"):
        words = {r.atoms[n].means["finding"].split()[0] for n in denied}
        if any(w in rest.split() for w in words):
            return Meaning(asked="what is there instead?", choices=("note",), score=6)
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
        new, count = re.subn(r"(?<![\w.])\d+(?:\.\d+)?in\b", f"{shown(t.value)}in", rest, count=1)
        new = new if count else f"{rest} {shown(t.value)}in"
        return Meaning(rows=(f"{where} {new}",), instead=True, score=9)
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
                asked="where does it begin and end?",
                choices=(f"{at} {rest}", f"{where.partition('-')[0]}-{at} {rest}"),
                instead=True,
                score=9,
            )
        return Meaning(rows=(f"{at} {rest}",), instead=True, score=9)
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

    from estimator.fieldnotes.understand import Meaning

    found = r.without_denied(where)
    if found.rows or found.asked:
        return replace(found, instead=True)
    return Meaning(asked="what is there instead?", score=6)


def _put_right(r: "Reader", first: int, marker: int) -> "Meaning | None":
    """`40.2 i mean 42 roots med`, and `22 branch 3in left no right`: what stands before the correction falls away."""
    numbers = [n for n in range(len(r.atoms)) if r.number(n) is not None]
    after = [n for n in numbers if n > marker]
    between = [n for n in numbers if first < n < marker]
    if after and not between and after[0] == marker + 1:
        return r.part(after[0], skip=(first, after[0])).meaning()
    return None


def _read_again(r: "Reader", first: int, marker: int) -> "Meaning | None":
    """`9 scale, call 9.3`: the last number is the reading."""
    from estimator.fieldnotes.understand import Reader

    last = max(n for n in range(len(r.atoms)) if r.number(n) is not None)
    rest = r.atoms[last + 1 :]
    if last <= marker or any("plain" not in a.means and not a.token for a in rest):
        return None
    kept = [a for n, a in enumerate(r.atoms) if first < n < marker and not r.is_mark(n, "~(,")]
    if not any(set(a.means) - {"plain"} for a in kept):
        return None
    return Reader([r.atoms[last], *kept], r.context).meaning()


def heading(r: "Reader") -> "Meaning | None":
    """The camera goes in somewhere: `start front c/o to house`, `2 ft riser front co, cam in toward house`."""
    from estimator.fieldnotes.understand import Meaning

    reruns, runs = r.has("run", "rerun"), r.where("run", "run")
    access = [
        n
        for n, a in enumerate(r.atoms)
        if a.means.get("run") == "access"
        or a.means.get("room") == "toilet"
        or ("room" in a.means and r.has("run", "run"))
    ]
    findings = r.has("finding")
    if reruns and not access and not findings:
        return Meaning(asked="a new camera run: from where, which way, and how long is the riser?", choices=(), score=9)
    if findings or r.has("material") or (r.has("cleaned") and not runs) or r.has("place", "loc"):
        return None
    flows = r.where("flow")
    risers = r.has("run", "riser")
    readings = [t for n in range(len(r.atoms)) if (t := r.number(n)) is not None]
    strong = [
        n
        for n in runs
        if r.text(n)
        not in ("start", "from", "access", "pulled", "going in", "desde", "push", "pushed", "in at", "going from")
    ]
    if not access or not ((flows and (runs or risers or len(r.atoms) <= 6)) or strong or risers):
        return None
    if readings and not risers and (not runs or any(t.point for t in readings)):
        return None
    if r.has("place", "branch") and not strong:
        return None
    if access and not runs and not flows:
        return None
    flow = r.atoms[flows[-1]].means["flow"] if flows else ""
    name = _access_name(r, access)
    riser = None
    from estimator.fieldnotes.figures import labelled

    numbers = labelled(r)
    riser = numbers.riser_ft
    to = ""
    text = r.words()
    for word in ("street", "main", "house", "septic", "tank", "city", "alley"):
        if re.search(rf"\b(?:to|toward|towards|into)(?: the| city)? {word}\b", text):
            to = {"city": "city main", "septic": "septic tank", "tank": "septic tank"}.get(word, word)
    if any(w in text for w in ("a la casa", "hacia la casa", "para la casa")):
        to = "house"
    if any(w in text for w in ("a la calle", "hacia la calle", "para la calle")):
        to = "street"
    parts = [f"pass {name}" + (f" to {to}" if to else "")]
    if flow:
        parts.append(flow)
    if riser:
        parts.append(f"riser {show(round(riser, 6))}")
    elif r.has("run", "surface"):
        parts.append("surface")
    if r.has("after cleaning"):
        parts.append("after cleaning")
    return Meaning(rows=(", ".join(parts),), score=9)


def _access_name(r: "Reader", access: list[int]) -> str:
    n = access[0]
    words: list[str] = []
    k = n
    while (
        k > 0
        and (
            "whose" in r.atoms[k - 1].means
            or "room" in r.atoms[k - 1].means
            or r.text(k - 1) in ("two way", "twoway", "roof")
        )
        and "flow" not in r.atoms[k - 1].means
    ):
        k -= 1
    last = n
    while last + 1 < len(r.atoms) and "room" in r.atoms[last + 1].means and "flow" not in r.atoms[last + 1].means:
        last += 1
    for m in range(k, last + 1):
        means = r.atoms[m].means
        word = means.get("whose") or (means.get("room") if "place" not in means else "") or r.text(m)
        if means.get("run") == "access":
            word = re.sub(r"\b(?:c/?o|clean ?out|registro)\b", "cleanout", r.text(m))
            word = re.sub(r"\b(?:frt|frnt)\b", "front", word)
            word = re.sub(r"\btwoway\b", "two-way", word)
        words.append(word)
    return " ".join(words)


def turned(r: "Reader") -> "Meaning | None":
    from estimator.fieldnotes.understand import Meaning

    if not r.has("back") or any(r.number(n) for n in range(len(r.atoms))):
        return None
    if any(c in a.means for a in r.atoms for c in ("finding", "surface", "place", "material", "room")):
        return None
    if any("zone" in a.means and "back" not in a.means for a in r.atoms):
        return None
    return Meaning(rows=("back",), score=9)


def remark(r: "Reader") -> "Meaning | None":
    """A line that is a remark whole: nobody is asked. A finding or a danger in it never is."""
    from estimator.fieldnotes.understand import Meaning

    says = [
        n
        for n, a in enumerate(r.atoms)
        if n not in r.denied and any(c in a.means for c in ("finding", "danger", "utility")) and "remark" not in a.means
    ]
    if any(a.near for a in r.atoms):
        return None
    whole = any(a.means.get("remark") == "whole" for a in r.atoms)
    if whole and not says and not r.has("sign", "cannot pass"):
        return Meaning(score=5)
    concepts = (
        "finding",
        "place",
        "material",
        "surface",
        "zone",
        "utility",
        "unclear",
        "danger",
        "state",
        "reach",
        "sign",
        "side",
        "room",
        "correct",
        "stop",
        "end",
        "cable end",
        "rises",
        "out of water",
        "cleaned",
        "repair",
        "over",
        "back",
        "run",
        "live",
    )
    quiet = ("surface", "zone", "room", "over", "side", "back")
    speaks = [
        n
        for n, a in enumerate(r.atoms)
        if n not in r.denied and any(c in a.means for c in concepts) and "remark" not in a.means
    ]
    loud = [n for n in speaks if any(c in r.atoms[n].means for c in concepts if c not in quiet)]
    readings = [n for n in range(len(r.atoms)) if (t := r.number(n)) is not None and t.kind not in ("in",)]
    noted = any("remark" in a.means for a in r.atoms)
    parts = [n for n in r.where("part") if r.text(n) not in ("pipe", "line", "section", "wall", "tubo", "linea")]
    if not speaks and not parts and (noted or r.denied):
        return Meaning(score=4)
    if not loud and not parts and not readings:
        return (
            Meaning(score=4)
            if not speaks or noted or any(a.unknown for a in r.atoms) or (len(r.atoms) > 1 and not r.has("zone"))
            else None
        )
    if r.has("part", "coupling") and not loud and len(parts) == len(r.where("part", "coupling")):
        return Meaning(score=4)
    if not loud and r.denied and not [n for n in speaks if "zone" in r.atoms[n].means or "surface" in r.atoms[n].means]:
        return Meaning(score=4)
    if (
        r.has("state", "rough")
        and not says
        and all(r.atoms[n].means.get("state") == "rough" or "part" in r.atoms[n].means for n in loud)
    ):
        return Meaning(score=4)
    return None


def tapes(r: "Reader") -> "Meaning | None":
    """`14 off back wall, 6 off fence` after a locate: its tapes."""
    from estimator.fieldnotes.figures import labelled
    from estimator.fieldnotes.understand import Meaning

    if r.has("place", "loc") or r.has("finding") or not any("anchor" in a.means for a in r.atoms):
        return None
    used = set(r.used)
    numbers = labelled(r)
    r.used = used
    if not numbers.tapes or numbers.free or r.context.last_ft is None:
        return None
    said = ", ".join(f"{show(round(ft, 6))} {to}" for ft, to in numbers.tapes)
    old = r.context.before[-1] if r.context.before else ""
    if re.search(r"\bloc\b", old):
        return Meaning(rows=(*r.context.before[:-1], f"{old}, {said}"), instead=True, score=9)
    return Meaning(rows=(f"{shown(r.context.last_ft)} loc, {said}",), score=9)

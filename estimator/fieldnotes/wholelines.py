"""Lines that are something else than things at a reading: corrections, the begin of a camera run, its turning back, remarks, tapes."""

import re
from typing import TYPE_CHECKING

from estimator.fieldnotes.drafts import shown
from estimator.model.lengths import show
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.meaning import Meaning
    from estimator.fieldnotes.understand import Reader


def heading(r: "Reader") -> "Meaning | None":
    """The camera goes in somewhere: `start front c/o to house`, `2 ft riser front co, cam in toward house`."""
    from estimator.fieldnotes.meaning import Meaning

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
        return Meaning(
            asked=Say.of("a new camera run: from where, which way, and how long is the riser?"), choices=(), score=9
        )
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
    from estimator.fieldnotes.meaning import Meaning

    if not r.has("back") or any(r.number(n) for n in range(len(r.atoms))):
        return None
    if any(c in a.means for a in r.atoms for c in ("finding", "surface", "place", "material", "room")):
        return None
    if any("zone" in a.means and "back" not in a.means for a in r.atoms):
        return None
    return Meaning(rows=("back",), score=9)


def remark(r: "Reader") -> "Meaning | None":
    """A line that is a remark whole: nobody is asked. A finding or a danger in it never is."""
    from estimator.fieldnotes.meaning import Meaning

    says = [
        n
        for n, a in enumerate(r.atoms)
        if n not in r.denied and any(c in a.means for c in ("finding", "danger", "utility")) and "remark" not in a.means
    ]
    if any(a.near for a in r.atoms):
        return None
    if r.has("unclear", "camera out") and any(r.number(n) is not None for n in range(len(r.atoms))):
        return None  # it may be where the run ended
    if (
        r.has("doubt", "cannot tell")
        and not r.has("remark", "whole")
        and any((t := r.number(n)) is not None and t.kind in ("num", "ft", "range") for n in range(len(r.atoms)))
    ):
        return None
    whole = any(a.means.get("remark") == "whole" for a in r.atoms)
    seen = any(
        r.has(c) for c in ("stop", "cable end", "end", "unclear", "place") if c != "place" or not r.has("place", "loc")
    ) and any((t := r.number(n)) is not None and t.kind in ("num", "ft", "range") for n in range(len(r.atoms)))
    if whole and not says and not seen and not r.has("sign", "cannot pass"):
        return Meaning(score=5)
    years = [t for n in range(len(r.atoms)) if (t := r.number(n)) is not None]
    if years and not says and all(t.kind == "num" and not t.point and 1850 <= t.value <= 2035 for t in years):
        return Meaning(score=5)  # `house 1962`
    times = sum(a.token is not None and a.token.kind == "time" for a in r.atoms)
    if times > 1 and not says:
        return Meaning(score=5)  # a test with its hours, or a timetable
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
    amounts = [n for n in readings if (t := r.number(n)) is not None and t.kind == "pct"]
    if amounts and len(readings) > len(amounts) and not r.denied:
        return None
    noted = any("remark" in a.means for a in r.atoms)
    bland = ("pipe", "joint") if noted and not r.has("grade") else ("pipe",)
    parts = [n for n in r.where("part") if r.atoms[n].means["part"] not in bland]
    noted = noted and not (readings and any(a.unknown for a in r.atoms))
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


MORE_OR_LESS = frozenset(
    (
        "worse",
        "worst",
        "better",
        "bigger",
        "smaller",
        "more",
        "less",
        "heavier",
        "lighter",
        "deeper",
        "peor",
        "menos",
        "mas",
    )
)


def ditto(r: "Reader") -> "Meaning | None":
    """`ditto 38`, `same at 41`: what the line before says, at another reading."""
    from estimator.fieldnotes.meaning import Meaning

    readings = [t for n in range(len(r.atoms)) if (t := r.number(n)) is not None]
    others = [
        a
        for a in r.atoms
        if not (a.token or "again" in a.means or "plain" in a.means or "at" in a.means or a.text in MORE_OR_LESS)
    ]
    if not r.has("again") or others or len(readings) != 1 or len(r.context.before) != 1:
        return None
    t, (_, _, rest) = readings[0], r.context.before[0].partition(" ")
    if t.kind not in ("num", "ft", "range") or not rest or rest.startswith("="):
        return None
    at = shown(t.value) if t.to is None else f"{shown(min(t.value, t.to))}-{shown(max(t.value, t.to))}"
    if MORE_OR_LESS & set(r.words().split()):
        return Meaning(asked=Say.of("how much is it there?"), choices=(f"{at} {rest}",), score=9)
    return Meaning(rows=(f"{at} {rest}",), score=9)


def tapes(r: "Reader") -> "Meaning | None":
    """`14 off back wall, 6 off fence` after a locate: its tapes."""
    from estimator.fieldnotes.figures import labelled
    from estimator.fieldnotes.meaning import Meaning

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

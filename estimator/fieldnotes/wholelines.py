"""Lines that are something else than things at a reading: corrections, the begin of a camera run, its turning back, tapes."""

import itertools
import re
from dataclasses import replace
from typing import TYPE_CHECKING

from estimator.fieldnotes.atoms import Atom
from estimator.fieldnotes.drafts import shown, where
from estimator.fieldnotes.meaning import Meaning
from estimator.fieldnotes.tidy import tape_to
from estimator.fieldnotes.tokens import tokens
from estimator.model.lengths import show
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader


def begins(r: "Reader") -> Meaning | None:
    """A camera run with what stands at its start behind a comma: `front c/o to house, 4in ci, lawn 30in deep`."""
    commas = [n for n in range(len(r.atoms)) if r.is_mark(n, ",")]
    if not commas or (r.readings()[:1] and r.readings()[0][0] < commas[0]):
        return None
    parts = [r.atoms[a + 1 : b] for a, b in itertools.pairwise((-1, *commas, len(r.atoms)))]
    of_run = [part for part in parts if part is parts[0] or not any(c in a.means for a in part for c in STANDS)]
    more = [part for part in parts if part and not any(part is one for one in of_run)]
    run = heading(r.other([a for part in of_run for a in part])) if more else None
    if run is None or not run.rows:
        return None
    zero = [Atom(t.text, n, n, token=t) for n, t in enumerate(tokens("0"))]
    ground = [[a for a in part if {"zone", "surface"} & a.means.keys()] for part in more]
    over = [only for only, part in zip(ground, more, strict=True) if only and len(only) < len(part)]
    found = [r.other([*zero, *part]).alone() for part in (*over, *more)]
    if any(m.asked or not m.rows for m in found):
        return replace(
            run,
            rows=(),
            asked=Say.of("what stands at the start of this run? Type it with 0 before it."),
            choices=run.rows,
        )
    return replace(run, rows=(*run.rows, *(row for m in found for row in m.rows)))


BEGINS = (
    "start",
    "starting",
    "starting at",
    "going in",
    "in at",
    "start at",
    "started at",
    "starting from",
    "start from",
    "from",
    "push from",
    "empiezo en",
    "empezando en",
)
"""With an access and no more: a run of which neither the way nor the riser is said."""
STANDS = ("material", "surface", "zone", "place")
"""What may stand at the start of a run."""


NEW_RUN = Say.of("a new camera run: from where, which way, and how long is the riser?")


def _other_way(r: "Reader") -> Meaning:
    """`other way, up to house`: a run from the same access against the run before; of `second pass` nobody knows which way."""
    flows, before = r.where("flow"), r.context.flow
    back = "against flow" if before == "with flow" else "with flow"
    way = r.atoms[flows[-1]].means["flow"] if flows else back
    parts = (f"pass {r.context.access} to {'house' if way == 'against flow' else 'street'}", r.context.riser)
    rows = (", ".join(part for part in parts if part),) if r.context.access else ()
    turned = any(OTHER_WAY.search(r.text(n)) for n in r.where("run", "rerun"))
    return (
        Meaning(rows=rows, score=9)
        if rows and flows and turned and way == back
        else Meaning(asked=NEW_RUN, choices=rows, score=9)
    )


OTHER_WAY = re.compile(r"\b(?:other|opposite) (?:way|direction)\b")


def heading(r: "Reader") -> Meaning | None:
    """The camera goes in somewhere: `start front c/o to house`, `2 ft riser front co, cam in toward house`."""
    reruns, runs = r.has("run", "rerun"), r.where("run", "run")
    access = [
        n
        for n, a in enumerate(r.atoms)
        if a.means.get("run") == "access"
        or a.means.get("room") == "toilet"
        or ("room" in a.means and r.has("run", "run"))
    ]
    findings = r.has("finding")
    if reruns and not access and not findings and not (r.has("place", "branch") or r.has("place", "bend")):
        return _other_way(r)
    if findings or r.has("material") or (r.has("cleaned") and not runs) or r.has("place", "loc"):
        return None
    flows = r.where("flow")
    risers = r.has("run", "riser")
    readings = [t for _, t in r.numbers()]
    strong = [
        n
        for n in runs
        if r.text(n)
        not in ("start", "from", "access", "pulled", "going in", "desde", "push", "pushed", "in at", "going from")
    ]
    bare = access and not flows and not readings and r.text(runs[0] if runs else 0) in BEGINS
    if bare and all({"run", "whose", "plain", "room", "place"} & a.means.keys() for a in r.atoms):
        runs_from = f"pass {_access_name(r, access)}"
        return Meaning(
            asked=NEW_RUN,
            choices=(f"{runs_from} to house", f"{runs_from} to street"),
            score=9,
        )
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


def turned(r: "Reader") -> Meaning | None:
    """`back`, or what it saw with it: `on the way out: 27.3 crk`."""
    if len(r.atoms) > 2 and "back" in r.atoms[0].means and r.is_mark(1, ":,-") and r.number(2):
        seen = r.other(r.atoms[2:]).meaning()
        return replace(seen, rows=("back", *seen.rows)) if seen.rows and not (seen.asked or seen.instead) else seen
    if not r.has("back") or r.numbers():
        return None
    if any(c in a.means for a in r.atoms for c in ("finding", "surface", "place", "material", "room")):
        return None
    if any("zone" in a.means and "back" not in a.means for a in r.atoms):
        return None
    return Meaning(rows=("back",), score=9)


MORE_OR_LESS = frozenset((
    "worse", "worst", "better", "bigger", "smaller", "more", "less", "heavier", "lighter", "deeper", "peor",
    "menos", "mas",
))  # fmt: skip


def ditto(r: "Reader") -> Meaning | None:
    """`ditto 38`, `same at 41`: what the line before says, at another reading."""
    numbers = r.numbers()
    others = [
        a
        for a in r.atoms
        if not (a.token or "again" in a.means or "plain" in a.means or "at" in a.means or a.text in MORE_OR_LESS)
    ]
    if not r.has("again") or others or len(numbers) != 1 or len(r.context.before) != 1:
        return None
    (_, t), (_, _, rest) = numbers[0], r.context.before[0].partition(" ")
    if not t.may_be_footage or not rest or rest.startswith("="):
        return None
    at = where(*t.ends)
    if MORE_OR_LESS & set(r.words().split()):
        return Meaning(asked=Say.of("how much is it there?"), choices=(f"{at} {rest}",), score=9)
    return Meaning(rows=(f"{at} {rest}",), score=9)


def tapes(r: "Reader") -> Meaning | None:
    """`14 off back wall, 6 off fence` after a locate: its tapes."""
    from estimator.fieldnotes.figures import labelled

    if r.has("place", "loc") or r.has("finding") or not any("anchor" in a.means for a in r.atoms):
        return None
    used = set(r.used)
    numbers = labelled(r)
    r.used = used
    if not numbers.tapes or numbers.free or r.context.last_ft is None:
        return None
    said = ", ".join(f"{show(round(ft, 6))} {tape_to(to)}" for ft, to in numbers.tapes)
    old = r.context.before[-1] if r.context.before else ""
    if re.search(r"\bloc\b", old):
        return Meaning(rows=(*r.context.before[:-1], f"{old}, {said}"), instead=True, score=9)
    return Meaning(rows=(f"{shown(r.context.last_ft)} loc, {said}",), score=9)

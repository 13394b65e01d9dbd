"""A line and the standard words it was read as, in; the first word or number that the reading leaves unexplained, out.

The one place that holds the promise of reading: it is taken in silence only when every number of the line and every word that
says something of the pipe is used up.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from estimator.fieldnotes.atoms import Atom
from estimator.fieldnotes.corrected_before import among
from estimator.fieldnotes.denials import no_pipe
from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.meaning import Meaning
from estimator.fieldnotes.skeleton import says_nothing
from estimator.fieldnotes.standard import tied
from estimator.fieldnotes.tidy import tidied
from estimator.fieldnotes.told import WATER_TOLD, told_by, told_whole
from estimator.fieldnotes.words import standard_word
from estimator.model.line import FINDING_WORDS, ZONES
from estimator.model.say import Say

if TYPE_CHECKING:
    from estimator.fieldnotes.tokens import Token
    from estimator.fieldnotes.understand import Reader

SAYS = frozenset((
    "finding", "danger", "utility", "live", "place", "cleaned", "side", "rises", "out of water", "fraction", "grade", "reach",
    "coin", "or", "cable end", "flow", "end",
))  # fmt: skip
"""Classes of the lexicon that say what is in the pipe and how much; what only says where or of what may be left over as a remark."""
GRAVE = frozenset(("soil seen", "void", "washing", "cannot pass", "no flow", "only in use"))
"""Signs that change what a finding means for the repair."""
OPEN = frozenset(
    ("plug", "rebar", "concrete inside", "shadow", "broken", "plastic", "ruined", "unknown pipe", "gas smell")
)
"""Words that leave open what is there, beside any other thing."""
OVER = frozenset(("zone", "material", "room", "reach"))
"""What only says where, in a line of one place."""
HOW_MUCH = frozenset(
    ("height", "size", "deep", "depth", "high", "long", "wide", "much", "big", "far", "amount", "length")
)
"""What may be asked with a mark behind it: `a lip, how high?`"""
UNDONE = frozenset(("cant", "cannot", "couldnt", "wont", "wouldnt"))
"""What is not so, where no phrase says what."""
UNITS = frozenset(("inch", "inches", "percent", "degrees", "pulgada", "pulgadas", "grados"))
"""A unit whose number was not read."""
LIES_THERE = re.compile(
    rf"\b(?:{'|'.join((*FINDING_WORDS, *ZONES, 'pipe', 'size', 'end', 'stop', 'utility', 'cleaned'))})\b"
)
BIG_OR_SMALL = re.compile(r"\b(?:hole|crack|gap|blocked|tree)\b")
GRADED = re.compile(rf"\b(?:{'|'.join(w for w in FINDING_WORDS if not BIG_OR_SMALL.fullmatch(w))})\b")
STEPPED = re.compile(r"\boffset\b.*\b(?:up|down)\b")
"""Which side of a joint stands high is told with it."""
PLASTICS = re.compile("PVC|ABS|HDPE")
NEAR = 0.02


@dataclass(slots=True)
class Measures:
    """Every number that the rows hold, by what it measures."""

    feet: list[float] = field(default_factory=list)
    inches: list[float] = field(default_factory=list)
    others: list[float] = field(default_factory=list)  # percents, hours, degrees, counts


def measures(rows: Iterable[str]) -> Measures:
    out = Measures()
    for text in rows:
        said = tied(tidied(text), None, frozenset())
        if said is None:
            continue
        low, high = said.where.from_ft, said.where.to_ft
        out.feet += [low] if high is None else [low, high, high - low]
        for thing in said.things:
            for slot, value in thing.values.items():
                if slot == "size":
                    out.inches.append(value)
                elif slot in ("depth", "every"):
                    out.feet.append(value[0] if isinstance(value, tuple) else value)
                elif slot in ("lengths", "ties"):
                    out.feet += [ft for pair in value for ft in pair if isinstance(ft, float)]
                elif slot in ("percent", "clock"):
                    out.others += map(float, value)
                elif slot in ("degrees", "count"):
                    out.others.append(float(value))
                elif slot in ("flag", "photo", "name", "choice"):
                    out.others += [float(w) for w in str(value).strip("()").replace(",", " ").split() if w.isdigit()]
    out.inches += [ft * 12 for ft in out.feet[:]]
    return out


def _among(value: float, known: Iterable[float]) -> bool:
    return any(abs(value - k) <= NEAR for k in known)


def _explained(t: "Token", m: Measures) -> bool:
    """Whether this number of the line stands in the rows."""
    if t.kind == "in":
        return _among(t.value, m.inches)
    if t.kind == "ft":
        return _among(t.value, m.feet)
    if t.kind in ("pct", "clock", "deg"):
        return _among(t.value, m.others) and (t.to is None or _among(t.to, m.others))
    if t.kind == "frac":
        return (
            _among(t.value, m.inches)
            or _among(round(t.value * 100), m.others)
            or (t.value < 1 and _among(90 * 4 * t.value, m.others))
        )
    if t.kind == "cross":
        return _among(t.value, m.inches) or _among(t.to or 0.0, m.inches)
    every = (*m.feet, *m.inches, *m.others)
    if t.kind == "range" and t.to is not None:
        return all(_among(v, every) for v in (t.value, t.to)) or _among(t.value + t.to / 12, every)
    return _among(t.value, every)


def unexplained(r: "Reader", rows: Iterable[str], places: int) -> Atom | None:
    """The first atom that says something and is in no row; of several `places` each must be of the same things."""
    found = measures(rows)
    told = " ".join(rows)
    if no_pipe(r.atoms, r.denied):
        return r.atoms[min(r.denied)]
    for n, a in enumerate(r.atoms):
        if n in r.denied or n in r.aside:
            continue
        if a.token is not None:
            if a.token.number and not _explained(a.token, found):
                return a
        elif _left_over(r, n, told, places):
            return a
    return None


STRUCTURE = frozenset((
    "at", "till", "starts", "ends", "change", "was", "still", "back", "or", "under", "from surface", "above", "below", "away",
    "again", "after cleaning", "flagged", "clock", "coin", "shape", "past", "whose", "over", "anchor", "name", "correct", "run", "doubt",
    "through", "reached",
))  # fmt: skip
"""Classes of words that only join what the others say: once used they need no telling."""


def left_over(r: "Reader", rows: Sequence[str]) -> str:
    """Return the words, and the numbers set aside, that the rows do not tell: they are kept as a remark beside them."""
    told, found = " ".join(rows).lower(), measures(rows)
    found.others.append(float(len(rows)))
    return " ".join(a.text.strip() for n, a in enumerate(r.atoms) if _apart(r, n, told, found))


def _apart(r: "Reader", n: int, told: str, found: Measures) -> bool:
    """Whether a word or a number stands beside the reading: small words and those that join others do not."""
    a = r.atoms[n]
    if a.token is not None:
        other = (a.token.number and n in r.aside) or a.token.kind in ("time", "phone")
        return other and not (_explained(a.token, found) or a.text.strip() in told)
    if n in r.denied or (r.denied and "no" in a.means):
        return True
    if (
        "plain" in a.means
        or (n in r.used and a.means and not a.means.keys() - STRUCTURE)
        or re.search(rf"\b{re.escape(a.text)}\b", told)
    ):
        return False
    if a.means.get("reach", told) not in told:
        return True  # `end ejector pit, force main`
    return not told_whole(a, told)


def accounted(r: "Reader", m: Meaning) -> Meaning:
    """Return a reading of the line as a whole (a correction, tapes, the same as before) with its words accounted for: what nobody
    explains or may be a danger is asked about, the rest stands apart. Its numbers may be those that no longer hold."""
    told = " ".join(m.rows).lower()
    if m.asked or not m.rows or m.rows[0].startswith(("pass ", "back")):
        return m
    words = [(n, a) for n, a in enumerate(r.atoms) if a.token is None and n not in r.denied]
    for _n, a in words:
        strange = a.unknown and not (lexicon().known(a.text) or says_nothing(a.text))
        danger = {"danger", "utility", "place"} & a.means.keys() and not told_by(a, told)
        if (strange or danger or a.near) and a.text not in told:
            return replace(m, rows=(), asked=Say.of("“{typed}”: what is there?", typed=a.text), choices=m.rows)
    none = Measures()
    left = " ".join(a.text for n, a in words if _apart(r, n, told, none) and not {"correct", "anchor"} & a.means.keys())
    return replace(m, left="; ".join(part for part in (m.left, left) if part))


def _left_over(r: "Reader", n: int, told: str, places: int) -> bool:
    """Whether a word says something and the rows do not."""
    a = r.atoms[n]
    strange = a.unknown and not (lexicon().known(a.text) or says_nothing(a.text))
    if a.text in UNDONE or strange:
        return True
    if (r.is_mark(n + 1, "?") and (a.unknown or "remark" in a.means or a.text in HOW_MUCH)) or a.text in UNITS:
        return True
    if "finding" in a.means and n not in r.amount_words and not among((standard_word(a.means["finding"]),), told):
        return True
    if "no" in a.means and not {"finding", "sign", "live", "correct"} & a.means.keys() and not r.denied:
        last = n == len(r.atoms) - 1 and a.text in ("no", "not")
        return n == 0 or last or r.number(n + 1) is not None  # it denies nothing
    if {"water", "agua"} & set(a.text.split()) and r.has("fraction") and not WATER_TOLD.search(told):
        return True  # `water half full to 46 where it hits mud`
    if n and "or" in r.atoms[n - 1].means and "plain" not in a.means and not told_by(a, told):
        return True  # `clay or concrete`
    if places > 1 and any(c in a.means and a.means[c] not in told for c in OVER):
        return True
    stretch = not (r.has("finding") or r.single_place())
    if n in r.used and stretch and any(_one_of_two(r, a, cls, told) for cls in ("zone", "material")):
        return True
    if a.means.get("unclear") == "plastic":
        return not PLASTICS.search(told)
    return "plain" not in a.means and not told_by(a, told) and _says(r, n, told)


def _one_of_two(r: "Reader", a: Atom, cls: str, told: str) -> bool:
    """`sidewalk 52 to 56 then yard`: one of two grounds or pipes that the rows leave out."""
    said = a.means.get(cls, "edge")
    return said not in told and said != "edge" and len(r.where(cls)) > 1


def _says(r: "Reader", n: int, told: str) -> bool:
    means = r.atoms[n].means
    if "place" in means and (means["place"] in ("depth", "loc", "every") or LIES_THERE.search(told)):
        return False  # without a number they say nothing; beside a finding a place says where
    if means.get("part") in ("top", "bottom"):
        corner = any("side" in r.atoms[k].means for k in (n - 1, n + 1) if 0 <= k < len(r.atoms))
        return r.has("finding") and not (corner or STEPPED.search(told))  # `lower rt` is told as right
    if {"reach", "out of water", "flow"} & means.keys() and r.has("place", "branch"):
        return False  # `tie in, old septic line`, `ran the tub and it came out the branch`
    if "live" in means and not r.has("place", "branch"):
        return means["live"] == "dead" or r.text(n) in ("live", "active")  # not `rat ran by`, `panza con agua`
    if {"grade", "side"} & set(means) and BIG_OR_SMALL.search(told) and not GRADED.search(told):
        return "side" in means and "tree" not in told  # `small crack`, `big oak left of the line`
    if "material" in means and r.has("place") and not (r.has("finding") or r.has("place", "pothole")):
        return not (r.has("change") and "pipe" in told)
    last = r.where("material")[-1:] == [n]
    after = last and bool(n) and "change" in r.atoms[n - 1].means  # `then clay`
    if "stop" in means and "ends" not in means:
        return not re.search(r"\b(?:stop|cannot pass|end|ends)\b", told)  # `mud packed stop`
    if means.get("unclear") == "broken" and "hole" in told:
        return False  # `chunk broke out, leaves a 2in hole`
    return after or bool(SAYS & set(means)) or means.get("sign") in GRAVE or means.get("unclear") in OPEN

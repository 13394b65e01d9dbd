"""A line in; whether it is a remark whole, which nobody is asked about, out."""

import itertools
from collections.abc import Sequence
from typing import TYPE_CHECKING

from estimator.fieldnotes.atoms import Atom
from estimator.fieldnotes.denials import no_pipe
from estimator.fieldnotes.lexicon import lexicon
from estimator.fieldnotes.meaning import Meaning
from estimator.fieldnotes.skeleton import says_nothing

if TYPE_CHECKING:
    from estimator.fieldnotes.understand import Reader


MUTE = frozenset((
    "plain", "remark", "at", "no", "past", "later", "or", "whose", "again", "still", "correct", "doubt", "after cleaning", "till",
))  # fmt: skip
"""Classes of words that say nothing of what lies in the pipe."""
QUIET = ("surface", "zone", "room", "over", "side", "back")
LOUD = (
    "finding", "place", "material", "utility", "unclear", "danger", "state", "reach", "sign", "correct", "stop", "end", "cable end",
    "rises", "out of water", "cleaned", "repair", "run", "live",
)  # fmt: skip
"""What lies in the pipe or happens to it; what is QUIET only says where."""
FROM = ("from", "desde")
"""Where a camera run begins, or a stretch: alone it says neither."""
YEARS = (1850, 2035)
"""Between these a bare number alone is the year of a house."""


def remark(r: "Reader") -> Meaning | None:
    """A line that is a remark whole: nobody is asked. A finding or a danger in it never is."""
    reads = bool(r.readings())
    if any(a.near for a in r.atoms) or (r.numbers() and r.has("unclear", "camera out")):
        return None  # a word to be asked about; or it may be where the run ended
    if reads and r.has("doubt", "cannot tell") and not r.has("remark", "whole"):
        return None
    if no_pipe(r.atoms, r.denied) or (
        r.has("place", "loc") and any(t.kind in ("in", "ft") for _, t in r.numbers()[1:])
    ):
        return None  # `33 sonde 38"`
    if r.has("part", "joint") and any(r.text(n) == "right" for n in r.denied):
        return None  # `jt not right`
    says = bool(_speaking(r, ("finding", "danger", "utility")))
    return _by_the_whole(r, says, reads) or _by_its_words(r, says)


def _by_the_whole(r: "Reader", says: bool, reads: bool) -> Meaning | None:
    """A phrase that is a remark, `house 1962`, or a test with its hours."""
    if says and (r.numbers() or r.has("danger") or r.has("utility")):
        return None
    somewhere = any(r.has(c) for c in ("stop", "cable end", "end", "unclear", "rises", "out of water"))
    somewhere = somewhere or (r.has("place") and not r.has("place", "loc"))
    whole = any(a.means.get("remark") == "whole" for a in r.atoms)
    if whole and not (somewhere and reads) and not r.has("sign", "cannot pass"):
        return Meaning(score=5)
    numbers = [t for _, t in r.numbers()]
    years = all(t.kind == "num" and not t.point and YEARS[0] <= t.value <= YEARS[1] for t in numbers)
    times = sum(a.token is not None and a.token.kind == "time" for a in r.atoms)
    return Meaning(score=5) if (numbers and years) or times > 1 else None


def _speaking(r: "Reader", classes: tuple[str, ...]) -> list[int]:
    """The atoms of these classes that are neither denied nor a remark."""
    return [
        n
        for n, a in enumerate(r.atoms)
        if n not in r.denied and any(c in a.means for c in classes) and "remark" not in a.means and a.text not in FROM
    ]


def _by_its_words(r: "Reader", says: bool) -> Meaning | None:
    """Nothing in it lies in the pipe, or what does is denied or only rough; beside a footage each word must be one of those."""
    mute = [n in r.denied or bool(a.token) or _mute(a) for n, a in enumerate(r.atoms)]
    to_do = bool(r.denied) and all({"cleaned", "repair"} & r.atoms[n].means.keys() for n in r.denied)
    noted = (bool(r.denied) and not (to_do and len(r.numbers()) > 1)) or any(
        "remark" in a.means or a.means.get("state") == "rough" for a in r.atoms
    )
    if r.numbers():
        amounts = any(t.kind in ("pct", "in", "frac") for _, t in r.numbers()) and r.readings() and not r.denied
        coupled = r.has("part", "coupling") and not r.has("side")
        explained = not any(a.unknown for a in r.atoms)  # beside a reading a word nobody explained may lie in the pipe
        return (
            Meaning(score=4)
            if all(mute)
            and explained
            and (noted or coupled)
            and not (amounts or r.has("grade") or r.has("place", "every"))
            else None
        )
    speaks = _speaking(r, (*LOUD, *QUIET))
    if any(c in r.atoms[n].means for n in speaks for c in LOUD) or any(
        "part" in r.atoms[n].means and not mute[n] for n in range(len(mute))
    ):
        return Meaning(score=4) if not says and r.has("state", "rough") and all(mute) else None
    still = not speaks or noted or any(a.unknown for a in r.atoms) or (len(r.atoms) > 1 and not r.has("zone"))
    return Meaning(score=4) if still else None


def _mute(a: Atom) -> bool:
    """A word that says nothing of what lies in the pipe."""
    quiet = (
        MUTE & a.means.keys() or a.means.get("part") in ("pipe", "joint", "coupling") or a.means.get("state") == "rough"
    )
    return bool(quiet) or (a.unknown and (lexicon().known(a.text) or says_nothing(a.text)) and not a.near)


SAYS = frozenset((
    "finding", "danger", "utility", "live", "place", "side", "rises", "out of water", "fraction", "grade", "reach", "coin", "cable end",
    "end", "stop", "unclear", "sign", "material", "correct", "no", "past", "back", "again",
    "run", "flow",
))  # fmt: skip
"""Classes of the lexicon that say something of the drain; a part without any may be a remark."""


def parted(every: Sequence[Atom]) -> tuple[list[Atom], list[str]]:
    """Return the line without its remarks, and these: `ditto 38, took photo`, `31 roots lt, customer aware`, `33 4x6, will jet`."""
    parts = [list(part) for _, part in itertools.groupby(every, key=_Counter())]
    kept = [part for part in parts if not _is_remark(part)]
    if len(kept) == len(parts) or not any(a.token is not None and a.token.number for part in kept for a in part):
        return list(every), []
    said = list(itertools.chain.from_iterable(kept))
    while said and _parts(said[-1]):
        said.pop()
    return said, [" ".join(a.text for a in part if not _parts(a)) for part in parts if _is_remark(part)]


class _Counter:
    """How many commas stand before an atom; a comma belongs to the part behind it."""

    def __init__(self) -> None:
        self.commas = 0

    def __call__(self, atom: Atom) -> int:
        self.commas += _parts(atom)
        return self.commas


def _parts(a: Atom) -> bool:
    return a.token is not None and a.token.kind == "mark" and a.token.text in ",;"


def _is_remark(part: Sequence[Atom]) -> bool:
    words = [a for a in part if not _parts(a)]
    if not words or any(a.token or a.near or SAYS & a.means.keys() for a in words):
        return False
    to_do = "later" in words[0].means and any({"cleaned", "repair"} & a.means.keys() for a in words)
    return to_do or any("remark" in a.means for a in words)

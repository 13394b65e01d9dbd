"""The atoms of a line in; those that say something, and the parts between commas that are only remarks, out."""

import itertools
from collections.abc import Sequence

from estimator.fieldnotes.atoms import Atom

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

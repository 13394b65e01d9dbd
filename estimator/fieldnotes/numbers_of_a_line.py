"""The numbers of a line by what they measure, and the ways in which open ones may be taken."""

import itertools
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from estimator.fieldnotes.tokens import Token
from estimator.model.frozen import Frozen

if TYPE_CHECKING:
    from estimator.fieldnotes.drafts import Draft
    from estimator.fieldnotes.understand import Reader


SIZES_IN = (1.25, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0)
"""Drain sizes sold for houses, in (common practice)."""


DEGREES = {90.0, 45.0, 22.5, 22.0, 30.0, 60.0, 11.25, 11.0, 88.0, 72.0}
CLOCKED = frozenset(("hole", "crack", "gap", "roots", "collapse", "leak", "intruding", "channel"))
"""What is told by the hours of the clock."""


@dataclass(slots=True)
class Numbers:
    """Labelled numbers, by what they are; `free` are atoms whose number is still open."""

    inches: list[tuple[int, float]] = field(default_factory=list)
    percents: list[tuple[int, tuple[float, float]]] = field(default_factory=list)
    bare_fractions: list[tuple[int, float]] = field(default_factory=list)
    clocks: list[tuple[int, tuple[int, int]]] = field(default_factory=list)
    degrees: list[tuple[int, float]] = field(default_factory=list)
    depth: tuple[int, float] | None = None
    tapes: list[tuple[float, str]] = field(default_factory=list)
    lengths: list[tuple[str, float]] = field(default_factory=list)
    long_ft: float | None = None
    every_ft: float | None = None
    count: tuple[int, int] | None = None  # its atom, how many
    riser_ft: float | None = None
    flag: str = ""
    photo: str = ""
    video: str = ""
    sizes: list[tuple[int, float, float]] = field(default_factory=list)  # 4x6
    free: list[int] = field(default_factory=list)
    tool: bool = False
    done: set[int] = field(default_factory=set)  # atoms that are explained

    def take(self, r: "Reader", *atoms: int) -> None:
        self.done.update(atoms)
        r.used.update(atoms)


def _ft(t: Token, bare_in: bool = False) -> float:
    if t.kind == "in" or (bare_in and t.kind == "num"):
        return t.value / 12
    return t.value


class Way(Frozen):
    """`roles`: atom -> what its number is."""

    score: float
    at: float | None
    to: float | None = None
    more: tuple[tuple[float, float | None], ...] = ()
    about: bool = False
    roles: tuple[tuple[int, str], ...] = ()

    @property
    def meaning(self) -> tuple[object, ...]:
        return (self.at, self.to, self.more, tuple(sorted(role for _, role in self.roles)))


def several(r: "Reader", free: list[int], drafts: "list[Draft]") -> Way | None:
    """`roots @28.5 33 36.5`: one finding at several places."""
    kinds = {d.word for d in drafts}
    if len(drafts) > 1 and not (all(d.at < free[0] for d in drafts) or all(d.at > free[-1] for d in drafts)):
        return None  # a thing between the readings
    things = [n for n in r.where("finding") if n not in r.amount_words and n not in r.aside]
    if len(things) > 1 and min(things) < free[-1] and max(things) > free[0]:
        return None  # `grease 2in 34-36.5 then grease 44-52, 20 percent`
    tokens = [r.atoms[n].token for n in free]
    same = len({t.kind for t in tokens if t is not None}) == 1  # all with a foot mark, or none
    plain = [t for t in tokens if t is not None and (t.kind == "num" or (t.kind == "ft" and (same or not t.plain)))]
    spans = [(t.value, t.to) for t in tokens if t is not None and t.kind == "range" and t.to and t.value < t.to]
    if len(spans) == len(free) > 1 and spans == sorted(spans) and not kinds & {"hole", "branch", "bend"}:
        return Way(7.0, *spans[0], tuple(spans[1:]))
    values = [t.value for t in plain]
    if len(plain) < 2 or len(plain) != len(free) or values != sorted(set(values)) or not kinds:
        return None
    joined = all(
        all(
            r.is_mark(k, ",&+")
            or (
                "again" in r.atoms[k].means
                or r.text(k) in ("and", "y", "also", "then", "at", "plus", "one", "more", "another", "one more")
            )
            for k in range(a + 1, b)
        )
        for a, b in itertools.pairwise(free)
    )
    linked = any(b - a > 1 for a, b in itertools.pairwise(free))
    if not joined or not (linked or len(plain) > 2) or values[0] < 1:
        return None
    if kinds & CLOCKED and values[1] <= 12 < values[-1] and all(v.is_integer() for v in values[:-1]):
        return None  # `cracks at 3 and 9, 27.5`
    if kinds & {"branch", "bend"} and any(v in SIZES_IN or v in DEGREES for v in values):
        return None
    return Way(6.0, values[0], None, tuple((v, None) for v in values[1:]))

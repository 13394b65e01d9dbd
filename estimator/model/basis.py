"""What a price rests on: each fact with how it is known, and how far it could move the price; firm or not."""

from math import hypot
from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.say import Say
from estimator.model.stretch import Stretch

How = Literal["seen", "measured", "told", "assumed"]
Subject = Literal["pipe", "run-out", "depth", "levels", "join", "soil", "slab", "access point"]
HOW: dict[str, Say] = {
    "seen": Say.of("seen"),
    "measured": Say.of("measured"),
    "told": Say.of("told"),
    "assumed": Say.of("assumed"),
}
"""How a fact is known, in a word."""


class Fact(Frozen, kw_only=True):
    """One thing a price rests on. `falls` and `rises` say by how many dollars the price would move, nothing rounded, at the
    two ends of what is not known of it; `settled_by` is the kind of visit that would find it out, "" where none is needed.
    """

    subject: Subject
    line: str
    stretch: Stretch
    how: How
    words: Say
    falls: float = 0.0
    rises: float = 0.0
    settled_by: str = ""


class Basis(Frozen, kw_only=True):
    """All facts of one price and that price, dollars, nothing rounded. Errors in different facts are independent of one
    another, so that what they do together is the root of the sum of their squares.

    >>> depth, soil = (Fact(subject="depth", line="main", stretch=Stretch(0, 9), how="measured", words=Say.of("x"), rises=r) for r in (300, 400))
    >>> Basis(price=10_000, facts=(depth, soil)).rises_percent
    5.0
    """

    price: float = 0.0
    facts: tuple[Fact, ...] = ()

    @property
    def falls(self) -> float:
        return hypot(*(f.falls for f in self.facts))

    @property
    def rises(self) -> float:
        """By how much the price would have to go up; what it could come down by surprises nobody who signed it."""
        return hypot(*(f.rises for f in self.facts))

    @property
    def rises_percent(self) -> float:
        return 100 * self.rises / self.price if self.price else 0.0

    @property
    def moves_most(self) -> Fact | None:
        """The fact that could raise the price most; None where none could."""
        return max((f for f in self.facts if f.rises > 0), key=lambda f: f.rises, default=None)

"""One published figure with its source, and ours beside it."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

Basis = Literal["read", "read second-hand", "memory", "computed", "common practice"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """`ours` is worked out when asked. `within` is how far the two may lie apart (rounding of the published figure)."""

    id: str
    what: str
    published: float
    unit: str
    source: str
    basis: Basis
    ours: Callable[[], float]
    within: float = 1e-9
    note: str = ""

    @property
    def difference(self) -> float:
        return self.ours() - self.published

"""The numbers of a line by what they measure."""

from dataclasses import dataclass, field

from estimator.fieldnotes.tokens import Token

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


def _ft(t: Token, bare_in: bool = False) -> float:
    if t.kind == "in" or (bare_in and t.kind == "num"):
        return t.value / 12
    return t.value

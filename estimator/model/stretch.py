"""A stretch of one line, between two stations in feet."""

from collections.abc import Iterable

from estimator.model.frozen import Frozen


class Stretch(Frozen, order=True):
    """From one station to another, ft; a point has both alike. Errors: ValueError when the ends are swapped."""

    from_ft: float
    to_ft: float

    def __post_init__(self) -> None:
        if self.from_ft > self.to_ft:
            raise ValueError(f"a stretch runs upwards: {self.from_ft} to {self.to_ft}")

    @classmethod
    def between(cls, a: float, b: float) -> "Stretch":
        return cls(min(a, b), max(a, b))

    @property
    def length_ft(self) -> float:
        return self.to_ft - self.from_ft

    @property
    def middle_ft(self) -> float:
        return (self.from_ft + self.to_ft) / 2

    def holds(self, station_ft: float) -> bool:
        return self.from_ft <= station_ft <= self.to_ft

    def covers(self, other: "Stretch") -> bool:
        return self.from_ft <= other.from_ft and other.to_ft <= self.to_ft

    def touches(self, other: "Stretch") -> bool:
        """They share at least a point."""
        return self.from_ft <= other.to_ft and other.from_ft <= self.to_ft

    def overlaps(self, other: "Stretch") -> bool:
        """They share a length, not only an end."""
        return self.from_ft < other.to_ft and other.from_ft < self.to_ft

    def gap_ft(self, other: "Stretch") -> float:
        """Clear length between the two; 0 where they touch."""
        return max(0.0, self.from_ft - other.to_ft, other.from_ft - self.to_ft)

    def padded(self, before_ft: float, after_ft: float) -> "Stretch":
        return Stretch(self.from_ft - before_ft, self.to_ft + after_ft)

    def union(self, other: "Stretch") -> "Stretch":
        """The least stretch that covers both, the gap included."""
        return Stretch(min(self.from_ft, other.from_ft), max(self.to_ft, other.to_ft))

    def common(self, other: "Stretch") -> "Stretch | None":
        """What both cover, or None."""
        low, high = max(self.from_ft, other.from_ft), min(self.to_ft, other.to_ft)
        return Stretch(low, high) if low <= high else None


def hull(stretches: Iterable[Stretch]) -> Stretch:
    """Return the least stretch that covers all, the gaps included. Errors: ValueError for none.

    >>> hull([Stretch(5, 9), Stretch(0, 2)])
    Stretch(from_ft=0, to_ft=9)
    """
    every = tuple(stretches)
    return Stretch(min(s.from_ft for s in every), max(s.to_ft for s in every))


def joined(stretches: Iterable[Stretch]) -> tuple[Stretch, ...]:
    """The same length covered by as few stretches as possible, in order.

    >>> joined([Stretch(5, 9), Stretch(0, 2), Stretch(2, 3)])
    (Stretch(from_ft=0, to_ft=3), Stretch(from_ft=5, to_ft=9))
    """
    out: list[Stretch] = []
    for s in sorted(stretches):
        if out and s.from_ft <= out[-1].to_ft:
            out[-1] = out[-1].union(s)
        else:
            out.append(s)
    return tuple(out)


def missing(whole: Stretch, parts: Iterable[Stretch]) -> tuple[Stretch, ...]:
    """What of the whole no part covers (stretches longer than a point).

    >>> missing(Stretch(0, 10), [Stretch(2, 4)])
    (Stretch(from_ft=0, to_ft=2), Stretch(from_ft=4, to_ft=10))
    """
    out: list[Stretch] = []
    start = whole.from_ft
    for part in joined(p for p in parts if p.touches(whole)):
        if part.from_ft > start:
            out.append(Stretch(start, part.from_ft))
        start = max(start, part.to_ft)
    if start < whole.to_ft:
        out.append(Stretch(start, whole.to_ft))
    return tuple(out)

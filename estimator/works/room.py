"""A hole along the line in; the room beside it out: free width, the nearest edge, the nearest footing."""

from estimator.model.frozen import Frozen
from estimator.model.line import Mark
from estimator.model.stretch import Stretch
from estimator.works.case import Case


class Footing(Frozen):
    """A footing beside the dig: how far its face is from the pipe, how deep its lower edge lies, ft."""

    away_ft: float
    deep_ft: float


class Room(Frozen):
    """`clear_ft`: free width over the pipe. `side_ft`: from the pipe to the nearest edge. None where nobody said."""

    clear_ft: float | None
    side_ft: float | None
    footings: tuple[Footing, ...]

    def fits(self, top_width_ft: float) -> bool:
        """The top of the dig stays inside the free width and short of the nearest edge and footing.

        >>> Room(14.0, 7.0, ()).fits(14.0), Room(13.9, None, ()).fits(14.0), Room(None, None, ()).fits(99.0)
        (True, False, True)
        """
        half = top_width_ft / 2
        sides = [f.away_ft for f in self.footings] + ([] if self.side_ft is None else [self.side_ft])
        return (self.clear_ft is None or top_width_ft <= self.clear_ft) and all(half <= side for side in sides)

    @property
    def known(self) -> bool:
        return self.clear_ft is not None or self.side_ft is not None or bool(self.footings)


def room_beside(case: Case, hole: Stretch) -> Room:
    """From the notes' `clear`, `edge` and `footing` marks along the hole; the tightest counts."""
    clear = [w for m in _marks(case, hole, "clear") if (w := m.length() or m.length("wide")) is not None]
    sides = [w for m in _marks(case, hole, "edge") if (w := m.length("away") or m.length()) is not None]
    footings = tuple(
        Footing(m.length("away") or m.length() or 0.0, m.length("deep") or m.depth_ft or 0.0)
        for m in _marks(case, hole, "footing")
    )
    return Room(min(clear, default=None), min(sides, default=None), footings)


def _marks(case: Case, hole: Stretch, word: str) -> list[Mark]:
    """Marks whose place touches the hole; one that holds on counts from its place to the next of its kind."""
    marks = case.profile.marks(word)
    return [m for m in marks if m.stretch.touches(hole) or (m.holds and m.stretch.from_ft <= hole.to_ft)]

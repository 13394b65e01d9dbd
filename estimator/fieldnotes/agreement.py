"""A line in; which of its passes saw the same things, and where its tapes and the reel differ, out.

The pipe between two places is never shorter than the difference of their distances from one and the same wall. Where the
tapes differ by more than the reel says, the reel reads short. The other way round says nothing: a pipe need not run
square to the wall. Geometry.
"""

from collections.abc import Iterable
from itertools import combinations

from estimator.model.frozen import Frozen
from estimator.model.line import Line, Mark, Tie


def agreement(line: Line) -> tuple[tuple[int, ...], float] | None:
    """Which passes saw something an earlier one saw, and by how much at most they differ, ft; None when none did.

    Each difference is taken after a slipped zero was put right. The earlier passes they overlap are counted with them.
    """
    tied = [p for p in line.passes if p.ties]
    if not tied:
        return None
    apart = max(abs(more + p.shift_ft) for p in tied for _, more in p.ties)
    numbers = {p.number for p in tied}
    numbers |= {
        q.number
        for p in tied
        for q in line.passes
        if q.seen and p.seen and q.number < p.number and q.seen.overlaps(p.seen)
    }
    return tuple(sorted(numbers)), apart


class TapePair(Frozen):
    """Two places with a tape to the same thing; ft between them at least by the tapes, and along the pipe by the reel."""

    one: Mark
    other: Mark
    to: str
    tape_ft: float
    reel_ft: float

    @property
    def short_ft(self) -> float:
        """How much the reel reads short, at least; below 0 where nothing is wrong."""
        return self.tape_ft - self.reel_ft


def tape_pairs(line: Line) -> tuple[TapePair, ...]:
    """Every two places of the line with a tape to one thing, whatever they say.

    >>> from estimator.model.stretch import Stretch
    >>> def loc(at, ft): return Mark(word="loc", stretch=Stretch(at, at), ties=(Tie(ft, "front wall"),))
    >>> line = Line(name="main", size_in=4, pipe="clay", marks=(loc(14.5, 14.17), loc(28.0, 28.08)))
    >>> [round(pair.short_ft, 2) for pair in tape_pairs(line)]
    [0.41]
    """
    taped = [(mark, tie) for mark in line.marks for tie in mark.ties]
    return tuple(
        TapePair(a, b, one.to, abs(one.length_ft - other.length_ft), a.stretch.gap_ft(b.stretch))
        for (a, one), (b, other) in combinations(taped, 2)
        if _same(one, other) and a is not b
    )


def worst_pairs(line: Line) -> Iterable[TapePair]:
    """Of each wall the pair that shows the reel to read short by most, where it does."""
    pairs = sorted(tape_pairs(line), key=lambda pair: -pair.short_ft)
    walls: set[str] = set()
    for pair in pairs:
        if pair.short_ft > 0 and _plain(pair.to) not in walls:
            walls.add(_plain(pair.to))
            yield pair


def _same(one: Tie, other: Tie) -> bool:
    return _plain(one.to) == _plain(other.to)


def _plain(to: str) -> str:
    return to.lower().removeprefix("the ").strip()

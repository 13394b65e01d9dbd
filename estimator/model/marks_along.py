"""A line's marks in; the mark that holds at a station out: a word holds over its stretch, or from its place to the next of its kind."""

from bisect import bisect_left
from functools import cached_property

from estimator.model.line import Line, Mark
from estimator.model.stretch import Stretch, joined

Words = tuple[str, ...]


class Held:
    """The marks of one line by their words, each question answered once."""

    def __init__(self, line: Line) -> None:
        self.line = line
        self._by_word: dict[str, list[Mark]] = {}
        self._marks: dict[Words, tuple[Mark, ...]] = {}
        self._apart: dict[Words, tuple[list[Mark], list[Mark]]] = {}
        self._edges: dict[Words, list[float]] = {}
        self._known: dict[tuple[Words, int], Mark | None] = {}
        self._ways = {p.number: p.sign for p in line.passes}
        for mark in line.marks:
            self._by_word.setdefault(mark.word, []).append(mark)

    @cached_property
    def filmed(self) -> tuple[Stretch, ...]:
        return joined(p.seen for p in self.line.passes if p.seen is not None)

    def marks(self, words: Words) -> tuple[Mark, ...]:
        """All marks of these words, in order of station."""
        if words not in self._marks:
            found = [m for word in words for m in self._by_word.get(word, ())]
            self._marks[words] = tuple(sorted(found, key=lambda m: (m.stretch.from_ft, m.stretch.to_ft)))
        return self._marks[words]

    def at(self, words: Words, at_ft: float) -> Mark | None:
        """A stretch that covers the station wins, the shortest first.

        Else the nearest word given at one place: it holds from there the way the camera went until the next of its kind.
        """
        piece = words, self._piece(words, at_ft)
        if piece not in self._known:
            self._known[piece] = self._found(words, at_ft)
        return self._known[piece]

    def _piece(self, words: Words, at_ft: float) -> int:
        """Which piece of the line it lies on: odd at an edge of a mark, even between two; on one piece the same mark holds."""
        if words not in self._edges:
            self._edges[words] = sorted({at for m in self.marks(words) for at in (m.stretch.from_ft, m.stretch.to_ft)})
        edges = self._edges[words]
        after = bisect_left(edges, at_ft)
        return 2 * after + (after < len(edges) and edges[after] == at_ft)

    def _found(self, words: Words, at_ft: float) -> Mark | None:
        stretches, points = self._stretches_and_points(words)
        over = [m for m in stretches if m.stretch.holds(at_ft)]
        if over:
            return min(over, key=lambda m: m.stretch.length_ft)
        before = [m for m in points if m.stretch.from_ft <= at_ft]
        after = [m for m in points if m.stretch.from_ft >= at_ft]
        last = max((m.stretch.from_ft for m in before), default=None)
        first = min((m.stretch.from_ft for m in after), default=None)
        behind = [m for m in before if m.stretch.from_ft == last and self._way(m) == 1]
        ahead = [m for m in after if m.stretch.from_ft == first and self._way(m) == -1]
        if behind:
            return behind[-1]
        return ahead[0] if ahead else None

    def _stretches_and_points(self, words: Words) -> tuple[list[Mark], list[Mark]]:
        if words not in self._apart:
            marks = self.marks(words)
            stretches = [m for m in marks if not m.holds and m.stretch.length_ft > 0]
            self._apart[words] = stretches, [m for m in marks if m.holds or m.stretch.length_ft == 0]
        return self._apart[words]

    def _way(self, mark: Mark) -> int:
        """The way the camera went that met the mark: +1 towards higher stations."""
        return self._ways.get(mark.origin.pass_number, self.line.passes[0].sign if self.line.passes else 1)

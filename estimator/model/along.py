"""A line in, what holds along it out: its extent, zone, pipe, bore and room at any station, filmed or not, and how each is known."""

from collections.abc import Callable
from functools import cached_property
from itertools import pairwise

from estimator.model.answers import Answer, How, T
from estimator.model.line import ZONES, Line, Mark
from estimator.model.marks_along import Held, Words
from estimator.model.remembered import answered_once
from estimator.model.stretch import Stretch, missing

STOPPED_BY = frozenset({"blocked", "water", "offset", "roots", "grease", "collapse", "turn", "cable"})
"""What a camera stops at that is no end of the pipe."""
SLACK_FT = 0.1


def _stopped_short(why: str) -> bool:
    """Whether any word of why a camera stopped names something in the way: `cable end` is no end of the pipe."""
    return not STOPPED_BY.isdisjoint(why.lower().split())


class Along:
    """What the marks of one line say of every station. Stations in ft; `extent` is from the lowest to the highest known one."""

    line: Line
    filmed: tuple[Stretch, ...]
    _marks: Held

    def marks(self, *words: str) -> tuple[Mark, ...]:
        """All marks of these words, in order of station."""
        return self._marks.marks(words)

    # ── extent and what was filmed ────────────────────────────────────────────────────────────

    @cached_property
    def extent(self) -> Stretch:
        """From the lowest to the highest station known: filmed, marked, or given as a length."""
        ends = [s for p in self.filmed for s in (p.from_ft, p.to_ft)]
        ends += [s for f in self.line.findings for s in (f.stretch.from_ft, f.stretch.to_ft)]
        ends += [m.stretch.from_ft for m in self.line.marks if not m.holds] or [0.0]
        low, high = min(ends), max(ends)
        if self.line.length_ft is not None:
            if self.line.passes and self.line.passes[0].sign == -1:
                low = min(low, high - self.line.length_ft)
            else:
                high = max(high, low + self.line.length_ft)
        return Stretch(low, high)

    @cached_property
    def not_inspected(self) -> tuple[Stretch, ...]:
        return missing(self.extent, self.filmed)

    @answered_once
    def inspected(self, stretch: Stretch) -> bool:
        return any(part.covers(stretch) for part in self.filmed)

    @answered_once
    def run_out_seen(self, stretch: Stretch, run_out_ft: float) -> bool:
        """Pipe was filmed so far beyond both ends, or the line is known to end or begin there.

        A camera that was stopped saw neither the end of what stopped it nor the pipe to couple to.
        """
        low = Stretch(stretch.from_ft - run_out_ft, stretch.from_ft)
        high = Stretch(stretch.to_ft, stretch.to_ft + run_out_ft)
        return all(self.inspected(beyond) or self._ends_in(beyond) for beyond in (low, high))

    def _ends_in(self, beyond: Stretch) -> bool:
        """The line begins or ends there: an access, an end that was reached, or where it was measured to end."""
        known = [m.stretch.from_ft for m in self.marks("end", "access", "cleanout")]
        known += [m.stretch.from_ft for m in self.marks("stop") if m.choice and not _stopped_short(m.choice)]
        known += [p.start_ft for p in self.line.passes]
        return any(beyond.padded(SLACK_FT, SLACK_FT).holds(at) for at in known)

    # ── what holds from one mark to the next ──────────────────────────────────────────────────

    @property
    def lot_line_ft(self) -> float | None:
        """Where the line first passes the property line, down the drain; None where nobody noted one."""
        lots = [m.stretch.middle_ft for m in self.marks("property line")]
        return min(lots, key=lambda at: at * self.line.downstream, default=None)

    def past_the_lot(self, stretch: Stretch) -> bool:
        """Some of it lies beyond the property line, down the drain."""
        lot = self.lot_line_ft
        end = stretch.to_ft if self.line.downstream == 1 else stretch.from_ft
        return lot is not None and (end - lot) * self.line.downstream > 0

    @answered_once
    def zone(self, at_ft: float) -> Answer[str | None]:
        """Slab, yard, drive ...; None with "assumed" where nobody said; "carried" where no camera went."""
        mark = self._marks.at(ZONES, at_ft)
        return Answer(mark.word, self._how(at_ft), (mark,)) if mark else Answer(None, "assumed")

    def _how(self, at_ft: float) -> How:
        """A word that holds was read where the camera went, and is carried beyond."""
        seen = self.filmed
        return "read" if not seen or any(s.from_ft <= at_ft <= s.to_ft for s in seen) else "carried"

    def pipe(self, at_ft: float) -> Answer[str]:
        mark = self._marks.at(("pipe",), at_ft)
        if mark and mark.choice:
            return Answer(mark.choice, self._how(at_ft), (mark,))
        return Answer(self.line.pipe, self._how(at_ft))

    @answered_once
    def bore_in(self, at_ft: float) -> Answer[float]:
        mark = self._marks.at(("size",), at_ft)
        if mark and mark.size_in is not None:
            return Answer(mark.size_in, self._how(at_ft), (mark,))
        return Answer(self.line.size_in, self._how(at_ft))

    def room(self, at_ft: float) -> str | None:
        mark = self._marks.at(("room",), at_ft)
        return mark.name if mark else None

    def under(self, at_ft: float) -> str | None:
        """What stands over the pipe: cabinets, tub, wall, tree ... or None."""
        mark = self._marks.at(("under",), at_ft)
        return mark.choice if mark else None

    def soil(self, at_ft: float) -> str | None:
        mark = self._marks.at(("soil",), at_ft)
        return mark.choice if mark else None

    @answered_once
    def zones(self, stretch: Stretch) -> tuple[tuple[Stretch, str | None], ...]:
        """The stretch cut where the zone changes, in order."""
        return self._cut(stretch, ZONES, lambda at: self.zone(at).value)

    @answered_once
    def pipes(self, stretch: Stretch) -> tuple[tuple[Stretch, str], ...]:
        """The stretch cut where the material changes, in order."""
        return self._cut(stretch, ("pipe",), lambda at: self.pipe(at).value)

    @answered_once
    def sizes(self, stretch: Stretch) -> tuple[tuple[Stretch, float], ...]:
        """The stretch cut where the bore changes, in order."""
        return self._cut(stretch, ("size",), lambda at: self.bore_in(at).value)

    @answered_once
    def rooms(self, stretch: Stretch) -> tuple[str, ...]:
        """The rooms over the stretch, each once, in order."""
        cut = self._cut(stretch, ("room",), self.room)
        return tuple(dict.fromkeys(room for _, room in cut if room))

    def _cut(self, stretch: Stretch, words: Words, value_at: Callable[[float], T]) -> tuple[tuple[Stretch, T], ...]:
        edges = {stretch.from_ft, stretch.to_ft}
        for mark in self.marks(*words):
            edges |= {e for e in (mark.stretch.from_ft, mark.stretch.to_ft) if stretch.from_ft < e < stretch.to_ft}
        cuts = sorted(edges)
        if len(cuts) == 1:
            return ((stretch, value_at(stretch.from_ft)),)
        out: list[tuple[Stretch, T]] = []
        for low, high in pairwise(cuts):
            value = value_at((low + high) / 2)
            if out and out[-1][1] == value:
                out[-1] = (out[-1][0].union(Stretch(low, high)), value)
            else:
                out.append((Stretch(low, high), value))
        return tuple(out)

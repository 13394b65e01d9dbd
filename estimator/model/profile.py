"""A line in, answers for any station out: zone, pipe, bore, depth, invert, filmed or not, and how each is known."""

from collections.abc import Callable
from functools import cached_property
from itertools import pairwise

from estimator.model.answers import INDOOR_ZONES, T, interpolated, taken_indoors
from estimator.model.answers import Answer as Answer
from estimator.model.answers import Beam as Beam
from estimator.model.answers import Branch as Branch
from estimator.model.answers import How as How
from estimator.model.held import Held, Words
from estimator.model.line import ZONES, Line, Mark
from estimator.model.on_the_way import beams, branches
from estimator.model.remembered import answered_once, remembered
from estimator.model.stretch import Stretch, missing

STOPPED_BY = frozenset({"blocked", "water", "offset", "roots", "grease", "collapse", "turn", "cable"})
"""What a camera stops at that is no end of the pipe."""
SLACK_FT = 0.1


def _stopped_short(why: str) -> bool:
    """Whether any word of why a camera stopped names something in the way: `cable end` is no end of the pipe."""
    return not STOPPED_BY.isdisjoint(why.lower().split())


class Profile:
    """One line put together from its marks. Stations in ft; `extent` is from the lowest to the highest known one.

    A line is asked thousands of times: it has one profile, which works out each answer once.
    """

    line: Line
    filmed: tuple[Stretch, ...]
    _marks: Held

    def __new__(cls, line: Line) -> "Profile":
        return _profile_of(line)

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

    # ── depth, invert, fall ───────────────────────────────────────────────────────────────────

    def _depth_readings(self, at_ft: float) -> tuple[tuple[Mark, ...], bool]:
        """Depths taken from the kind of surface that lies over this station, and True; those of another ground, and False.

        A depth under the floor and one under the lawn start at different heights: they are never mixed, and the one says
        nothing sure of the other. A basement floor lies stories lower than the lawn: from the one nothing is taken for the other.
        """
        marks = tuple(m for m in self.marks("depth", "loc", "pothole", "invert") if m.depth_ft is not None)
        below = self._from_basement(at_ft)
        marks = tuple(m for m in marks if self._from_basement(m.stretch.middle_ft, m) == below)
        indoors = self.zone(at_ft).value in INDOOR_ZONES
        alike = tuple(m for m in marks if self._taken_indoors(m) == indoors)
        return (alike, True) if alike else (marks, False)

    def _taken_indoors(self, mark: Mark) -> bool:
        """Where a depth was taken from; where its surface may be either, such as concrete, or is not said, what lies over the pipe there."""
        said = taken_indoors(mark)
        return self.zone(mark.stretch.middle_ft).value in INDOOR_ZONES if said is None else said

    @answered_once
    def _from_basement(self, at_ft: float, reading: Mark | None = None) -> bool:
        """The surface there is a basement floor; for a reading, the one its own words say it was taken from."""
        outdoors = reading is not None and taken_indoors(reading) is False
        return self.zone(at_ft).value == "basement" and not outdoors

    @answered_once
    def depth_to_centre_ft(self, at_ft: float) -> Answer[float | None]:
        """Surface to pipe centre, ft: read there, between two readings in a straight line, or carried from the nearest.

        An `invert` reading is turned into the centre by half the bore. "assumed" where it was read in another ground alone,
        such as the lawn for a pipe under the slab, or only on the line this one joins. None where there is not even that.
        """

        def centre(mark: Mark) -> float:
            depth = mark.depth_ft or 0.0
            return depth - self.bore_in(mark.stretch.from_ft).value / 24 if mark.to == "invert" else depth

        readings, alike = self._depth_readings(at_ft)
        found = interpolated(readings, centre, at_ft)
        if found.value is None:
            return Answer(self.line.at_join_ft, "assumed")
        return found if alike else Answer(found.value, "assumed", found.marks)

    @cached_property
    def levels(self) -> tuple[Mark, ...]:
        """Where the pipe's bottom was read from a floor, tile as well as slab, or from what nobody named: lawns are not level."""
        read = (m for m in self.marks("invert", "level") if m.depth_ft is not None)
        return tuple(m for m in read if m.surface is None or self._taken_indoors(m))

    def invert_below_slab_ft(self, at_ft: float) -> Answer[float | None]:
        """Invert below the slab top from `invert` and `level` readings only (a locator depth never gives fall), ft."""
        return interpolated(self.levels, lambda m: m.depth_ft or 0.0, at_ft)

    def fall_ft(self, from_ft: float, to_ft: float) -> Answer[float | None]:
        """How much the invert drops from the upstream to the downstream one of two stations, ft; below 0 it runs back.

        Only where both inverts were read or lie between readings; else None.
        """
        a, b = self.invert_below_slab_ft(from_ft), self.invert_below_slab_ft(to_ft)
        if a.value is None or b.value is None or "carried" in (a.how, b.how):
            return Answer(None, "assumed", (*a.marks, *b.marks))
        upstream, downstream = (a, b) if (to_ft - from_ft) * self.line.downstream >= 0 else (b, a)
        how: How = "read" if a.how == b.how == "read" else "between"
        return Answer((downstream.value or 0.0) - (upstream.value or 0.0), how, (*a.marks, *b.marks))

    def slope_ft_per_ft(self) -> float | None:
        """The line's own fall with the flow from its outermost readings of the pipe's bottom, ft per ft; below 0 it climbs.

        Readings in or at the ends of a belly say how deep it hangs, not how the line falls; None where fewer than two are left.
        """
        bellies = [f.stretch.padded(1.0, 1.0) for f in self.line.findings if f.kind == "sag"]
        read = {m.stretch.middle_ft for m in self.levels}
        free = sorted(at for at in read if not any(b.holds(at) for b in bellies))
        if len(free) < 2:
            return None
        fall = self.fall_ft(free[0], free[-1]).value
        return None if fall is None else fall / (free[-1] - free[0])

    # ── things on the way ─────────────────────────────────────────────────────────────────────

    @cached_property
    def branches(self) -> tuple[Branch, ...]:
        return branches(self.marks("branch"), {p.number: p.flow for p in self.line.passes})

    @cached_property
    def beams(self) -> tuple[Beam, ...]:
        return beams(self.marks("beam"))

    @cached_property
    def slab_edge_ft(self) -> float | None:
        """The station where the slab ends towards the street: 0 when it is the line's zero, or None where nobody saw it.

        A line that runs wholly under the slab has none: its lower end is a joint with another line, not the edge. Where
        the camera came up from the street and nothing was written before `slab`, the slab begins where it was written.
        """
        if self.line.zero == "slab edge":
            return 0.0
        against = self.line.downstream == -1
        zones = self.zones(self.extent)
        upwards = zones if against else zones[::-1]  # from the street into the house
        for number, (stretch, zone) in enumerate(upwards):
            if zone == "slab" and (number > 0 or (against and self.line.joins is None)):
                return stretch.from_ft if against else stretch.to_ft
        return None

    def accesses(self) -> tuple[float, ...]:
        """Stations one can get in at: cleanouts, accesses and where a pass began."""
        at = [m.stretch.from_ft for m in self.marks("cleanout", "access")]
        at += [p.start_ft for p in self.line.passes]
        return tuple(sorted(set(at)))

    def to_slab_edge_ft(self, at_ft: float) -> float | None:
        """How far inside the slab edge, ft; below 0 outside."""
        edge = self.slab_edge_ft
        return None if edge is None else (at_ft - edge) * -self.line.downstream

    def locate(self, at_ft: float) -> Mark | None:
        """The locate or pothole nearest to a station, or None."""
        return min(self.marks("loc", "pothole"), key=lambda m: abs(m.stretch.middle_ft - at_ft), default=None)


@remembered
def _profile_of(line: Line) -> Profile:
    profile = object.__new__(Profile)
    profile.line, profile._marks, profile.filmed = line, (held := Held(line)), held.filmed
    return profile

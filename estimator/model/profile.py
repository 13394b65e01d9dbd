"""A line in, answers for any station out: zone, pipe, bore, depth, invert, filmed or not, and how each is known."""

from functools import cached_property

from estimator.model.along import Along
from estimator.model.answers import INDOOR_ZONES, interpolated, taken_indoors
from estimator.model.answers import Answer as Answer
from estimator.model.answers import Beam as Beam
from estimator.model.answers import Branch as Branch
from estimator.model.answers import How as How
from estimator.model.line import Line, Mark
from estimator.model.marks_along import Held
from estimator.model.obstructions import beams, branches
from estimator.model.remembered import answered_once, remembered


class Profile(Along):
    """One line put together from its marks: what holds along it, how deep it lies, how it falls and what is on the way.

    A line is asked thousands of times: it has one profile, which works out each answer once.
    """

    def __new__(cls, line: Line) -> "Profile":
        return _profile_of(line)

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

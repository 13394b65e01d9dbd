"""The line's exit and readings in; the new pipe's invert and crown at any distance inside the slab edge, out."""

from collections.abc import Callable
from fractions import Fraction
from math import inf
from typing import TYPE_CHECKING, Literal

from estimator.knowledge.fixture_units import SMALL_PIPE_IN, Family
from estimator.knowledge.pipes import pipe_size
from estimator.model.answers import INDOOR_ZONES
from estimator.model.frozen import Frozen
from estimator.model.judgement import Effect, Verdict
from estimator.model.profile import Beam
from estimator.model.say import Feet, Say
from estimator.works.case import Case
from estimator.works.depth import INCHES_PER_FT

if TYPE_CHECKING:
    from estimator.tables.rows import PlaceRow

FAMILIES: tuple[Family, ...] = ("IPC", "UPC")


def code_families(place: "PlaceRow | None") -> tuple[Family, ...]:
    """The place's plumbing code; both families where nobody asked, so that the stricter one decides."""
    code = place.code if place else ""
    return tuple(f for f in FAMILIES if f == code) or FAMILIES


def fall_asked_in_per_ft(place: "PlaceRow | None", size_in: float) -> float | None:
    """What the place asks of a pipe of this size; None where nobody filled it in."""
    if place is None:
        return None
    return place.slope_small_in_per_ft if size_in <= SMALL_PIPE_IN else place.slope_mid_in_per_ft


def least_fall_in_per_ft(place: "PlaceRow | None", size_in: float, number: Callable[[str], float]) -> float:
    """What the place asks of a pipe of this size; where nobody filled it in the stricter of the code families, read with `number`."""
    asked = fall_asked_in_per_ft(place, size_in)
    return number("fall_if_unknown_in_per_ft") if asked is None else asked


def approved_in_per_ft(size_in: float, place_asked: bool) -> float:
    """Return the fall, in per ft, which the official may approve; infinite where none is: 1/8 from 4 in on.

    From 3 in on where nobody asked the place, since one code family allows it there: IPC 704.1, UPC 708.1 (from memory).
    """
    return 1 / 8 if size_in >= (4.0 if place_asked else 3.0) else inf


class Grade(Frozen):
    """A straight pipe: its invert below the slab top where it leaves the slab, and its fall. All ft, fall in ft per ft."""

    exit_invert_ft: float
    fall_per_ft: float
    inside_in: float
    wall_in: float
    how: Literal["read", "one reading", "depth reading", "assumed"]

    def invert_ft(self, inside_ft: float) -> float:
        """Below the slab top at a distance inside the edge: the exit's invert less the fall on the way.

        >>> round(Grade(2.6, 0.125 / 12, 4.026, 0.237, "read").invert_ft(15.833), 3)
        2.435
        """
        return self.exit_invert_ft - self.fall_per_ft * inside_ft

    def crown_ft(self, inside_ft: float) -> float:
        """Top of the pipe's outside below the slab top.

        >>> round(Grade(2.6, 0.25 / 12, 4.026, 0.237, "read").crown_ft(15.0), 2)
        1.93
        """
        return self.invert_ft(inside_ft) - (self.inside_in + self.wall_in) / INCHES_PER_FT


def grade(case: Case) -> Grade:
    """From two invert readings their own slope; from one the place's least fall; else from a locator's depth."""
    size = pipe_size(case.bore_in)
    least = least_fall_in_per_ft(case.place, case.bore_in, case.number) / INCHES_PER_FT
    read = _invert_readings(case)
    if not read:
        return _from_depth(case, least)
    (near, near_ft), (far, far_ft) = read[0], read[-1]
    if far - near < case.number("fall_least_run_ft"):
        case.paper.assume(
            "we have one level reading; the new pipe slopes {fall} in per foot from there",
            fall=str(Fraction(least * INCHES_PER_FT).limit_denominator(16)),
        )
        return Grade(near_ft + least * near, least, size.inside_in, size.wall_in, "one reading")
    fall = (near_ft - far_ft) / (far - near)
    if fall < least - 1e-9:
        case.paper.warn(
            "the pipe's bottom as it was read falls {fall} in for each ft, less than the {least} asked for: a lower exit, or the inspector's word",
            fall=f"{fall * INCHES_PER_FT:.3g}",
            least=f"{least * INCHES_PER_FT:.3g}",
        )
    return Grade(near_ft + fall * near, fall, size.inside_in, size.wall_in, "read")


def _invert_readings(case: Case) -> list[tuple[float, float]]:
    """(distance inside the slab edge, invert below the slab top), the nearest to the exit first; of two at one place the shallower."""
    found: dict[float, float] = {}
    for mark in case.profile.levels:
        at, depth = round(case.inside_ft(mark.stretch.from_ft), 3), mark.depth_ft or 0.0
        found[at] = min(depth, found.get(at, depth))
    return sorted(found.items())


def _from_depth(case: Case, least_fall: float) -> Grade:
    size = pipe_size(case.bore_in)
    middle = max(case.inside[1], 0.0) / 2
    if (
        case.profile.zone(case.station(middle)).value not in INDOOR_ZONES
    ):  # a floor that ends where the street's pipe begins
        middle = case.inside_ft(case.stretch.middle_ft)
    known = case.profile.depth_to_centre_ft(case.station(middle))
    centre = known.value
    rides = case.number("sonde_height_in")
    to_invert = (rides or case.bore_in / 2) / INCHES_PER_FT
    if centre is None or known.how == "assumed":
        centre = case.number("depth_if_unlocated_ft") if centre is None else centre
        case.paper.facts.add("depth_unlocated")
        case.paper.assume(
            "the depth under the slab is not measured; we assume {depth} to the center of the pipe", depth=Feet(centre)
        )
        return Grade(centre + to_invert + least_fall * middle, least_fall, size.inside_in, size.wall_in, "assumed")
    case.paper.assume("the depth under the slab is from a locator; it is good for digging, not for slope")
    return Grade(centre + to_invert + least_fall * middle, least_fall, size.inside_in, size.wall_in, "depth reading")


class Crossing(Frozen):
    """A beam on the way: where it begins and ends inside the slab edge, its bottom below the slab top, ft."""

    from_ft: float
    to_ft: float
    bottom_ft: float
    through: bool

    @property
    def width_ft(self) -> float:
        return self.to_ft - self.from_ft

    @property
    def middle_ft(self) -> float:
        return (self.from_ft + self.to_ft) / 2


def crossings(case: Case, far_ft: float) -> tuple[Crossing, ...]:
    """Beams between the slab edge and the far end, the nearest first. A beam's stretch runs with the stations."""
    out = []
    for beam in case.profile.beams:
        near, far = _ends(case, beam)
        if near < far_ft and far > 0:
            out.append(Crossing(near, far, beam.bottom_below_slab_ft, beam.through))
    return tuple(sorted(out, key=lambda c: c.from_ft))


def _ends(case: Case, beam: Beam) -> tuple[float, float]:
    ends = sorted((case.inside_ft(beam.stretch.from_ft), case.inside_ft(beam.stretch.to_ft)))
    near, far = ends[0], ends[1]
    if far <= 0 < far - near and far == 0:  # written at the edge of a line whose stations shrink inward
        return 0.0, far - near
    return near, far


def crown_finds(case: Case, pipe: Grade, beams: tuple[Crossing, ...]) -> tuple[Verdict, ...]:
    """The new pipe's crown must clear every beam it passes under: a beam is never notched.

    A beam between the pit and the new pipe is passed by the crew, not by the pipe.
    """
    clearance = case.number("beam_clearance_in") / INCHES_PER_FT
    near, far = case.inside
    finds = []
    for beam in (b for b in beams if b.from_ft < far and b.to_ft > near):
        if beam.through or not beam.bottom_ft:
            case.paper.warn("a pipe through a beam needs a sleeve: the engineer says which")
            continue
        gap = min(pipe.crown_ft(beam.from_ft), pipe.crown_ft(beam.to_ft)) - beam.bottom_ft
        if gap < clearance - 1e-9:
            finds.append(_hits(case, beam, gap, clearance))
    return tuple(finds)


def _hits(case: Case, beam: Crossing, gap_ft: float, clearance_ft: float) -> Verdict:
    words: dict[str, object] = {
        "gap": round(abs(gap_ft) * INCHES_PER_FT, 1),
        "at": Feet(round(beam.from_ft, 2)),
        "bottom": Feet(beam.bottom_ft),
        "least": round(clearance_ft * INCHES_PER_FT, 2),
    }
    if gap_ft < 0:
        told = Say.of(
            "the new pipe's top would reach {gap} in into the beam at {at} (bottom {bottom} below slab top): "
            "a flatter fall if the place allows it, a lower exit, or another way; never a notch",
            **words,
        )
    else:
        told = Say.of(
            "the new pipe's top would pass {gap} in under the beam at {at} (bottom {bottom} below slab top), "
            "less than the {least} in to keep clear: a flatter fall if the place allows it, a lower exit, or another way",
            **words,
        )
    homeowner = Say.of("A new pipe with the slope it needs would run into a concrete beam under the floor.")
    return case.find("pipe-clears-the-beam", Effect.BLOCKS, homeowner, told, "beam_clearance_in")

"""A length of pipe to reach from the open air in; the hole over it, its depth, what holds its sides and its widths, out."""

from estimator.knowledge.excavation import SoilType
from estimator.model.frozen import Frozen
from estimator.model.opening import Opening
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch
from estimator.works.case import Case
from estimator.works.depth import Bottom, bottom, pothole_reaches
from estimator.works.earth import Depth
from estimator.works.ground import hand_only, is_wet, soil_type, spans
from estimator.works.protection import Box, Hole, Way, least, ways
from estimator.works.room import Room, room_beside
from estimator.works.rounding import up
from estimator.works.trench_width import trench_width_ft


class OpenDig(Frozen, kw_only=True):
    """One dig: its bottom along the line, how deep, the soil type counted with, the room beside it, its sides."""

    hole: Stretch
    under: Bottom
    kind: SoilType
    beside: Room
    way: Way
    wet: bool

    @property
    def top(self) -> Stretch:
        """What it takes along the line at the ground: its slopes at both ends with it."""
        longer = max(0.0, self.way.length_ft - self.hole.length_ft)
        over = longer / 2 + (self.way.top_width_ft - self.way.width_ft) / 2
        return self.hole.padded(over, over)


def hole_over(case: Case) -> Stretch:
    """The stretch with room to work at each end, and the locator's own error where nothing is uncovered first."""
    room = case.number("dig_end_ft")
    first = case.word("pothole_pipe_first", "yes", "no") == "yes"
    if not first or not pothole_reaches(case, case.stretch.padded(room, room)):
        room += case.number("locator_tolerance_min_ft")
    return case.stretch.padded(room, room)


def open_dig(case: Case, hole: Stretch) -> OpenDig:
    """How a trench or pit over `hole` is dug. `hole` has room at both ends in it already."""
    under = bottom(case, hole)
    wet = is_wet(case, hole, under.safety_ft)
    kind = soil_type(case, hole, wet)
    beside = room_beside(case, hole)
    return OpenDig(
        hole=hole, under=under, kind=kind, beside=beside, way=_sides(case, hole, under, kind, beside, wet), wet=wet
    )


def as_planned(case: Case, one: Opening) -> OpenDig:
    """How an opening that a way of repair planned by itself is dug: at its own length, width and depth."""
    hole, step = one.along, case.number("dig_step_ft")
    deep = up(one.depth_ft, step)
    under = Bottom(
        dug=(Depth(0.0, deep), Depth(hole.length_ft, deep)),
        exact_ft=one.depth_ft,
        tolerance_ft=one.tolerance_ft,
        unlocated=not one.depth_known,
    )
    wet = is_wet(case, hole, under.safety_ft)
    kind, beside = soil_type(case, hole, wet), room_beside(case, hole)
    way = _sides(case, hole, under, kind, beside, wet, one.bottom_width_ft)
    return OpenDig(hole=hole, under=under, kind=kind, beside=beside, way=way, wet=wet)


def _sides(
    case: Case, hole: Stretch, under: Bottom, kind: SoilType, beside: Room, wet: bool, least_ft: float = 0.0
) -> Way:
    whole = Hole(
        length_ft=hole.length_ft,
        width_ft=max(least_ft, trench_width_ft(case, shored=False)),
        shored_width_ft=max(least_ft, trench_width_ft(case, shored=True)),
        depths=under.dug,
        safety_ft=under.safety_ft,
    )
    no_box = hand_only(case)  # a steel box is set by a machine
    box = None if no_box else Box(width_ft=case.number("box_width_ft"), length_ft=case.number("box_length_ft"))
    caving = case.job.site.caving_signs or (wet or None)
    bench = case.number("bench_percent")
    allowed = ways(whole, kind, caving, beside, box, bench, cohesive="clay" in case.soil.soil)
    wanted = case.word("protection_wanted", "least earth", "sloped", "benched", "boxed")
    return least(allowed, "shored" if wanted == "boxed" and box is None else wanted)


def opening(case: Case, dug: OpenDig, kind: str, days: float) -> Opening:
    """The dig as rules and papers read it."""
    words = {"low": Feet(round(dug.hole.from_ft, 1)), "high": Feet(round(dug.hole.to_ft, 1))}
    name = (
        Say.of("the pit from {low} to {high}", **words)
        if kind == "pit"
        else Say.of("the trench from {low} to {high}", **words)
    )
    return Opening(
        kind="pit" if kind == "pit" else "trench",
        line=case.line.name,
        along=dug.hole,
        top=dug.top,
        depth_ft=dug.under.exact_ft,
        tolerance_ft=dug.under.tolerance_ft,
        depth_known=not dug.under.unlocated,
        bottom_width_ft=dug.way.width_ft,
        top_width_ft=dug.way.top_width_ft,
        spans=spans(case, dug.top),
        held_by="" if dug.way.name == "vertical" else dug.way.name,
        wet=dug.wet,
        name=name,
        days=days,
    )

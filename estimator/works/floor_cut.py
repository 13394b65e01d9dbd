"""A strip or a spot to open in the floor in; the openings between the beams, how deep the dig below them goes, out."""

from dataclasses import replace
from itertools import pairwise

from estimator.knowledge.excavation import needs_system
from estimator.model.edge_beam import edge_beam
from estimator.model.frozen import Frozen
from estimator.model.opening import Opening
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch
from estimator.works.case import Case
from estimator.works.depth import INCHES_PER_FT, bedding_ft, tolerance_ft
from estimator.works.grade import Crossing, Grade, grade
from estimator.works.ground import is_wet, spans
from estimator.works.slab_beams import strip_beams
from estimator.works.trench_width import trench_width_ft


class FloorCut(Frozen):
    """One opening in the floor: where it begins and ends inside the slab edge, and how wide, ft."""

    from_ft: float
    to_ft: float
    width_ft: float

    @property
    def length_ft(self) -> float:
        return self.to_ft - self.from_ft

    @property
    def middle_ft(self) -> float:
        return (self.from_ft + self.to_ft) / 2


class FloorPlan(Frozen, kw_only=True):
    """Openings in the floor over a stretch. `near_ft` and `far_ft` are distances inside the slab edge, room counted.

    `exact_ft` is the deepest bottom below the floor's top, not rounded; `tolerance_ft` what the locator may be off.
    """

    near_ft: float
    far_ft: float
    width_ft: float
    pipe: Grade
    beams: tuple[Crossing, ...]
    cuts: tuple[FloorCut, ...]
    exact_ft: float
    tolerance_ft: float


def below_slab_ft(case: Case, pipe: Grade, inside_ft: float) -> float:
    """Underside of the slab to the bottom of the dig: invert - slab + pipe wall + bedding."""
    return pipe.invert_ft(inside_ft) - case.slab_ft + pipe.wall_in / INCHES_PER_FT + bedding_ft(case)


def strip(case: Case) -> FloorPlan:
    """A strip along the whole stretch under the floor, with room to couple at its ends, stopped on each side of every beam.

    It begins where the strip over the line it joins ends, where the same scope opens that.
    """
    near, far = (max(0.0, end) for end in case.inside)
    room = case.number("spot_room_ft")
    inner = case.profile.slab_edge_ft is None  # a side line: its lower end is a junction under the floor
    low = near - room if inner or near - room >= _edge_wide_ft(case) else near
    low = near + case.open_ft if case.open_ft else low
    plan = _plan(case, low, far + room, case.number("slab_run_width_ft"))
    return replace(plan, cuts=_wide_at_the_ends(case, plan))


def _edge_wide_ft(case: Case) -> float:
    """How far in from the slab's edge its beam reaches: room to couple is never taken from under it."""
    beam = edge_beam(case.job, case.line, case.number("edge_beam_near_ft")).beam
    return case.number("edge_beam_wide_ft") if beam is None else beam.wide_ft


def _wide_at_the_ends(case: Case, plan: FloorPlan) -> tuple[FloorCut, ...]:
    """At each end where new pipe is coupled under the floor the strip is as wide as a single opening.

    At the slab edge the pipe goes on outside and is coupled there.
    """
    side = case.number("slab_spot_ft")
    inner = case.profile.slab_edge_ft is None
    ends = [at for at in (plan.near_ft, plan.far_ft) if inner or at > 0]
    ends = ends[1:] if case.open_ft else ends
    wide = [(max(0.0, at - side), at) if at == plan.far_ft else (at, at + side) for at in ends]
    out: list[FloorCut] = []
    for cut in plan.cuts:
        stops = sorted({cut.from_ft, cut.to_ft, *(s for w in wide for s in w if cut.from_ft < s < cut.to_ft)})
        for low, high in pairwise(stops):
            at_end = any(a <= (low + high) / 2 <= b for a, b in wide)
            width = max(cut.width_ft, side) if at_end else cut.width_ft
            if out and out[-1].to_ft == low and out[-1].width_ft == width:
                out[-1] = FloorCut(out[-1].from_ft, high, width)
            else:
                out.append(FloorCut(low, high, width))
    return tuple(out)


def spot(case: Case) -> FloorPlan:
    """One opening over a bad piece, never smaller than the firm's least spot."""
    near, far = (max(0.0, end) for end in case.inside)
    short = max(0.0, case.number("slab_spot_ft") - (far - near)) / 2
    grow = max(short, case.number("spot_room_ft"))
    return _plan(case, max(0.0, near - grow), far + grow, case.number("slab_spot_ft"))


def _plan(case: Case, near: float, far: float, width: float) -> FloorPlan:
    pipe = grade(case)
    beams = strip_beams(case, pipe, near, far)
    deep = max(below_slab_ft(case, pipe, at) for at in (near, far)) + case.slab_ft
    tolerance = tolerance_ft(case, deep)
    if needs_system(deep + tolerance, "C", case.job.site.caving_signs):
        width = max(width, trench_width_ft(case, shored=True))  # people work between the shores
    return FloorPlan(
        near_ft=near,
        far_ft=far,
        width_ft=width,
        pipe=pipe,
        beams=beams,
        cuts=_between_beams(near, far, width, beams),
        exact_ft=deep,
        tolerance_ft=tolerance,
    )


def _between_beams(near: float, far: float, width: float, beams: tuple[Crossing, ...]) -> tuple[FloorCut, ...]:
    """The strip less the beams: a beam is never sawn; the crew digs under it by hand."""
    out, start = [], near
    for beam in beams:
        if beam.from_ft > start:
            out.append(FloorCut(start, min(beam.from_ft, far), width))
        start = max(start, beam.to_ft)
    if start < far:
        out.append(FloorCut(start, far, width))
    return tuple(out)


def openings(case: Case, plan: FloorPlan) -> tuple[Opening, ...]:
    """Each opening as rules and papers read it, and the hand-dug hole outside where the stretch goes on past the slab."""
    held = needs_system(plan.exact_ft + plan.tolerance_ft, "C", case.job.site.caving_signs)
    out = []
    for cut in plan.cuts:
        along = Stretch.between(case.station(cut.from_ft), case.station(cut.to_ft))
        out.append(
            Opening(
                kind="floor opening",
                line=case.line.name,
                along=along,
                depth_ft=max(below_slab_ft(case, plan.pipe, at) for at in (cut.from_ft, cut.to_ft)) + case.slab_ft,
                tolerance_ft=plan.tolerance_ft,
                depth_known=plan.pipe.how != "assumed",
                bottom_width_ft=cut.width_ft,
                top_width_ft=cut.width_ft,
                spans=spans(case, along),
                held_by="shored" if held else "",
                wet=is_wet(case, along, plan.exact_ft + plan.tolerance_ft),
                name=Say.of(
                    "the opening in the floor from {low} to {high}",
                    low=Feet(round(along.from_ft, 1)),
                    high=Feet(round(along.to_ft, 1)),
                ),
                days=case.number("slab_days_open"),
            )
        )
    outside = outside_hole(case, plan.pipe)
    return tuple(out) if outside is None else (*out, outside)


def above_grade_ft(case: Case) -> float:
    """How far the ground lies below the slab top outside."""
    above = case.job.house.slab_above_grade_ft
    return case.number("slab_above_grade_ft") if above is None else above


def outside_hole(case: Case, pipe: Grade) -> Opening | None:
    """The hand-dug hole over what lies outside the slab; None where the stretch ends at the slab edge or inside."""
    near, _ = case.inside
    if near >= 0:
        return None
    length = -near + case.number("dig_end_ft")
    exact = pipe.invert_ft(near) - above_grade_ft(case) + pipe.wall_in / INCHES_PER_FT + bedding_ft(case)
    tolerance = tolerance_ft(case, exact)
    held = needs_system(exact + tolerance, "C", case.job.site.caving_signs)
    along = Stretch.between(case.station(0.0), case.station(-length))
    width = trench_width_ft(case, shored=held)
    return Opening(
        kind="pit",
        line=case.line.name,
        along=along,
        depth_ft=exact,
        tolerance_ft=tolerance,
        depth_known=pipe.how != "assumed",
        bottom_width_ft=width,
        top_width_ft=width,
        spans=spans(case, along),
        held_by="shored" if held else "",
        wet=is_wet(case, along, exact + tolerance),
        name=Say.of("the pit outside the slab edge, {length} long", length=Feet(round(length, 1))),
        days=case.number("slab_days_open"),
    )

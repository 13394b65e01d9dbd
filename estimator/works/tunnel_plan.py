"""A stretch under the slab in; the tunnel to it, its pits and how deep they go, out."""

from dataclasses import replace

from estimator.knowledge.excavation import needs_system
from estimator.model.frozen import Frozen
from estimator.model.opening import Opening, Span
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch
from estimator.works.approach import Approach, approach
from estimator.works.case import Case
from estimator.works.depth import tolerance_ft
from estimator.works.floor_cut import above_grade_ft, outside_hole
from estimator.works.grade import Crossing, Grade, grade
from estimator.works.ground import is_wet, spans
from estimator.works.rounding import up
from estimator.works.tunnel_beams import TunnelBeams, tunnel_beams
from estimator.works.tunnel_shape import TunnelShape, beam_concrete_cf, dip_under, height_ft


class TunnelPlan(Frozen, kw_only=True):
    """A tunnel as it will be dug: its way in, the new pipe's grade, the beams over it, its shape before dips and with them."""

    way: Approach
    pipe: Grade
    beams: TunnelBeams
    plain: TunnelShape
    shape: TunnelShape
    exact_pit_ft: float
    pit_ft: float  # what the crew digs it to: up to the firm's step, from the floor as it is dug


def tunnel_plan(case: Case) -> TunnelPlan:
    way = approach(case)
    pipe = grade(case)
    beams = tunnel_beams(case, way)
    step, least, below = (
        case.number("dig_step_ft"),
        case.number("tunnel_height_min_ft"),
        case.number("tunnel_under_pipe_ft"),
    )
    mouth, face = (height_ft(pipe.invert_ft(at), case.slab_ft, below, least) for at in (way.mouth_ft, way.face_ft))
    plain = TunnelShape(
        length_ft=way.length_ft,
        width_ft=case.number("tunnel_width_ft"),
        mouth_ft=up(mouth, step),
        face_ft=up(face, step),
    )
    shape = _with_dips(case, plain, beams.over)
    exact, dug = (_pit_floor_ft(case, at, beams.edge_floor_ft) - above_grade_ft(case) for at in (mouth, plain.mouth_ft))
    return TunnelPlan(
        way=way, pipe=pipe, beams=beams, plain=plain, shape=shape, exact_pit_ft=exact, pit_ft=up(dug, step)
    )


def _with_dips(case: Case, plain: TunnelShape, beams: tuple[Crossing, ...]) -> TunnelShape:
    crawl, margin, step = case.number("beam_crawl_ft"), case.number("beam_dip_margin_ft"), case.number("dig_step_ft")
    dips = tuple(dip_under(plain, b, case.slab_ft, crawl, margin, step) for b in beams)
    kept = tuple(d for d in dips if d.depth_ft)
    return replace(plain, dips=kept, beams_cf=beam_concrete_cf(plain, beams, case.slab_ft))


def _pit_floor_ft(case: Case, mouth_ft: float, edge_beam_ft: float) -> float:
    """Below the slab top: the floor at the mouth, the dip under the edge beam counted."""
    beam_floor = edge_beam_ft + case.number("beam_crawl_ft") if edge_beam_ft else 0.0
    return max(case.slab_ft + mouth_ft, beam_floor)


def openings(case: Case, plan: TunnelPlan) -> tuple[Opening, ...]:
    """The tunnel, each pit it is dug from, and the hand-dug hole outside where new pipe goes on past the slab."""
    under = Stretch.between(case.station(plan.way.mouth_ft), case.station(plan.way.face_ft))
    floor = case.slab_ft + plan.shape.deepest_ft - above_grade_ft(case)
    days = case.number("tunnel_days_open")
    tunnel = Opening(
        kind="tunnel",
        line=case.line.name,
        along=under,
        depth_ft=floor,
        tolerance_ft=tolerance_ft(case, floor),
        depth_known=plan.pipe.how != "assumed",
        bottom_width_ft=plan.shape.width_ft,
        top_width_ft=plan.shape.width_ft,
        spans=spans(case, under),
        held_by="shored",
        wet=is_wet(case, under, floor),
        assumed=plan.way.guess is not None,
        why_assumed=plan.way.guess,
        name=Say.of(
            "the tunnel from {low} to {high}", low=Feet(round(under.from_ft, 1)), high=Feet(round(under.to_ft, 1))
        ),
        days=days,
    )
    outside = outside_hole(case, plan.pipe)
    pits = _pits(case, plan, days)
    return (tunnel, *pits, *(() if outside is None else (outside,)))


def _pits(case: Case, plan: TunnelPlan, days: float) -> tuple[Opening, ...]:
    long, wide = case.number("pit_length_ft"), case.number("pit_width_ft")
    depth = plan.exact_pit_ft
    tolerance = tolerance_ft(case, depth)
    held = needs_system(depth + tolerance, "C", case.job.site.caving_signs)
    out = []
    for number in range(plan.way.pits):
        second = number > 0
        line, along, offset = _where(case, plan.way, long, second)
        known = second and plan.way.second_beside_ft is not None
        off_the_line = second or plan.way.entry == "wall"
        out.append(
            Opening(
                kind="pit",
                line=line,
                along=along,
                depth_ft=depth,
                tolerance_ft=tolerance,
                depth_known=plan.pipe.how != "assumed",
                bottom_width_ft=wide,
                top_width_ft=wide,
                offset_ft=offset,
                spans=(Span(along, "yard", "lawn"),) if off_the_line else spans(case, along),
                held_by="shored" if held else "",
                wet=is_wet(case, along, depth + tolerance),
                assumed=(second and not known) or plan.way.guess is not None,
                why_assumed=SECOND_PIT if second and not known else plan.way.guess,
                name=Say.of("the second pit at the tunnel's far end") if second else Say.of("the tunnel's pit"),
                days=days,
            )
        )
    return tuple(out)


SECOND_PIT = Say.of("a second pit at the far end; where there is no open ground, an opening through the floor")


def _where(case: Case, way: Approach, long_ft: float, second: bool) -> tuple[str, Stretch, float]:
    """The line and stations a pit lies at, and how far beside the line."""
    if second:
        at, half = case.station(way.face_ft), long_ft / 2
        return case.line.name, Stretch(at - half, at + half), (way.second_beside_ft or 0.0) + half
    if way.entry == "wall":
        at, half = case.station(way.mouth_ft), long_ft / 2
        return case.line.name, Stretch(at - half, at + half), way.into_ft + half
    line, edge = case.way_out
    parent = case if line.name == case.line.name else case.on(line)
    return line.name, Stretch.between(parent.station(-edge), parent.station(-edge - long_ft)), 0.0

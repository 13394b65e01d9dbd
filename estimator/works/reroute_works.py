"""A way round that was seen on site in; the trench of its buried legs and every hole it takes, out."""

from estimator.knowledge.excavation import needs_system
from estimator.knowledge.pipes import pipe_size
from estimator.knowledge.trench import d2321_width_in
from estimator.model.frozen import Frozen
from estimator.model.job import Leg, Reroute
from estimator.model.opening import Opening, Span
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.works.case import Case
from estimator.works.depth import INCHES_PER_FT, bedding_ft
from estimator.works.grade import least_fall_in_per_ft
from estimator.works.ground import hand_only
from estimator.works.rounding import up
from estimator.works.trench_width import held_plan, trench_width_ft

BURIED = ("yard", "drive", "walk", "street")


class NewTrench(Frozen, kw_only=True):
    """The trench of the buried legs: as deep as the firm begins a new drain, and deeper by its fall at the far end."""

    legs: tuple[Leg, ...]
    outside_ft: float
    begins_ft: float
    ends_ft: float
    length_ft: float
    width_ft: float


def way_of(case: Case) -> Reroute | None:
    """The way round the repair follows."""
    return next((r for r in case.job.reroutes if r.name == case.repair.reroute), None)


def new_trench(case: Case, way: Reroute, size_in: float) -> NewTrench | None:
    """None where no leg is buried."""
    legs = tuple(leg for leg in way.legs if leg.zone in BURIED)
    if not legs:
        return None
    outside = pipe_size(size_in or case.bore_in).outside_in / INCHES_PER_FT
    straight = sum(leg.length_ft for leg in legs)
    step, begins = case.number("dig_step_ft"), max(case.number("reroute_depth_ft"), _covered_ft(case, outside))
    exact = begins + least_fall_in_per_ft(case.place, size_in or case.bore_in, case.number) / INCHES_PER_FT * straight
    free = straight, _width_ft(case, up(exact, step), outside)
    length, width = held_plan(case, free, up(exact, step), outside)
    return NewTrench(
        legs=legs,
        outside_ft=outside,
        begins_ft=up(begins, step),
        ends_ft=up(exact, step),
        length_ft=length,
        width_ft=width,
    )


def _width_ft(case: Case, deepest_ft: float, outside_ft: float) -> float:
    """One bucket, no wider than the standard asks for, where nobody has to stand in it; else as any trench."""
    if deepest_ft > case.number("bucket_trench_to_ft"):
        return trench_width_ft(case, shored=False, pipe_outside_ft=outside_ft)
    return up(d2321_width_in(outside_ft * INCHES_PER_FT) / INCHES_PER_FT, case.number("dig_step_ft"))


def _covered_ft(case: Case, outside_ft: float) -> float:
    """How deep a trench begins so that the pipe has the cover its place asks for; 0 where nobody has answered."""
    if case.place is None or case.place.least_cover_in is None:
        return 0.0
    return case.place.least_cover_in / INCHES_PER_FT + outside_ft + bedding_ft(case)


def holes(way: Reroute, what: str) -> int:
    return sum(count for word, count in way.penetrations if word == what)


def floor_holes(case: Case, way: Reroute) -> tuple[tuple[float, float], ...]:
    """(length, width) of each opening in the floor that the notes count: big enough to turn a fixture's drain in."""
    side = case.number("floor_hole_ft")
    return ((side, side),) * holes(way, "floor")


def openings(case: Case, way: Reroute, size_in: float) -> tuple[Opening, ...]:
    dug = new_trench(case, way, size_in)
    out = [] if dug is None else [_trench(case, dug)]
    at = Stretch(0.0, 0.0)
    for number, (long, wide) in enumerate(floor_holes(case, way), start=1):
        out.append(
            Opening(
                kind="floor opening",
                line="",
                along=Stretch(0.0, long),
                depth_ft=case.slab_ft + case.number("floor_hole_deep_ft"),
                bottom_width_ft=wide,
                top_width_ft=wide,
                spans=(Span(Stretch(0.0, long), "slab" if case.on_slab else "basement"),),
                name=Say.of("opening {number} in the floor, at a fixture", number=number),
                days=case.number("slab_days_open"),
            )
        )
    for what in ("wall", "roof"):
        out += [
            Opening(
                kind="hole through",
                line="",
                along=at,
                depth_ft=0.0,
                bottom_width_ft=0.0,
                people=False,
                spans=(Span(at, what),),
                name=Say.of("the hole through the wall") if what == "wall" else Say.of("the hole through the roof"),
            )
            for _ in range(holes(way, what))
        ]
    return tuple(out)


def _trench(case: Case, dug: NewTrench) -> Opening:
    spans, start = [], 0.0
    for leg in dug.legs:
        spans.append(Span(Stretch(start, start + leg.length_ft), leg.zone, "lawn" if leg.zone == "yard" else ""))
        start += leg.length_ft
    held = needs_system(dug.ends_ft, "C", case.job.site.caving_signs)
    water = case.job.site.water_table_ft
    return Opening(
        kind="trench",
        line="",
        along=Stretch(0.0, dug.length_ft),
        depth_ft=dug.ends_ft,
        bottom_width_ft=dug.width_ft,
        top_width_ft=dug.width_ft,
        spans=tuple(spans),
        held_by="" if not held else "shored" if hand_only(case) else "boxed",
        wet=water is not None and water < dug.ends_ft,
        name=Say.of("the trench of the new route"),
        days=case.number("trench_days_open"),
    )

"""Openings in the floor and the new pipe's grade in; the earth dug below and put back, what holds it and who asks, out."""

import math
from collections.abc import Sequence

from estimator.knowledge.excavation import ladders, needs_ladder
from estimator.model.frozen import Frozen
from estimator.takeoff.case import Case
from estimator.takeoff.dig_fill import sand_tons
from estimator.takeoff.haul import export, spoil
from estimator.takeoff.hole_safety import hand_shores, sides_are_held
from estimator.takeoff.working import cubic_yards, shown, up
from estimator.works.depth import bedding_ft, outside_ft
from estimator.works.floor_cut import FloorPlan, below_slab_ft
from estimator.works.grade import Crossing
from estimator.works.ground import is_wet


class StripFloor(Frozen):
    """The dig's bottom below the slab's underside, straight from the nearer end of the strip to the farther, ft."""

    near_ft: float
    far_ft: float
    at_near_ft: float
    at_far_ft: float

    def depth_ft(self, inside_ft: float) -> float:
        """
        >>> StripFloor(0, 27, 2.7, 2.4).depth_ft(9)
        2.6
        """
        if self.far_ft == self.near_ft:
            return self.at_near_ft
        share = (inside_ft - self.near_ft) / (self.far_ft - self.near_ft)
        return self.at_near_ft + (self.at_far_ft - self.at_near_ft) * share

    @property
    def deepest_ft(self) -> float:
        return max(self.at_near_ft, self.at_far_ft)

    @property
    def shallowest_ft(self) -> float:
        return min(self.at_near_ft, self.at_far_ft)


def dig_below(case: Case, plan: FloorPlan) -> tuple[float, float]:
    """Earth under the openings and, by hand, under the beams between them; and the pipe zone in it, cubic ft."""
    paper, width, pipe, openings, beams = case.paper, plan.width_ft, plan.pipe, plan.cuts, plan.beams
    near, far = plan.near_ft, plan.far_ft
    step = case.number("dig_step_ft")
    floor = StripFloor(near, far, *(up(below_slab_ft(case, pipe, at), step) for at in (near, far)))
    under = _under_beams(case, beams, floor, width)
    plain = sum(o.length_ft * o.width_ft * floor.depth_ft(o.middle_ft) for o in openings)
    _write_size(case, plan, floor)
    paper.put(
        "inside_dig_bcy",
        cubic_yards(plain + under),
        "(each opening: length x width x depth below the slab at its middle; + under beams) / 27",
        (
            "openings, long x wide x deep",
            ", ".join(
                f"{shown(o.length_ft)} x {shown(o.width_ft)} x {floor.depth_ft(o.middle_ft):.3f} ft" for o in openings
            ),
        ),
        ("width", width, "ft"),
        ("depth, nearer end", floor.at_near_ft, "ft"),
        ("depth, farther end", floor.at_far_ft, "ft"),
        ("under beams", under, "cu ft"),
    )
    _depth_facts(case, plan, floor.deepest_ft + case.slab_ft)
    high = min(bedding_ft(case) + outside_ft(case) + case.number("pipe_zone_over_ft"), floor.shallowest_ft)
    across = sum(o.length_ft * o.width_ft for o in openings) + sum(_width_in(b, near, far) for b in beams) * width
    return plain + under, across * high


def _write_size(case: Case, plan: FloorPlan, floor: StripFloor) -> None:
    paper, pipe = case.paper, plan.pipe
    paper.put(
        "dig_length_ft",
        sum(o.length_ft for o in plan.cuts),
        "strip less the beams",
        ("openings", len(plan.cuts)),
    )
    paper.put(
        "dig_width_ft",
        plan.width_ft,
        "the firm's opening; where its sides are held, as wide as people need between shores",
    )
    paper.put(
        "dig_depth_ft",
        floor.deepest_ft + case.slab_ft,
        "invert + pipe wall + bedding, the slab taken off, up to the dig step, the slab put on again",
        ("invert, nearer end", pipe.invert_ft(plan.near_ft), "ft"),
        ("invert, farther end", pipe.invert_ft(plan.far_ft), "ft"),
        ("pipe wall", pipe.wall_in, "in"),
        ("bedding", bedding_ft(case), "ft"),
        ("slab", case.slab_ft, "ft"),
        ("dig step", case.number("dig_step_ft"), "ft"),
    )


def _width_in(beam: Crossing, near: float, far: float) -> float:
    return max(0.0, min(beam.to_ft, far) - max(beam.from_ft, near))


def _under_beams(case: Case, beams: tuple[Crossing, ...], floor: StripFloor, width: float) -> float:
    """A short hand tunnel under each beam: its width x the opening's width x the room below the beam, at least a crawl."""
    crossed = [(b, wide) for b in beams if (wide := _width_in(b, floor.near_ft, floor.far_ft)) > 0]
    case.paper.put("beam_crossings", len(crossed), "beams the strip stops at; the crew digs under them by hand")
    if crossed:
        case.letter(
            "digging under a beam", {"strip-stops-at-a-beam"}, ("beams", len(crossed)), source="29 CFR 1926.651(i)(2)"
        )
        case.paper.warn("no beam is sawn or notched; the crew stops on each side and digs under it by hand")
    least, slab = case.number("under_beam_height_ft"), case.slab_ft
    return sum(wide * width * max(least, floor.depth_ft(b.middle_ft) + slab - b.bottom_ft) for b, wide in crossed)


def _depth_facts(case: Case, plan: FloorPlan, depth_ft: float) -> None:
    safe = plan.exact_ft + plan.tolerance_ft
    case.paper.put(
        "safety_depth_ft",
        safe,
        "bottom below slab top, not rounded, + what the locator may be off",
        ("bottom", plan.exact_ft, "ft"),
        ("locator", plan.tolerance_ft, "ft"),
    )
    held_below(case, tuple((o.length_ft, o.width_ft) for o in plan.cuts), safe, depth_ft)


def held_below(case: Case, cuts: Sequence[tuple[float, float]], safe: float, depth_ft: float) -> None:
    """Ladders, shores and pumping below openings of these lengths and widths, so deep with the tolerance and as dug."""
    if needs_ladder(safe):
        case.paper.put(
            "ladders",
            ladders(case.paper.value("dig_length_ft")),
            "nobody walks more than 25 ft sideways to one",
            case.paper.given("dig_length_ft"),
            source="29 CFR 1926.651(c)(2)",
        )
    if sides_are_held(case, safe):
        hand_shores(case, sum(2 * (long + wide) for long, wide in cuts), depth_ft)
    if is_wet(case, case.stretch, safe):
        case.paper.facts.add("wet")
        case.paper.put("dewater_days", case.number("slab_days_open"), "days the floor is open")


def fill_below(case: Case, bank_cf: float, zone_cf: float, outside_bank: float, outside_native: float) -> None:
    """Sand round the pipe, native soil over it, both packed by hand; the rest and the concrete go away."""
    paper = case.paper
    pipe_cf = math.pi / 4 * outside_ft(case) ** 2 * (case.inside[1] - max(0.0, case.inside[0]))
    sand = cubic_yards(max(0.0, zone_cf - pipe_cf))
    native = cubic_yards(max(0.0, bank_cf - zone_cf))
    paper.add(
        "pipe_zone_ccy",
        sand,
        "(pipe zone - the pipe in it) / 27",
        ("pipe zone", zone_cf, "cu ft"),
        ("pipe", pipe_cf, "cu ft"),
    )
    sand_tons(case, paper.value("pipe_zone_ccy"))
    paper.put(
        "inside_backfill_ccy",
        native + sand,
        "native + pipe zone, packed by hand",
        ("native", native, "cy"),
        ("pipe zone", sand, "cy"),
    )
    paper.put(
        "native_ccy",
        native + outside_native,
        "inside + outside",
        ("inside", native, "cy"),
        ("outside", outside_native, "cy"),
    )
    bank = cubic_yards(bank_cf) + outside_bank
    spoil(case, bank)
    export(
        case,
        bank,
        native + outside_native,
        case.soil.shrink_hand,
        rubble_lcy=paper.value("slab_haul_lcy") + paper.value("flatwork_haul_lcy"),
        rubble_tons=paper.value("slab_tons") + paper.value("flatwork_tons"),
    )

"""A strip or a spot to open in the floor in; saw cuts, concrete out and in, the dig below, dust control, out."""

import math
from dataclasses import dataclass

from estimator.knowledge.excavation import ladders, needs_ladder, needs_system
from estimator.model.judgement import Verdict
from estimator.takeoff.case import Case
from estimator.takeoff.deep_hole import say_edge_and_air
from estimator.takeoff.depth import INCHES_PER_FT, bedding_ft, outside_ft, tolerance_ft
from estimator.takeoff.dig_fill import sand_tons
from estimator.takeoff.grade import Crossing, Grade, crown_finds, grade
from estimator.takeoff.ground import ground_facts, is_wet
from estimator.takeoff.hand_shores import hand_shores
from estimator.takeoff.haul import export, spoil
from estimator.takeoff.outside_end import outside_end
from estimator.takeoff.pipe import new_pipe
from estimator.takeoff.slab_beams import strip_beams
from estimator.takeoff.slab_concrete import concrete_back, concrete_out
from estimator.takeoff.slab_room import floor_and_dust
from estimator.takeoff.trench_width import trench_width_ft
from estimator.takeoff.working import cubic_yards, up

STRIP_SOURCE = "common practice"


@dataclass(frozen=True, slots=True)
class Opening:
    """One opening in the floor: where it begins and ends inside the slab edge, and how wide, ft."""

    from_ft: float
    to_ft: float
    width_ft: float

    @property
    def length_ft(self) -> float:
        return self.to_ft - self.from_ft


def break_through(case: Case) -> tuple[Verdict, ...]:
    """A strip along the whole stretch under the floor, stopped on each side of every beam."""
    near, far = (max(0.0, end) for end in case.inside)
    return _open(case, near, far, case.number("slab_run_width_ft"))


def slab_spot(case: Case) -> tuple[Verdict, ...]:
    """One opening over a bad piece, never smaller than the firm's least spot."""
    near, far = (max(0.0, end) for end in case.inside)
    short = max(0.0, case.number("slab_spot_ft") - (far - near)) / 2
    room = case.number("spot_room_ft")
    grow = max(short, room)
    return _open(case, max(0.0, near - grow), far + grow, case.number("slab_spot_ft"))


def _open(case: Case, near: float, far: float, width: float) -> tuple[Verdict, ...]:
    ground_facts(case)
    case.paper.facts |= {"under_slab", "inside_work"}
    pipe = grade(case)
    beams = strip_beams(case, pipe, near, far)
    width = _shored_width_ft(case, pipe, near, width)
    openings = _between_beams(near, far, width, beams)
    concrete_out(case, tuple((o.length_ft, o.width_ft) for o in openings))
    bank, zone = _dig_below(case, pipe, openings, beams, (near, far))
    outside_bank, outside_native = outside_end(case, pipe)
    _fill_below(case, bank, zone, outside_bank, outside_native)
    concrete_back(case, tuple((o.length_ft, o.width_ft) for o in openings))
    floor_and_dust(case, tuple((o.length_ft, o.width_ft) for o in openings))
    new_pipe(case, tunnel=False, tests=1)
    return crown_finds(case, pipe, beams)


def _shored_width_ft(case: Case, pipe: Grade, near: float, width: float) -> float:
    """Where the sides must be held, the opening is as wide as a shored trench: people work between the shores.

    The nearer end is the deepest: the pipe falls towards the slab edge.
    """
    deep = up(below_slab_ft(case, pipe, near), case.number("dig_step_ft")) + case.slab_ft
    if not needs_system(deep + tolerance_ft(case, deep), "C", case.job.site.caving_signs):
        return width
    return max(width, trench_width_ft(case, shored=True))


def _between_beams(near: float, far: float, width: float, beams: tuple[Crossing, ...]) -> tuple[Opening, ...]:
    """The strip less the beams: a beam is never sawn; the crew digs under it by hand."""
    out, start = [], near
    for beam in beams:
        if beam.from_ft > start:
            out.append(Opening(start, min(beam.from_ft, far), width))
        start = max(start, beam.to_ft)
    if start < far:
        out.append(Opening(start, far, width))
    return tuple(out)


def below_slab_ft(case: Case, pipe: Grade, inside_ft: float) -> float:
    """Underside of the slab to the bottom of the dig: invert - slab + pipe wall + bedding."""
    return pipe.invert_ft(inside_ft) - case.slab_ft + pipe.wall_in / INCHES_PER_FT + bedding_ft(case)


def _dig_below(
    case: Case, pipe: Grade, openings: tuple[Opening, ...], beams: tuple[Crossing, ...], ends: tuple[float, float]
) -> tuple[float, float]:
    """Earth under the openings and, by hand, under the beams between them; and the pipe zone in it, cubic ft."""
    paper, width = case.paper, openings[0].width_ft if openings else case.number("slab_run_width_ft")
    near, far = ends
    step = case.number("dig_step_ft")
    at_near, at_far = (up(below_slab_ft(case, pipe, at), step) for at in (near, far))
    length = sum(o.length_ft for o in openings)
    mean = (at_near + at_far) / 2
    under = _under_beams(case, beams, near, far, width, mean)
    plain = length * width * mean
    paper.put("dig_length_ft", length, "strip less the beams", ("openings", len(openings)))
    paper.put("dig_width_ft", width, "the firm's opening")
    paper.put(
        "dig_depth_ft",
        max(at_near, at_far) + case.slab_ft,
        "invert + pipe wall + bedding, the slab taken off, up to the dig step, the slab put on again",
        ("invert, nearer end", pipe.invert_ft(near), "ft"),
        ("invert, farther end", pipe.invert_ft(far), "ft"),
        ("pipe wall", pipe.wall_in, "in"),
        ("bedding", bedding_ft(case), "ft"),
        ("slab", case.slab_ft, "ft"),
        ("dig step", step, "ft"),
    )
    paper.put(
        "inside_dig_bcy",
        cubic_yards(plain + under),
        "(length x width x mean depth below the slab + under beams) / 27",
        ("length", length, "ft"),
        ("width", width, "ft"),
        ("depth, nearer end", at_near, "ft"),
        ("depth, farther end", at_far, "ft"),
        ("under beams", under, "cu ft"),
    )
    _depth_facts(case, max(at_near, at_far) + case.slab_ft, openings)
    high = min(bedding_ft(case) + outside_ft(case) + case.number("pipe_zone_over_ft"), mean)
    return plain + under, (length + sum(_width_in(b, near, far) for b in beams)) * width * high


def _width_in(beam: Crossing, near: float, far: float) -> float:
    return max(0.0, min(beam.to_ft, far) - max(beam.from_ft, near))


def _under_beams(case: Case, beams: tuple[Crossing, ...], near: float, far: float, width: float, mean: float) -> float:
    """A short hand tunnel under each beam: its width x the opening's width x the room below the beam, at least a crawl."""
    crossed = [b for b in beams if _width_in(b, near, far) > 0]
    case.paper.put("beam_crossings", len(crossed), "beams the strip stops at; the crew digs under them by hand")
    if crossed:
        case.paper.facts.add("engineer")
        letter = any("engineer" in a.what.lower() for a in case.job.approvals)
        case.paper.put(
            "engineer_letters",
            0 if letter else 1,
            "digging under a beam",
            ("beams", len(crossed)),
            source="29 CFR 1926.651(i)(2)",
        )
        case.paper.warn("no beam is sawn or notched; the crew stops on each side and digs under it by hand")
    least = case.number("under_beam_height_ft")
    return sum(_width_in(b, near, far) * width * max(least, mean + case.slab_ft - b.bottom_ft) for b in crossed)


def _depth_facts(case: Case, depth_ft: float, openings: tuple[Opening, ...]) -> None:
    safe = depth_ft + tolerance_ft(case, depth_ft)
    case.paper.put(
        "safety_depth_ft",
        safe,
        "bottom below slab top + what the locator may be off",
        ("bottom", depth_ft, "ft"),
        ("locator", safe - depth_ft, "ft"),
    )
    if needs_ladder(safe):
        case.paper.put(
            "ladders",
            ladders(case.paper.value("dig_length_ft")),
            "nobody walks more than 25 ft sideways to one",
            case.paper.given("dig_length_ft"),
            source="29 CFR 1926.651(c)(2)",
        )
    if safe > case.number("depth_slow_from_ft"):
        case.paper.facts.add("depth_over_4")
    if needs_system(safe, "C", case.job.site.caving_signs):
        case.paper.facts.add("depth_over_5")
        hand_shores(case, sum(2 * (o.length_ft + o.width_ft) for o in openings), depth_ft)
    say_edge_and_air(case, case.stretch, safe)
    if is_wet(case, case.stretch, safe):
        case.paper.facts.add("wet")
        case.paper.put("dewater_days", case.number("slab_days_open"), "days the floor is open")


def _fill_below(case: Case, bank_cf: float, zone_cf: float, outside_bank: float, outside_native: float) -> None:
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

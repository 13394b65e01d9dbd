"""A stretch under the slab in; the tunnel to reach it, its pit, its fill and the pipe hung in it, out."""

from estimator.model.judgement import Verdict
from estimator.model.say import Feet
from estimator.model.stretch import Stretch
from estimator.takeoff.case import Case
from estimator.takeoff.haul import spoil
from estimator.takeoff.pipe import hangers, new_pipe, stands
from estimator.takeoff.tunnel_fill import fill
from estimator.takeoff.tunnel_pit import pits
from estimator.takeoff.working import cubic_yards, shown, up
from estimator.works.approach import Approach
from estimator.works.floor_cut import above_grade_ft
from estimator.works.grade import Crossing, Grade, crossings, crown_finds
from estimator.works.ground import ground_facts, is_wet
from estimator.works.slab_beams import edge_crossing
from estimator.works.tunnel_beams import TunnelBeams
from estimator.works.tunnel_plan import tunnel_plan
from estimator.works.tunnel_shape import TunnelShape

RUN_SOURCE = "common practice; 29 CFR 1926.800 or Subpart P: the competent person decides which"


def tunnel(case: Case) -> tuple[Verdict, ...]:
    """Approach, section, dips, pits, shoring sets, hangers, spoil, fill, pipe."""
    ground_facts(case)
    plan = tunnel_plan(case)
    way, pipe, beams, shape = plan.way, plan.pipe, plan.beams, plan.shape
    _write_shape(case, way, pipe, plan.plain)
    bank = _dug(case, way, shape, beams.over)
    pit_bank = pits(case, plan)
    spoil(case, bank + pit_bank)
    _shoring(case, shape)
    new_pipe(case, tunnel=True, tested=True)
    hung = max(0.0, case.inside[1] - max(0.0, case.inside[0]))
    if "slab_may_have_tendons" in case.paper.facts:
        stands(case, hung)
    else:
        hangers(case, hung)
    fill(case, bank, pit_bank)
    _people(case, way, shape, beams)
    return crown_finds(case, pipe, _over_the_pipe(case, way, pipe, beams))


def _over_the_pipe(case: Case, way: Approach, pipe: Grade, beams: TunnelBeams) -> tuple[Crossing, ...]:
    """Beams the new pipe passes: those of the log, and a known edge beam it leaves under or through."""
    noted, edge = crossings(case, way.face_ft), beams.edge
    if edge is None or edge.beam is None or not edge.beam.there or way.lead_ft or edge.said_by == "the line's log":
        return noted
    return (edge_crossing(case, pipe, edge.beam), *noted)


def _write_shape(case: Case, way: Approach, pipe: Grade, shape: TunnelShape) -> None:
    paper, below = case.paper, case.number("tunnel_under_pipe_ft")
    paper.put("tunnel_width_ft", shape.width_ft, "the firm's section", ("width", shape.width_ft, "ft"))
    for name, at, height in (
        ("tunnel_mouth_height_ft", way.mouth_ft, shape.mouth_ft),
        ("tunnel_face_height_ft", way.face_ft, shape.face_ft),
    ):
        paper.put(
            name,
            height,
            "invert below slab top + room below it - slab, at least the least height, up to the dig step",
            ("invert there", pipe.invert_ft(at), "ft"),
            ("below the invert", below, "ft"),
            ("slab", case.slab_ft, "ft"),
            ("least height", case.number("tunnel_height_min_ft"), "ft"),
        )
    paper.put(
        "exit_invert_ft", pipe.exit_invert_ft, "below the slab top where the pipe leaves the slab", ("how", pipe.how)
    )
    paper.put(
        "fall_in_per_ft",
        pipe.fall_per_ft * 12,
        "fall of the new pipe",
        ("how", pipe.how),
        source="IPC 704.1 / place row",
    )


def _dug(case: Case, way: Approach, shape: TunnelShape, beams: tuple[Crossing, ...]) -> float:
    paper, width = case.paper, shape.width_ft
    paper.put("tunnel_ft", way.length_ft, way.words, *way.inputs, source=RUN_SOURCE)
    _bands(case, way)
    paper.put(
        "tunnel_dips_cf",
        shape.dips_cf,
        "dip x its length x width, for each beam",
        ("dips, deep x long", ", ".join(f"{d.depth_ft:g} x {d.length_ft:.3f} ft" for d in shape.dips)),
        ("width", width, "ft"),
    )
    paper.put(
        "tunnel_beams_cf",
        shape.beams_cf,
        "beam below the slab x its width x tunnel width, left in",
        ("beams, drop x wide", ", ".join(f"{b.bottom_ft - case.slab_ft:.3f} x {b.width_ft:.3f} ft" for b in beams)),
        ("width", width, "ft"),
    )
    cuts = _side_cuts_cf(case, shape)
    whole = paper.put(
        "tunnel_cf",
        shape.bank_cf + cuts,
        "width x mean height x length + dips - beams left in + side cuts",
        ("width", width, "ft"),
        ("height at the mouth", shape.mouth_ft, "ft"),
        ("height at the face", shape.face_ft, "ft"),
        ("length", way.length_ft, "ft"),
        ("dips", shape.dips_cf, "cu ft"),
        ("beams left in", shape.beams_cf, "cu ft"),
        ("side cuts", cuts, "cu ft"),
        source="geometry: heights run straight from mouth to face",
    )
    return paper.put("tunnel_bcy", cubic_yards(whole), "cubic ft / 27", ("dug", whole, "cu ft"))


def _side_cuts_cf(case: Case, shape: TunnelShape) -> float:
    """A side cut only where the tie lies away from the line: tunnel width x height x that way."""
    away = [(b, b.away_ft) for b in case.branches if b.away_ft > 0]
    cuts = sum(shape.width_ft * shape.height_ft(max(0.0, case.inside_ft(b.station_ft))) * ft for b, ft in away)
    case.paper.put(
        "side_cut_ft",
        sum(ft for _, ft in away),
        "from the line to ties that lie away from it",
        ("ties away", ", ".join(f"{ft:g} ft" for _, ft in away)),
    )
    return cuts


def _bands(case: Case, way: Approach) -> None:
    """Feet by how far they lie from a pit: work goes slower the farther in."""
    first, second = case.number("tunnel_far_ft"), case.number("tunnel_farther_ft")
    reach = ", ".join(f"{shown(r)} ft" for r in way.reaches_ft)
    for name, low, high in (
        ("tunnel_ft_to_20", 0.0, first),
        ("tunnel_ft_20_to_40", first, second),
        ("tunnel_ft_over_40", second, float("inf")),
    ):
        feet = way.feet_between(low, high)
        case.paper.put(name, feet, "feet of tunnel that far from a pit", ("reach from each pit", reach))


def _shoring(case: Case, shape: TunnelShape) -> None:
    every = case.soil.shoring_every_ft
    if not case.soil.can_tunnel:
        case.paper.warn("this soil will not stand over a tunnel without full shoring: an engineer decides")
    spacing = case.number("shoring_every_weak_ft") if every is None else every
    case.paper.put(
        "shoring_sets",
        up(shape.length_ft / spacing),
        "length / spacing, up: a price allowance, not a design",
        ("length", shape.length_ft, "ft"),
        ("spacing", spacing, "ft"),
    )
    case.paper.assume("the slab spans the tunnel; supports under it are not included")


def _people(case: Case, way: Approach, shape: TunnelShape, beams: TunnelBeams) -> None:
    """The engineer's letter, water, and what is always said of a tunnel."""
    paper = case.paper
    if beams.unknown:
        paper.facts.add("edge_beam_unknown")
    asking = {"tunnel-under-a-beam": bool(beams.over), "tendons-in-the-slab": "slab_may_have_tendons" in paper.facts}
    if any(asking.values()):
        case.letter(
            "a tunnel under beams or under a slab that may have tendons",
            [rule for rule, asks in asking.items() if asks],
            ("beams crossed", len(beams.over)),
            source="29 CFR 1926.651(i)(2): a registered engineer's approval below a footing",
        )
    hole = Stretch.between(case.station(way.mouth_ft), case.station(way.face_ft))
    if is_wet(case, hole, case.slab_ft + shape.deepest_ft - above_grade_ft(case)):
        paper.facts.add("wet")
        paper.put("dewater_days", case.number("tunnel_days_open"), "days the tunnel is open")
    far_ft = max(way.reaches_ft)
    if far_ft > case.number("tunnel_exit_ft"):
        paper.warn(
            "Face {far} from the pit: second way out, or the competent person's word against it in writing.",
            far=Feet(round(far_ft, 1)),
        )
    paper.warn("nobody flushes while someone is under the house; air is tested before entry and all the time")

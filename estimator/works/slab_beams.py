"""A strip or a tunnel under the slab in; the beams to count with that no log notes, and what is said of them, out.

Silence about a beam is not "none": at the slab's edge one of the firm's usual size is counted with; across the inside
none is, and that is said.
"""

from estimator.knowledge.houses import INNER_BEAM_EVERY_FT
from estimator.model.edge_beam import KnownEdge, edge_beam
from estimator.model.job import SLAB_FLOORS, EdgeBeam
from estimator.model.say import Feet
from estimator.works.case import Case
from estimator.works.depth import INCHES_PER_FT
from estimator.works.grade import Crossing, Grade, crossings


def strip_beams(case: Case, pipe: Grade, near: float, far: float) -> tuple[Crossing, ...]:
    """Beams over an opening from `near` to `far` inside the slab edge: those of the log, and the one along the edge.

    Where the pipe does not clear the edge beam's bottom it leaves through it, as the old pipe did.
    """
    noted = tuple(b for b in crossings(case, far) if b.to_ft > near)
    if case.job.house.floor not in SLAB_FLOORS:
        return noted
    say_inner_beams(case, far - near, noted)
    known = edge_beam(case.job, case.line, case.number("edge_beam_near_ft"))
    if case.profile.slab_edge_ft is None or known.said_by == "the line's log":
        return noted
    beam = _counted_at(case, known, near)
    if beam is None:
        return noted
    return (edge_crossing(case, pipe, beam), *noted)


def edge_crossing(case: Case, pipe: Grade, beam: EdgeBeam) -> Crossing:
    """The edge beam on the pipe's way out; through it where the pipe's top does not clear the beam's bottom."""
    top = min(pipe.crown_ft(0.0), pipe.crown_ft(beam.wide_ft))
    clear = case.number("beam_clearance_in") / INCHES_PER_FT
    return Crossing(0.0, beam.wide_ft, beam.deep_ft, top - beam.deep_ft < clear)


def _counted_at(case: Case, known: KnownEdge, near: float) -> EdgeBeam | None:
    """The edge beam where the opening comes as near to the edge as the beam is wide."""
    wide = case.number("edge_beam_wide_ft") if known.beam is None else known.beam.wide_ft
    if near >= wide:
        return None
    if known.beam is None:
        case.paper.facts.add("edge_beam_unknown")
    beam = edge_counted(case, known, carried=known.said_by == "another line's log")
    return beam if beam.there else None


def edge_counted(case: Case, known: KnownEdge, *, carried: bool) -> EdgeBeam:
    """The beam counted with at the edge, and the sentence that says how it is known; `carried`: noted at another place of it."""
    if known.beam is None:
        deep, wide = case.number("edge_beam_deep_ft"), case.number("edge_beam_wide_ft")
        case.paper.assume(
            "we assume a perimeter beam {deep} deep and {wide} wide; the drawing or an uncovered edge settles it before a firm price",
            deep=Feet(deep),
            wide=Feet(wide),
        )
        return EdgeBeam(deep, wide)
    if known.beam.there and carried:
        case.paper.assume(
            "the beam noted at the building outlet, {deep} below the slab top, runs around the house",
            deep=Feet(known.beam.deep_ft),
        )
    return known.beam


def say_inner_beams(case: Case, length_ft: float, noted: tuple[Crossing, ...]) -> None:
    """A longer way under the slab than inner beams usually lie apart, and none noted on it."""
    inner = [b for b in noted if b.from_ft > case.number("edge_beam_near_ft")]
    if length_ft > INNER_BEAM_EVERY_FT and not inner:
        case.paper.assume(
            "no inside grade beam is noted over {length} and none is priced; many slabs have one about every {every}",
            length=Feet(round(length_ft, 1)),
            every=Feet(INNER_BEAM_EVERY_FT),
        )

"""A strip or a spot to open in the floor in; saw cuts, concrete out and in, the dig below, dust control, out."""

from estimator.knowledge.excavation import needs_system
from estimator.model.judgement import Verdict
from estimator.takeoff.case import Case
from estimator.takeoff.depth import tolerance_ft
from estimator.takeoff.grade import Crossing, Grade, crown_finds, grade
from estimator.takeoff.ground import ground_facts
from estimator.takeoff.outside_end import outside_end
from estimator.takeoff.pipe import new_pipe
from estimator.takeoff.slab_beams import strip_beams
from estimator.takeoff.slab_concrete import concrete_back, concrete_out
from estimator.takeoff.slab_dig import below_slab_ft, dig_below, fill_below
from estimator.takeoff.slab_room import floor_and_dust
from estimator.takeoff.strip_floor import Opening
from estimator.takeoff.trench_width import trench_width_ft
from estimator.takeoff.working import up


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
    bank, zone = dig_below(case, pipe, openings, beams, (near, far))
    outside_bank, outside_native = outside_end(case, pipe)
    fill_below(case, bank, zone, outside_bank, outside_native)
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

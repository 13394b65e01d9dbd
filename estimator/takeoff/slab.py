"""A strip or a spot to open in the floor in; saw cuts, concrete out and in, the dig below, dust control, out."""

from estimator.model.judgement import Verdict
from estimator.takeoff.case import Case
from estimator.takeoff.outside_end import outside_end
from estimator.takeoff.pipe import new_pipe
from estimator.takeoff.slab_concrete import concrete_back, concrete_out
from estimator.takeoff.slab_dig import dig_below, fill_below
from estimator.takeoff.slab_room import floor_and_dust
from estimator.works.floor_cut import FloorPlan, spot, strip
from estimator.works.grade import crown_finds
from estimator.works.ground import ground_facts


def break_through(case: Case) -> tuple[Verdict, ...]:
    """A strip along the whole stretch under the floor, stopped on each side of every beam."""
    return _open(case, strip(case))


def slab_spot(case: Case) -> tuple[Verdict, ...]:
    """One opening over a bad piece, never smaller than the firm's least spot."""
    return _open(case, spot(case))


def _open(case: Case, plan: FloorPlan) -> tuple[Verdict, ...]:
    ground_facts(case)
    case.paper.facts |= {"under_slab", "inside_work"}
    cut = tuple((c.length_ft, c.width_ft) for c in plan.cuts)
    concrete_out(case, cut)
    bank, zone = dig_below(case, plan)
    outside_bank, outside_native = outside_end(case, plan.pipe)
    fill_below(case, bank, zone, outside_bank, outside_native)
    concrete_back(case, cut)
    floor_and_dust(case, cut)
    new_pipe(case, tunnel=False, tested=True)
    return crown_finds(case, plan.pipe, plan.beams)

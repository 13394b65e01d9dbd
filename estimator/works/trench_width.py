"""What goes into the ground and how deep in; the bottom width of a trench, and the plan a hole is dug to where its sides must be held, ft, out."""

from estimator.knowledge.excavation import needs_system
from estimator.knowledge.trench import d2321_width_in
from estimator.works.case import Case
from estimator.works.depth import INCHES_PER_FT, outside_ft
from estimator.works.ground import hand_only
from estimator.works.rounding import up


def firm_width_ft(case: Case, shored: bool, outside: float) -> float:
    added = case.number("trench_clear_shored_ft" if shored else "trench_clear_ft")
    return outside + max(added, case.number("trench_clear_min_ft"))


def exact_width_ft(case: Case, shored: bool, pipe_outside_ft: float | None = None) -> float:
    """Unrounded: the larger of the two rules. Where no outside is given, that of the stretch's new pipe."""
    outside = outside_ft(case) if pipe_outside_ft is None else pipe_outside_ft
    return max(firm_width_ft(case, shored, outside), d2321_width_in(outside * INCHES_PER_FT) / INCHES_PER_FT)


def trench_width_ft(case: Case, shored: bool, pipe_outside_ft: float | None = None) -> float:
    """Up to the firm's dig step: what the crew is told."""
    return up(exact_width_ft(case, shored, pipe_outside_ft), case.number("dig_step_ft"))


Plan = tuple[float, float]
"""Length and bottom width, ft."""


def held_plan(case: Case, plan: Plan, safety_ft: float, pipe_outside_ft: float | None = None) -> Plan:
    """As it was where the sides need nothing; else as wide as people need between shores, and as large as the box.

    A hole smaller than its box is made as large as the box; by hand, boards take no more length than the hole has.
    """
    if not needs_system(safety_ft, "C", case.job.site.caving_signs):
        return plan
    long, wide = plan
    wide = max(wide, trench_width_ft(case, shored=True, pipe_outside_ft=pipe_outside_ft))
    if hand_only(case):
        return long, wide
    return max(long, case.number("box_length_ft")), max(wide, case.number("box_width_ft"))

"""A pit's or trench's plan and depth in; the plan it is really dug to where its sides must be held, out."""

from estimator.knowledge.excavation import needs_system
from estimator.works.case import Case
from estimator.works.ground import hand_only
from estimator.works.trench_width import trench_width_ft

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

"""The new pipe's outside and the depth in; the bottom width of a trench out, ft: the larger of the firm's rule and the standard's."""

from estimator.knowledge.trench import d2321_width_in
from estimator.takeoff.case import Case
from estimator.takeoff.depth import INCHES_PER_FT, outside_ft
from estimator.takeoff.working import up


def firm_width_ft(case: Case, shored: bool) -> float:
    added = case.number("trench_clear_shored_ft" if shored else "trench_clear_ft")
    return outside_ft(case) + max(added, case.number("trench_clear_min_ft"))


def exact_width_ft(case: Case, shored: bool) -> float:
    """Unrounded: the larger of the two rules."""
    return max(firm_width_ft(case, shored), d2321_width_in(outside_ft(case) * INCHES_PER_FT) / INCHES_PER_FT)


def trench_width_ft(case: Case, shored: bool) -> float:
    """Up to the firm's dig step: what the crew is told."""
    return up(exact_width_ft(case, shored), case.number("dig_step_ft"))

"""The new pipe's outside and the depth in; the bottom width of a trench out, ft: the larger of the firm's rule and the standard's."""

from estimator.knowledge.trench import d2321_width_in
from estimator.works.case import Case
from estimator.works.depth import INCHES_PER_FT, outside_ft
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

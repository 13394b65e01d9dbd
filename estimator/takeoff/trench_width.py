"""The new pipe's outside and the depth in; the bottom width of a trench out, ft: the larger of the firm's rule and the standard's."""

from estimator.takeoff.case import Case
from estimator.takeoff.depth import INCHES_PER_FT, outside_ft
from estimator.takeoff.working import up

D2321_SOURCE = "ASTM D2321: the larger of outside + 16 in and 1.25 x outside + 12 in"
D2321_ADDED_IN = 16.0
D2321_SHARE = 1.25
D2321_SHARE_ADDED_IN = 12.0


def d2321_width_in(outside_in: float) -> float:
    """The standard's least width for plastic pipe in a trench, inches; the two rules meet at 16 in.

    >>> d2321_width_in(4.5), d2321_width_in(16.0), d2321_width_in(20.0)
    (20.5, 32.0, 37.0)
    """
    return max(outside_in + D2321_ADDED_IN, D2321_SHARE * outside_in + D2321_SHARE_ADDED_IN)


def firm_width_ft(case: Case, shored: bool) -> float:
    added = case.number("trench_clear_shored_ft" if shored else "trench_clear_ft")
    return outside_ft(case) + max(added, case.number("trench_clear_min_ft"))


def exact_width_ft(case: Case, shored: bool) -> float:
    """Unrounded: the larger of the two rules."""
    return max(firm_width_ft(case, shored), d2321_width_in(outside_ft(case) * INCHES_PER_FT) / INCHES_PER_FT)


def trench_width_ft(case: Case, shored: bool) -> float:
    """Up to the firm's dig step: what the crew is told."""
    return up(exact_width_ft(case, shored), case.number("dig_step_ft"))

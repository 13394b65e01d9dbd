"""A firm that wants eight of ten jobs inside its price, and an option that holds in six."""

from pathlib import Path

from estimator.model.likely_range import LikelyRange
from estimator.model.problem import Problem
from estimator.pricing.likely_range import too_little


def problems(_folder: Path) -> list[Problem]:
    found = LikelyRange(
        seed=1, draws=100, cost={}, days={}, mean_cost=1000.0, drivers=(), confidence_percent=80.0,
        contingency_needed_percent=14.26, contingency_percent=8.0, held_chance_percent=61.0,
    )  # fmt: skip
    problem = too_little("B", found)
    assert problem is not None
    return [problem]

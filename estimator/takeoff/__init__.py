"""Step 4: a repair in, its quantities out, each with its formula and inputs."""

from typing import TYPE_CHECKING

from estimator.model.on_demand import on_demand

if TYPE_CHECKING:
    from estimator.takeoff.asked_by_rules import follows_days_off
    from estimator.takeoff.job import take_off_job
    from estimator.takeoff.rented import on_rent, rented_for
    from estimator.takeoff.takeoff import measure_with, take_off

__all__ = ["follows_days_off", "measure_with", "on_rent", "rented_for", "take_off", "take_off_job"]
HOMES = {
    "follows_days_off": "asked_by_rules",
    "measure_with": "takeoff",
    "on_rent": "rented",
    "rented_for": "rented",
    "take_off": "takeoff",
    "take_off_job": "job",
}
__getattr__ = on_demand(__name__, HOMES)

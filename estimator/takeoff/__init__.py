"""Step 4: a repair in, its quantities out, each with its formula and inputs."""

from estimator.takeoff.asked import follows_days_off
from estimator.takeoff.job import take_off_job
from estimator.takeoff.takeoff import measure_with, take_off
from estimator.takeoff.together import together
from estimator.works.problems import PROBLEMS

__all__ = ["PROBLEMS", "follows_days_off", "measure_with", "take_off", "take_off_job", "together"]

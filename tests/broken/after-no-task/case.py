"""A task mistyped."""

import os
import tempfile
from pathlib import Path

from estimator.model.problem import CannotGoOn
from estimator.pricing.actuals import Actual
from estimator.records.afterwards.actuals import keep
from tests.made_up.sold import issued


def problems(folder):
    with tempfile.TemporaryDirectory() as desk:
        os.chdir(desk)
        try:
            keep(Path("larkspur"), issued(Path("larkspur")), [Actual(task="tunel dig", hours=3)], None)
        except CannotGoOn as stop:
            return stop.problems
        finally:
            os.chdir(folder)
    raise AssertionError("it was not refused")

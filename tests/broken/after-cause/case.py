"""A cause of its own making."""

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
            late = Actual(task="tunnel dig", hours=3, cause="the truck was late")
            keep(Path("larkspur"), issued(Path("larkspur")), [late], None)
        except CannotGoOn as stop:
            return stop.problems
        finally:
            os.chdir(folder)
    raise AssertionError("it was not refused")

"""Nothing was signed, and no option is named."""

import os
import tempfile
from pathlib import Path

from estimator.model.problem import CannotGoOn
from estimator.records.afterwards.sold import sold
from tests.made_up.sold import issued


def problems(folder):
    with tempfile.TemporaryDirectory() as desk:
        os.chdir(desk)
        try:
            issued(Path("larkspur"), letter="")
            sold(Path("larkspur"))
        except CannotGoOn as stop:
            return stop.problems
        finally:
            os.chdir(folder)
    raise AssertionError("it was not refused")

"""The change order to the very revision that was signed."""

import os
import tempfile
from datetime import date
from pathlib import Path

from estimator.model.problem import CannotGoOn
from estimator.records.afterwards.purchase import order_entries
from tests.made_up.sold import issued


def problems(folder):
    with tempfile.TemporaryDirectory() as desk:
        os.chdir(desk)
        try:
            order_entries(Path("larkspur"), issued(Path("larkspur")), "r1", date(2026, 12, 1), ())
        except CannotGoOn as stop:
            return stop.problems
        finally:
            os.chdir(folder)
    raise AssertionError("it was not refused")

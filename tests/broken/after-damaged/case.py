"""A file of hours cut short."""

import os
import tempfile
from pathlib import Path

from estimator.model.problem import CannotGoOn
from estimator.records.afterwards.actuals import NAME, worked
from tests.made_up.sold import issued


def problems(folder):
    with tempfile.TemporaryDirectory() as desk:
        os.chdir(desk)
        try:
            issued(Path("larkspur"))
            (Path("larkspur") / NAME).write_text('{"revision": 1, "option": "A", "ent')
            worked(Path("larkspur"))
        except CannotGoOn as stop:
            return stop.problems
        finally:
            os.chdir(folder)
    raise AssertionError("it was not refused")

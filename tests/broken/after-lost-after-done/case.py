"""A job that was built is noted as lost."""

import os
import tempfile
from datetime import date
from pathlib import Path

from estimator.model.problem import CannotGoOn
from estimator.records.afterwards.lost import lose
from estimator.records.finished import finish
from tests.made_up.sold import issued


def problems(folder):
    with tempfile.TemporaryDirectory() as desk:
        os.chdir(desk)
        try:
            issued(Path("larkspur"))
            finish(Path("larkspur"), date(2026, 12, 5))
            lose(Path("larkspur"), date(2026, 12, 6), "too dear")
        except CannotGoOn as stop:
            return stop.problems
        finally:
            os.chdir(folder)
    raise AssertionError("it was not refused")

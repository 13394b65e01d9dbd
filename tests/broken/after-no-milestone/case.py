"""A payment nobody agreed on."""

import os
import tempfile
from pathlib import Path

from estimator.model.problem import CannotGoOn
from estimator.records.afterwards.money import milestone, money
from tests.made_up.sold import issued


def problems(folder):
    with tempfile.TemporaryDirectory() as desk:
        os.chdir(desk)
        try:
            done = issued(Path("larkspur"))
            milestone(money(Path("larkspur"), done), "second deposit", Path("larkspur"))
        except CannotGoOn as stop:
            return stop.problems
        finally:
            os.chdir(folder)
    raise AssertionError("it was not refused")

"""A payment from before the signature."""

import os
import tempfile
from dataclasses import replace
from datetime import date
from pathlib import Path
from types import SimpleNamespace

from estimator.cli.job_money import doubts
from estimator.records.afterwards.money import money
from tests.made_up.sold import issued


def problems(folder):
    with tempfile.TemporaryDirectory() as desk:
        os.chdir(desk)
        try:
            here = Path("larkspur")
            done = replace(issued(here), signed=None)
            state = money(here, done)
            signed = replace(done, signed=SimpleNamespace(on="2026-11-20"))
            return doubts(here, signed, state, state.milestones[0].name, "1", date(2026, 11, 19))
        finally:
            os.chdir(folder)

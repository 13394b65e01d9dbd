"""Minutes are typed where hours are asked for."""

import tempfile
from decimal import Decimal
from pathlib import Path

from estimator.pricing.actuals import Actual
from estimator.records.afterwards.crew_hours import far_from_estimate
from tests.made_up.sold import issued


def problems(folder):
    with tempfile.TemporaryDirectory() as desk:
        done = issued(Path(desk) / "larkspur")
        first = done.tasks[0]
        entries = [Actual(task=first.task, hours=first.hours * 60)]
        return far_from_estimate(Path("larkspur"), done, entries, done.days * 10 + Decimal(20))

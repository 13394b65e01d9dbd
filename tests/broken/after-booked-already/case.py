"""The same check number comes in a second time, two days later."""

import os
import tempfile
from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

from estimator.cli.job_money import twice
from estimator.pricing.ledger import Entry
from estimator.records.afterwards.money import money, note
from tests.made_up.sold import issued


def problems(folder):
    with tempfile.TemporaryDirectory() as desk:
        os.chdir(desk)
        try:
            here = Path("larkspur")
            done = issued(here)
            name = money(here, done).milestones[0].name
            paid = Entry(day=date(2026, 12, 1), kind="payment", text=name, amount=Decimal(1000), reference="123")
            before = note(here, done, [paid])
            later = replace(paid, day=date(2026, 12, 3))
            return twice(here, before, note(here, done, [later]), typed=True)
        finally:
            os.chdir(folder)

"""More came in for a payment than was agreed."""

import os
import tempfile
from datetime import date
from decimal import Decimal
from pathlib import Path

from estimator.cli.job_money import doubts
from estimator.pricing.ledger import Entry
from estimator.records.afterwards.money import money, note
from tests.made_up.sold import issued


def problems(folder):
    with tempfile.TemporaryDirectory() as desk:
        os.chdir(desk)
        try:
            here, day = Path("larkspur"), date(2026, 12, 1)
            done = issued(here)
            first = money(here, done).milestones[0]
            paid = Entry(day=day, kind="payment", text=first.name, amount=first.amount + Decimal("0.01"))
            return doubts(here, done, note(here, done, [paid]), first.name, str(paid.amount), day)
        finally:
            os.chdir(folder)

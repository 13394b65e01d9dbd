"""The demo tables as of the worked examples' day, and short ways to write a house, a line and its marks."""

from datetime import date

import pytest

from estimator.tables.read import demo_folder, read_tables
from estimator.tables.tables import Tables


@pytest.fixture(scope="session")
def tables() -> Tables:
    reading = read_tables(demo_folder(), date(2026, 11, 25))
    assert reading.tables is not None, reading.problems
    return reading.tables

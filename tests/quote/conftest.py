"""The hand-made example's scopes as chosen options, and the demo tables."""

import pytest

from estimator.quote import Chosen
from estimator.tables import Tables, demo_folder, read_tables
from tests.made_up.quote import example_quote


@pytest.fixture(scope="session")
def tables() -> Tables:
    reading = read_tables(demo_folder(), example_quote().day)
    assert reading.tables is not None, reading.problems
    return reading.tables


@pytest.fixture
def chosen() -> tuple[Chosen, ...]:
    return tuple(
        Chosen(
            scope=o.scope, takeoffs=o.takeoffs, price=o.price, days_on_site=o.days_on_site, days_without_drains=o.days_without_drains,
            floor_sf=o.floor_sf, yard_sf=o.yard_sf, old_pipe_left_ft=o.old_pipe_left_ft, payments=o.payments,
        )
        for o in example_quote().options
    )  # fmt: skip

"""Prices of everyday jobs against what such jobs cost (from memory), and the page that shows both."""

from itertools import pairwise

import pytest

from tests.everyday.all_everyday import TEN, Everyday
from tests.everyday.depth_curve import curve
from tests.everyday.page import PAGE, price_check_page


@pytest.mark.parametrize("one", TEN, ids=lambda one: one.folder)
def test_an_everyday_job_costs_what_such_jobs_cost(one: Everyday) -> None:
    option = one.option()
    assert option.fixed
    assert one.low <= option.price.total <= one.high


def test_the_page_shows_todays_prices() -> None:
    """Write it anew with  python -m tests.everyday.page"""
    assert PAGE.read_text("utf-8") == price_check_page()


@pytest.mark.parametrize("method", ["trench", "burst"])
def test_a_step_over_a_half_day_is_one_that_a_crew_sees(method: str) -> None:
    """From 3 to 6 ft: no step of more than a half day of each crew but where boxes begin, and never less for a deeper pipe
    than a truck load, which packed fill takes back. A day more of the excavator, two boxes and two end shields costs 320 + 2 x 140 +
    2 x 45 = 690, with small parts, contingency of 5 % and a margin of 40 % some 1,250."""
    points = curve(method)
    for before, now in pairwise(points):
        step = now.price - before.price
        assert step >= -350
        assert step <= (1250 if now.box_days > before.box_days else 900) or "boxed" in now.facts - before.facts

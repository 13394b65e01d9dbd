"""Prices of everyday jobs against what such jobs cost (from memory), and the page that shows both."""

import pytest

from tests.everyday.all_everyday import TEN, Everyday
from tests.everyday.page import PAGE, price_check_page


@pytest.mark.parametrize("one", TEN, ids=lambda one: one.folder)
def test_an_everyday_job_costs_what_such_jobs_cost(one: Everyday) -> None:
    option = one.option()
    assert option.fixed
    assert one.low <= option.price.total <= one.high


def test_the_page_shows_todays_prices() -> None:
    """Write it anew with  python -m tests.everyday.page"""
    assert PAGE.read_text("utf-8") == price_check_page()

"""The office's range says which cost it is about: our own work, and how much subs and fees come to besides."""

from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.cli.views.likely_range import priced_on
from estimator.cli.views.words import Words
from estimator.model.likely_range import LikelyRange
from estimator.model.offer import Option
from estimator.papers.office_range import range_sheet
from tests.made_up.quote import example_quote

OWN = example_quote().options[0]
RANGE = LikelyRange(
    seed=1, draws=100, cost={50: 8700.0}, days={50: 7.5}, mean_cost=8700.0, drivers=(("soil", 100.0),), confidence_percent=80.0,
    contingency_needed_percent=9.0, contingency_percent=10.0, curve=((10, 8000.0, 7.0), (90, 9500.0, 9.0)),
)  # fmt: skip


def with_a_fee() -> Option:
    """A permit at $150 beside the cost of our own work."""
    fee = replace(
        OWN.price.costs[0], part="fee", ref="permit", amount=Decimal(150), rate=Decimal(150), price_class="pass-through"
    )
    return replace(OWN, price=replace(OWN.price, costs=(*OWN.price.costs, fee)))


@pytest.mark.parametrize(
    ("option", "said"),
    [
        (OWN, ("$8,602, all of it our own work", "$8,601.80 in the price, all of it our own work")),
        (with_a_fee(), ("$8,602 for our own work. Subs, fees and allowances cost $150 more", "cost $150.00 more")),
    ],
)
def test_the_range_says_what_it_leaves_out(option: Option, said: tuple[str, str]) -> None:
    on_the_terminal, on_the_sheet = said
    assert on_the_terminal in priced_on(option, Words())
    quote = replace(example_quote(), options=(replace(option, likely_range=RANGE),))
    shown = " ".join(str(cell.value) for row in range_sheet(quote).rows for cell in row.cells)
    assert on_the_sheet in shown

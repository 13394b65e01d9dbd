"""Money: one rounding, and a way to spread a total that loses no cent."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.model.money import cents, exact, spread, to_step, up_to

AMOUNTS = st.decimals(min_value=-100_000, max_value=1_000_000, places=2)
WEIGHTS = st.lists(st.decimals(min_value=0, max_value=1000, places=3), min_size=1, max_size=12)


@pytest.mark.parametrize(
    ("value", "shown"), [("0.005", "0.01"), ("0.0049", "0.00"), ("-0.005", "-0.01"), ("2.675", "2.68")]
)
def test_half_a_cent_goes_away_from_zero(value: str, shown: str) -> None:
    assert cents(value) == Decimal(shown)


def test_a_float_is_taken_as_it_is_written() -> None:
    assert exact(1.005) == Decimal("1.005")
    assert cents(1.005) == Decimal("1.01")


@pytest.mark.parametrize(
    ("value", "rounded"), [("4193.81", "4200"), ("4200", "4200"), ("4200.01", "4225"), ("16519.97", "16525")]
)
def test_a_price_goes_up_to_the_next_step(value: str, rounded: str) -> None:
    assert up_to(Decimal(value), Decimal(25)) == Decimal(rounded)


@given(AMOUNTS, WEIGHTS)
def test_the_parts_of_a_spread_sum_to_the_total(total: Decimal, weights: list[Decimal]) -> None:
    if sum(weights) == 0:
        with pytest.raises(ValueError, match="sum above zero"):
            spread(total, weights)
        return
    parts = spread(total, weights)
    assert sum(parts) == total
    assert all(p == cents(p) for p in parts)


@given(st.decimals(min_value=0, max_value=100_000, places=2), WEIGHTS.filter(lambda w: sum(w) > 0))
def test_no_part_of_a_spread_is_a_cent_off_its_share(total: Decimal, weights: list[Decimal]) -> None:
    whole = sum(weights)
    for part, weight in zip(spread(total, weights), weights, strict=True):
        assert abs(part - total * weight / whole) < Decimal("0.01") + Decimal("1e-9")


def test_a_negative_weight_is_refused() -> None:
    with pytest.raises(ValueError, match="zero or more"):
        spread(Decimal(10), [1, -1, 3])


@given(AMOUNTS)
def test_rounding_twice_changes_nothing(value: Decimal) -> None:
    assert to_step(to_step(value, Decimal(1)), Decimal(1)) == to_step(value, Decimal(1))

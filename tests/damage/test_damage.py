"""Damage drawn afresh at every run, the seed in the message: nothing changes a price in silence, and what `check` passes prices.

The whole run is `python -m tests.damage`.
"""

import os

import pytest

from tests.damage.outcome import outcome, priced
from tests.damage.sample import some

SEED = int(os.environ.get("ESTIMATOR_DAMAGE_SEED") or int.from_bytes(os.urandom(3)))
COUNT, PRICED = 60, 3


@pytest.fixture(scope="module", name="ended")
def _ended():
    return [(damage, *outcome(damage)) for damage in some(SEED, COUNT)]


def test_every_damage_is_named_or_leaves_the_price_or_is_shown_by_changes(ended) -> None:
    silent = [str(damage) for damage, how, _ in ended if how == "silent"]
    assert not silent, f"seed {SEED}"
    assert {how for _, how, _ in ended} >= {"named", "same"}, f"seed {SEED}"


def test_what_check_passes_options_prices(ended) -> None:
    passed = [(damage, found.tables) for damage, how, found in ended if found.tables is not None and how != "same"]
    assert passed, f"seed {SEED}"
    for damage, tables in passed[:PRICED]:
        assert priced(tables, "j10-chestnut") == "", f"{damage}, seed {SEED}"

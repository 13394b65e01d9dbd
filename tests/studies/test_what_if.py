"""A fact or a setting changed, and what that does to the options; the job itself stays as it is."""

from datetime import date
from decimal import Decimal

import pytest

from estimator.studies.what_if import changed, what_if
from tests.worked import worked_tables

DAY = date(2026, 11, 18)


def test_hard_ground_makes_the_tunnel_dearer(house, tables) -> None:
    job = house("pecan")
    found = what_if(job, worked_tables(tables), DAY, {"house.soil": "hard clay"})
    tunnel = next(m for m in found.moved if m.methods == ("tunnel",))
    assert tunnel.before == Decimal("16525.00")
    assert tunnel.difference is not None and tunnel.difference > 0
    assert job == house("pecan")


def test_a_setting_may_be_changed_for_one_look(house, tables) -> None:
    found = what_if(house("pecan"), tables, DAY, {"settings.round_price_to": "500"})
    assert {m.after % 500 for m in found.moved if m.after is not None} == {0}


def test_nothing_changed_moves_nothing(house, tables) -> None:
    assert {m.difference for m in what_if(house("pecan"), tables, DAY, {}).moved} == {Decimal(0)}


@pytest.mark.parametrize("word", ["soil", "house.colour", "settings", "garden.soil"])
def test_a_word_nobody_knows_is_refused(house, word: str) -> None:
    with pytest.raises(KeyError, match=word):
        changed(house("pecan"), {word: "x"})

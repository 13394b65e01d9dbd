"""The same stretch by each way: totals, classes, what is not the same work, the sentence that decides."""

from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.model.stretch import Stretch, joined
from estimator.model.work import all_repairs
from estimator.studies.compare import compare
from tests.worked import worked_tables

YARD_OF_ALDER = Stretch(-74.633333, -21.133333)
"""From the far end to where the yard is sound again."""


def column(comparison, method: str):
    return next(c for c in comparison.columns if c.method == method)


def test_the_tunnel_of_the_hand_worked_house_costs_what_was_worked_by_hand(house, tables) -> None:
    found = compare(house("pecan"), worked_tables(tables))
    assert (found.line, found.stretch) == ("main", Stretch(-2, 27))
    assert column(found, "tunnel").option.price.total == Decimal("16525.00")


@pytest.mark.parametrize("name", ["maple", "pecan", "alder", "j05-alderwood"])
def test_the_dollars_of_the_four_classes_are_the_price(house, tables, name: str) -> None:
    for there in compare(house(name), tables).open:
        assert sum(amount for _, amount in there.by_class) == there.option.price.total


@pytest.mark.parametrize("name", ["maple", "pecan", "alder"])
def test_every_column_renews_the_same_stretch(house, tables, name: str) -> None:
    found = compare(house(name), tables)
    for there in found.open:
        assert joined(r.stretch for r in all_repairs(there.option.scope.repairs)) == (found.stretch,)


def test_a_liner_over_a_missing_bottom_stays_visible_with_its_reason(house, tables) -> None:
    found = column(compare(house("pecan"), tables), "reline")
    assert found.option is None
    assert found.against.rule == "bottom-gone-dig-first"


def test_what_leaves_a_dip_is_not_the_same_work(house, tables) -> None:
    """Lining and bursting keep the old grade, common practice."""
    found = compare(house("alder"), tables, "main", YARD_OF_ALDER)
    assert column(found, "trench").differs == ()
    for method in ("reline", "burst"):
        assert any("leaves 1 of the bad places" in str(say) for say in column(found, method).differs)


def test_the_difference_is_told_in_square_feet_of_her_own_floor(house, tables) -> None:
    job = house("pecan")
    hers = replace(job, house=replace(job.house, floor_price_sf=Decimal(20)))
    found = compare(hers, tables)
    more = column(found, "tunnel").option.price.total - column(found, "break-through").option.price.total
    said = " ".join(str(s) for s in found.decides)
    assert f"${more:,}" in said
    assert f"about {round(more / 20)} sq ft" in said


def test_without_a_floor_price_the_sheet_says_ask(house, tables) -> None:
    assert "ask" in str(compare(house("pecan"), tables).decides[-1])


def test_columns_stand_in_order_of_the_all_in_price(house, tables) -> None:
    prices = [c.option.all_in for c in compare(house("alder"), tables).open]
    assert prices == sorted(prices)


def test_a_stretch_and_ways_may_be_named(house, tables) -> None:
    found = compare(house("maple"), tables, "main", Stretch(30, 48), ("trench",))
    assert [c.method for c in found.columns] == ["trench"]
    assert found.stretch == Stretch(30, 48)


def test_a_line_with_nothing_to_dig_has_no_comparison(house, tables) -> None:
    assert compare(house("clean-line"), tables) is None


def test_a_way_round_without_enough_fall_stays_visible_with_its_reason(house, tables) -> None:
    found = column(compare(house("j05-near-no-fall"), tables), "reroute")
    assert found.option is None
    assert "in" in str(found.against.estimator)


def test_without_a_line_the_question_is_tunnel_or_floor_where_something_is_wrong_under_a_slab(tables) -> None:
    """The yard line of this house would have answered more bad places at once."""
    from pathlib import Path

    from estimator import demo
    from estimator.fieldnotes import read_job

    job = read_job(Path(demo.__file__).parent / "job.toml").job
    found = compare(job, tables)
    assert found.line != "yard"
    assert {"tunnel", "break-through"} <= {c.method for c in found.columns}
    assert compare(job, tables, "yard").line == "yard"

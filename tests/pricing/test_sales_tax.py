"""Sales tax by the kind of place: who pays it, on what, and what an unanswered place says."""

from collections.abc import Callable
from decimal import Decimal

import pytest

from estimator.model.wanted import Discount
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

D = Decimal
Scope = tuple[Takeoff, ...]
Place = Callable[..., PlaceRow]


def test_where_the_contractor_pays_the_tax_is_a_cost_and_none_is_charged(
    maple: Scope, tables: Tables, place: PlaceRow
) -> None:
    price = price_scope(maple, tables, place)
    assert [c.amount for c in price.costs if c.part == "tax"] == [D("25.38")]
    assert (price.tax, "; ".join(map(str, price.tax_says))) == (D(0), "")


def test_on_separated_materials_the_homeowner_pays_it_on_their_price(
    maple: Scope, tables: Tables, make_place: Place
) -> None:
    price = price_scope(maple, tables, make_place(tax_kind="separated"))
    # direct 2,310.75 − 25.38 = 2,285.37; sold 3,999.40; materials 307.65 of it sold for 538.39, × 8.25 % = 44.42 [computed]
    assert price.direct == D("2285.37")
    assert price.tax == D("44.42")
    assert price.total == D("4150.00") + D("44.42")
    assert sum(line.amount for line in price.lines) == price.total - price.tax
    assert "ask a tax adviser" in "; ".join(map(str, price.tax_says))


def test_on_the_whole_charge_all_but_what_is_passed_on_is_taxed(
    maple: Scope, tables: Tables, make_place: Place
) -> None:
    price = price_scope(maple, tables, make_place(tax_kind="whole charge"))
    assert price.tax == D("330.00")  # (4,150 − 150) × 8.25 % [computed]
    assert price.total == D("4480.00")


def test_a_discount_comes_off_before_the_whole_charge_is_taxed(maple: Scope, tables: Tables, make_place: Place) -> None:
    off = [Discount(reason="neighbour", amount=D(100))]
    price = price_scope(maple, tables, make_place(tax_kind="whole charge"), discounts=off)
    assert price.tax == D("321.75")  # (4,150 − 100 − 150) × 8.25 % [computed]
    assert price.total == D("4371.75")


def test_no_tax_is_no_tax_and_needs_no_rate(maple: Scope, tables: Tables, make_place: Place) -> None:
    price = price_scope(maple, tables, make_place(tax_kind="none", tax_percent=None))
    assert (price.tax, price.direct, price.warnings) == (D(0), D("2285.37"), ())


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"tax_kind": ""}, "the kind of sales tax is not answered"),
        ({"tax_percent": None}, "the rate of sales tax is not answered"),
    ],
)
def test_a_place_that_did_not_answer_is_named(
    changes: dict[str, object], words: str, maple: Scope, tables: Tables, make_place: Place
) -> None:
    price = price_scope(maple, tables, make_place(**changes))
    assert words in str(price.warnings[0])
    assert price.tax == 0


def test_a_job_without_a_place_says_so(maple: Scope, tables: Tables) -> None:
    assert "place is not known" in str(price_scope(maple, tables, None).warnings[0])

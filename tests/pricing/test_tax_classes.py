"""Work that a place taxes in its own way: its own rate, no tax at all, or not answered, which is never a silent zero."""

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.model.money import cents
from estimator.model.price import Price
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.rough import rough_cost, smooth_price
from estimator.pricing.total import total_of
from estimator.scopes.least_price import LeastPrice
from estimator.tables.rows import PlaceRow, TaxClass, WorkItem
from estimator.tables.tables import Tables

D = Decimal
Scope = tuple[Takeoff, ...]
Place = Callable[..., PlaceRow]


def with_class(tables: Tables, item: str, kind: str, percent: Decimal | None, place: PlaceRow) -> Tables:
    """The same tables, one work item in a tax class of its own that this place has a row for."""
    items = tuple(replace(row, tax_class="apart") if isinstance(row, WorkItem) and row.item == item else row for row in tables.rows["work_items"])  # fmt: skip
    assert items != tables.rows["work_items"]
    row = TaxClass(place=place.place, tax_class="apart", tax_kind=kind, tax_percent=percent, source="test", asked_whom="", checked_on=None)  # fmt: skip
    return replace(tables, rows={**tables.rows, "work_items": items, "tax_classes": (row,)})


@pytest.fixture
def where(make_place: Place) -> PlaceRow:
    return make_place(tax_kind="whole charge")


@pytest.fixture
def plain_price(maple: Scope, tables: Tables, where: PlaceRow) -> Price:
    return price_scope(maple, tables, where)


def share(price: Price, tables: Tables) -> tuple[str, Decimal]:
    """A work item of the price that is neither handed on at cost nor mobilizing, and what it is sold for."""
    line = next(line for line in price.lines if line.price_class == "own" and line.work_class == "put back")
    return line.work_item, line.amount


def test_work_that_is_not_taxed_leaves_the_base(
    maple: Scope, tables: Tables, where: PlaceRow, plain_price: Price
) -> None:
    item, amount = share(plain_price, tables)
    price = price_scope(maple, with_class(tables, item, "none", None, where), where)
    assert plain_price.tax == D("330.00")  # (4,150 − 150) × 8.25 % [computed]
    assert price.tax == cents((D("4000.00") - amount) * D("0.0825"))
    assert price.warnings == ()


def test_work_with_a_rate_of_its_own_is_taxed_at_it(
    maple: Scope, tables: Tables, where: PlaceRow, plain_price: Price
) -> None:
    item, amount = share(plain_price, tables)
    price = price_scope(maple, with_class(tables, item, "whole charge", D("2"), where), where)
    usual = cents((D("4000.00") - amount) * D("0.0825"))
    assert price.tax == usual + cents(amount * D("0.02"))
    assert price.total == D("4150.00") + price.tax
    assert "apart 2% on" in "; ".join(map(str, price.tax_says)) and "ask a tax adviser" in "; ".join(
        map(str, price.tax_says)
    )


@pytest.mark.parametrize(("kind", "percent"), [("", None), ("", D("5")), ("whole charge", None)])
def test_a_class_nobody_asked_about_is_named_to_the_office(
    kind: str, percent: Decimal | None, maple: Scope, tables: Tables, where: PlaceRow, plain_price: Price
) -> None:
    item, _ = share(plain_price, tables)
    price = price_scope(maple, with_class(tables, item, kind, percent, where), where)
    assert [str(w) for w in price.warnings] == [
        f"{where.place}: sales tax on apart is not answered; it is not in this price"
    ]


def test_a_fee_handed_on_at_cost_leaves_the_base_once(
    maple: Scope, tables: Tables, where: PlaceRow, plain_price: Price
) -> None:
    fee = next(line.work_item for line in plain_price.lines if line.price_class == "pass-through")
    price = price_scope(maple, with_class(tables, fee, "none", None, where), where)
    assert price.tax == plain_price.tax


def test_where_the_firm_pays_the_tax_when_buying_a_class_changes_nothing(
    maple: Scope, tables: Tables, place: PlaceRow
) -> None:
    before = price_scope(maple, tables, place)
    item, _ = share(before, tables)
    after = price_scope(maple, with_class(tables, item, "none", None, place), place)
    assert (after.total, after.tax, after.costs) == (before.total, before.tax, before.costs)


def test_materials_of_work_with_a_rate_of_its_own_are_taxed_once_where_materials_are_taxed_apart(
    maple: Scope, tables: Tables, make_place: Place
) -> None:
    apart = make_place(tax_kind="separated")
    price = price_scope(maple, with_class(tables, "sod", "whole charge", D("2"), apart), apart)
    sod = next(line.amount for line in price.lines if line.work_item == "sod")
    # materials 293.00 less 60 sq ft of sod at 0.95 = 57.00 are 236.00; small parts 5 % on them 11.80: 247.80 bought.
    # Sold in proportion: 3,999.40 × 247.80 ÷ 2,285.37 = 433.65, × 8.25 % = 35.78 [computed]
    assert price.tax == D("35.78") + (sod * D("0.02")).quantize(D("0.01"))
    assert "materials sold for $433.65" in "; ".join(map(str, price.tax_says))


@pytest.mark.parametrize("kind", ["separated", "whole charge", "none"])
def test_the_smooth_price_taxes_work_in_its_own_way_as_the_price_does(
    kind: str, maple: Scope, tables: Tables, make_place: Place
) -> None:
    """All work at 2 % is the untaxed price × 1.02, and all work untaxed is the untaxed price, whatever the place's usual way."""
    place = make_place(tax_kind=kind)
    untaxed = smooth_price(maple, tables, make_place(tax_kind="none"))
    for own_kind, percent, times in (("none", None, 1.0), ("", None, 1.0), ("whole charge", D("2"), 1.02)):
        own = tables
        for item in tables.work_items:
            own = with_class(own, item.item, own_kind, percent, place)
        assert smooth_price(maple, own, place) == pytest.approx(untaxed * times)


def test_the_sum_for_the_search_stays_below_the_price_where_materials_are_taxed_but_not_those_of_some_work(
    make_takeoff: Callable[..., Takeoff], job_takeoff: Takeoff, tables: Tables, make_place: Place
) -> None:
    apart = make_place(tax_kind="separated")
    own = with_class(tables, "sod", "none", None, apart)
    scope = (make_takeoff("yard spot", dig_bcy=4, sod_sf=20000), job_takeoff)
    rough = [rough_cost(t, own, apart) for t in scope]
    summed = sum(r.cents for r in rough) + sum(dict(pair for r in rough for pair in r.shared).values())
    price = total_of(scope, own, apart)
    assert int(price.total * 100) >= summed - LeastPrice({"all": price}, {"all": 0}, {}, own).slack

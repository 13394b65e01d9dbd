"""Maple and Pecan to the cent: the figures of docs/worked-examples.md, each of them [computed] by hand there."""

from decimal import Decimal

import pytest

from estimator.model.price import Price
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.tables.rows import PlaceRow
from estimator.tables.tables import Tables

D = Decimal


@pytest.fixture(scope="module")
def maple_price(maple: tuple[Takeoff, ...], tables: Tables, place: PlaceRow) -> Price:
    return price_scope(maple, tables, place)


@pytest.fixture(scope="module")
def pecan_price(pecan: tuple[Takeoff, ...], tables: Tables, place: PlaceRow) -> Price:
    return price_scope(pecan, tables, place)


def part_sum(price: Price, *parts: str) -> Decimal:
    return sum((c.amount for c in price.costs if c.part in parts), D(0))


def crew(price: Price, name: str) -> tuple[float, float, Decimal, Decimal, Decimal]:
    c = next(c for c in price.crews if c.crew == name)
    return round(c.work_hours, 2), c.setup_hours, c.days, c.hours, c.amount


def test_maple_takes_each_crew_a_day(maple_price: Price) -> None:
    assert crew(maple_price, "A") == (5.28, 1, D("1.0"), D("8.0"), D("633.60"))
    assert crew(maple_price, "D") == (3.34, 1, D("1.0"), D("8.0"), D("549.12"))


def test_maple_costs_what_the_page_says(maple_price: Price) -> None:
    bought = {c.ref: c.amount for c in maple_price.costs if c.part == "material"}
    assert bought == {"pvc-4": D(42), "coupling-4": D(48), "sand": D(56), "sand-delivery": D(90), "sod": D(57)}
    assert part_sum(maple_price, "labor") == D("1182.72")
    assert part_sum(maple_price, "equipment") == D("635.00")
    assert part_sum(maple_price, "material", "small parts") == D("307.65")
    assert part_sum(maple_price, "tax") == D("25.38")
    assert maple_price.direct == D("2310.75")


def test_maple_sells_for_4200(maple_price: Price) -> None:
    steps = {s.text: s.amount for s in maple_price.steps}
    assert steps["contingency on own"] == D("115.54")
    assert steps["price of class own"] == D("4043.81")
    assert maple_price.before_rounding == D("4193.81")
    assert maple_price.total == D("4200.00")


def test_pecan_takes_seven_days_and_a_half_and_three(pecan_price: Price) -> None:
    assert crew(pecan_price, "B") == (52.1, 8, D("7.5"), D("60.0"), D("4752.00"))
    assert crew(pecan_price, "A") == (19.55, 3, D("3.0"), D("24.0"), D("1900.80"))


def test_pecan_costs_what_the_page_says(pecan_price: Price) -> None:
    bought = [c.amount for c in pecan_price.costs if c.part == "material"]
    assert sorted(bought) == sorted(map(D, ("168", "54", "27", "120", "62", "104.50", "285", "120")))
    assert part_sum(pecan_price, "labor") == D("6652.80")
    assert part_sum(pecan_price, "equipment") == D("720.00")
    assert part_sum(pecan_price, "small parts") == D("47.03")
    assert part_sum(pecan_price, "material", "small parts", "tax") == D("1069.00")
    assert pecan_price.direct == D("8601.80")


def test_pecan_sells_for_16525(pecan_price: Price) -> None:
    steps = {s.text: s.amount for s in pecan_price.steps}
    assert steps["price of class own"] == D("15769.97")
    assert steps["price of class sub"] == D("600.00")
    assert steps["price of class pass-through"] == D("150.00")
    assert pecan_price.before_rounding == D("16519.97")
    assert pecan_price.total == D("16525.00")


@pytest.mark.parametrize("which", ["maple_price", "pecan_price"])
def test_the_lines_sum_to_the_total(which: str, request: pytest.FixtureRequest) -> None:
    price: Price = request.getfixturevalue(which)
    assert sum(line.amount for line in price.lines) == price.total
    assert all(line.amount == line.unit_price * line.quantity > 0 for line in price.lines)
    assert all(line.amount == int(line.amount) for line in price.lines)

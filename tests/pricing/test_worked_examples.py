"""Maple and Pecan to the cent: the figures of docs/worked-examples.md, each of them [computed] by hand there.

Both are priced twice: on tables written out in conftest.py and on the demo's with the page's prices, so that neither can drift alone.
"""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from estimator.model.price import Price
from estimator.model.work import Quantity, Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.likely_range import likely_range
from estimator.tables import demo_folder, read_tables
from estimator.tables.rows import PlaceRow, Recipe
from estimator.tables.rows_of_hours import Production
from estimator.tables.tables import Tables
from tests.worked import worked_tables

D = Decimal
PAGE = (Path(__file__).parents[2] / "docs" / "worked-examples.md").read_text("utf-8")
Scope = tuple[Takeoff, ...]


@pytest.fixture(scope="module")
def demo() -> Tables:
    tables = read_tables(demo_folder(), date(2026, 11, 25)).tables
    assert tables is not None
    return worked_tables(tables)


@pytest.fixture(scope="module", params=["by hand", "demo"])
def both(request: pytest.FixtureRequest, tables: Tables, demo: Tables) -> Tables:
    return demo if request.param == "demo" else tables


@pytest.fixture(scope="module")
def maple_price(maple: Scope, both: Tables, place: PlaceRow) -> Price:
    return price_scope(maple, both, place)


@pytest.fixture(scope="module")
def pecan_price(pecan: Scope, both: Tables, place: PlaceRow) -> Price:
    return price_scope(pecan, both, place)


def part_sum(price: Price, *parts: str) -> Decimal:
    return sum((c.amount for c in price.costs if c.part in parts), D(0))


def crew(price: Price, name: str) -> tuple[float, float, Decimal, Decimal, Decimal]:
    c = next(c for c in price.crews if c.crew == name)
    return round(c.work_hours, 2), c.setup_hours, c.days, c.hours, c.amount


def test_maple_takes_each_crew_a_day(maple_price: Price) -> None:
    assert crew(maple_price, "plumbing") == (5.28, 1, D("1.0"), D("8.0"), D("633.60"))
    assert crew(maple_price, "excavation") == (3.34, 1, D("1.0"), D("8.0"), D("549.12"))


def test_maple_costs_what_the_page_says(maple_price: Price) -> None:
    bought = [c.amount for c in maple_price.costs if c.part == "material"]
    assert sorted(bought) == [D(42), D(48), D(56), D(57), D(90)]
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
    assert crew(pecan_price, "tunnel") == (52.1, 8, D("7.5"), D("60.0"), D("4752.00"))
    assert crew(pecan_price, "plumbing") == (19.55, 3, D("3.0"), D("24.0"), D("1900.80"))


def test_pecan_costs_what_the_page_says(pecan_price: Price) -> None:
    bought: dict[str, D] = {}
    for cost in (c for c in pecan_price.costs if c.part == "material"):
        thing = cost.ref.removesuffix("-4")  # couplings at the ends are bought by size, those of side drains are not
        bought[thing] = bought.get(thing, D(0)) + cost.amount
    assert sorted(bought.values()) == sorted(map(D, ("168", "54", "27", "120", "62", "104.50", "285", "120")))
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


def test_the_lines_sum_to_the_total(maple_price: Price, pecan_price: Price) -> None:
    for price in (maple_price, pecan_price):
        assert sum(line.amount for line in price.lines) == price.total
        assert all(line.amount == line.unit_price * line.quantity > 0 for line in price.lines)
        assert all(line.amount == int(line.amount) for line in price.lines)


def test_the_page_shows_these_figures(maple_price: Price, pecan_price: Price) -> None:
    for price in (maple_price, pecan_price):
        shown = [price.direct, price.before_rounding, price.total, *(c.amount for c in price.crews)]
        shown += [part_sum(price, part) for part in ("labor", "equipment", "material", "small parts", "tax")]
        shown += [s.amount for s in price.steps if s.text.startswith("price of class")]
        assert not [f"{amount:,.2f}" for amount in shown if f"{amount:,.2f}" not in PAGE]


# ── the other way: the totals in the section Decisions ────────────────────────────────────────────


def changed(takeoff: Takeoff, **quantities: float) -> Takeoff:
    kept = tuple(q for q in takeoff.quantities if q.name not in quantities)
    return replace(takeoff, quantities=kept + tuple(Quantity(name=n, value=v, unit="") for n, v in quantities.items()))


def with_own_hours(tables: Tables, crew: str, hours: float) -> Tables:
    """The tables with one more task in the tunnel's recipe, of so many hours."""
    empty = {"unit": "", "covers": ""}
    task = Production(task="on its own", crew=crew, low=hours, likely=hours, high=hours, **empty)
    row = Recipe(work_item="tunnel", part="labor", ref="on its own", quantity="pits", per=1, crew="", when=())
    rows = {**tables.rows, "production": (*tables.rows["production"], task), "recipes": (*tables.rows["recipes"], row)}
    return replace(tables, rows=rows)


def without_hours(tables: Tables, *tasks: str) -> Tables:
    free = tuple(
        replace(p, low=0.0, likely=0.0, high=0.0) if isinstance(p, Production) and p.task in tasks else p
        for p in tables.rows["production"]
    )
    return replace(tables, rows={**tables.rows, "production": free})


def test_maple_at_full_precision_and_exact_sod_is_half_a_day_less(maple: Scope, demo: Tables, place: PlaceRow) -> None:
    earth, zone = 11 * 2.375 * 3.9175, 11 * 2.375 * 1.205
    fill = (earth - 1.2149) / 27
    exact = changed(
        maple[0], dig_bcy=earth / 27, backfill_ccy=fill, sod_sf=57.2, sand_tons=(zone - 1.2149) / 27 * 1.5525
    )
    price = price_scope((exact, maple[1]), demo, place)
    assert (price.direct, price.total) == (D("2036.19"), D("3725.00"))


def test_roots_in_the_soil_would_not_move_maple(maple: Scope, demo: Tables, place: PlaceRow) -> None:
    rooted = replace(maple[0], facts=frozenset({"roots_in_soil"}))
    assert price_scope((rooted, maple[1]), demo, place).total == D("4200.00")


def test_a_water_test_would_move_maple(maple: Scope, demo: Tables, place: PlaceRow) -> None:
    assert price_scope((changed(maple[0], tests=1), maple[1]), demo, place).total == D("4750.00")


def test_pecan_with_side_cuts(pecan: Scope, demo: Tables, place: PlaceRow) -> None:
    cut = changed(pecan[0], side_cut_ft=9, slurry_cy=3.39, stub_ft=9)
    price = price_scope((cut, pecan[1]), demo, place)
    assert (price.direct, price.total) == (D("10778.32"), D("20525.00"))


def test_pecan_without_what_happens_on_every_job(pecan: Scope, demo: Tables, place: PlaceRow) -> None:
    bare = without_hours(demo, "daily set-up", "mobilize job", "inspection wait")
    price = price_scope(pecan, bare, place)
    assert (price.direct, price.total) == (D("7591.40"), D("14675.00"))


@pytest.mark.parametrize(
    ("crew_name", "hours", "direct", "total"),
    [
        ("tunnel", 3.0, "8918.60", "17125.00"),  # shoring, half an hour a set
        ("tunnel", 56 / 27 * 0.6, "8918.60", "17125.00"),  # the pit's refill
        ("tunnel", 3.0 + 56 / 27 * 0.6, "9295.40", "17800.00"),  # both
        ("plumbing", 3.0, "8918.60", "17125.00"),  # side drains at 2.5 h
    ],
)
def test_pecan_with_hours_on_their_own(
    crew_name: str, hours: float, direct: str, total: str, pecan: Scope, demo: Tables, place: PlaceRow
) -> None:
    price = price_scope(pecan, with_own_hours(demo, crew_name, hours), place)
    assert (price.direct, price.total) == (D(direct), D(total))


def test_pecan_with_a_second_pit(pecan: Scope, demo: Tables, place: PlaceRow) -> None:
    two = changed(pecan[0], pits=2, pit_bcy=112 / 27, tunnel_ft_to_20=29, tunnel_ft_20_to_40=0)
    price = price_scope((two, pecan[1]), demo, place)
    assert (price.direct, price.total) == (D("9068.60"), D("17400.00"))


def test_pecan_without_a_tolerance(pecan: Scope, demo: Tables, place: PlaceRow) -> None:
    assert price_scope(pecan, demo.with_settings({"crew_tolerance_hours": "0"}), place).total == D("17125.00")


@pytest.mark.parametrize(
    "figure",
    ["3,725.00", "2,036.19", "4,750.00", "20,525.00", "10,778.32", "14,675.00", "7,591.40", "17,125.00", "8,918.60",
     "17,800.00", "9,295.40", "17,400.00", "9,068.60"],
)  # fmt: skip
def test_the_page_shows_the_other_way(figure: str) -> None:
    assert figure in PAGE


def test_the_range_of_pecan_is_what_the_page_says(pecan: Scope, demo: Tables, place: PlaceRow) -> None:
    assert likely_range(pecan, demo, place, seed=1).cost[80] == pytest.approx(10300, rel=0.01)


def test_the_running_example_of_the_pricing_page_is_maple(maple_price: Price) -> None:
    page = (Path(__file__).parents[2] / "docs" / "pricing.md").read_text("utf-8")
    shown = [maple_price.direct, maple_price.before_rounding, maple_price.total, *(c.amount for c in maple_price.crews)]
    shown += [part_sum(maple_price, part) for part in ("equipment", "material", "small parts", "tax", "sub", "fee")]
    assert not [f"{amount:,.2f}" for amount in shown if f"{amount:,.2f}" not in page]
    hours = {c.crew: c.work_hours for c in maple_price.crews}
    assert f"{hours['excavation']:.3f} h" in page
    assert f"{hours['plumbing']:.2f} h" in page

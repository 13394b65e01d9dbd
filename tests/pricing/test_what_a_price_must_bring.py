"""Expected hours, machines on the work that uses them, overhead by the crew-day, and what leaves with the price: by hand."""

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

import pytest

from estimator.model.price import Price
from estimator.model.work import Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.likely_range import likely_range
from estimator.pricing.rough import rough_cost
from estimator.tables.rows import PlaceRow, PriceClass
from estimator.tables.tables import Tables

D = Decimal
Scope = tuple[Takeoff, ...]
MakeTables = Callable[..., Tables]


def test_hours_are_those_of_the_average_job(maple: Scope, make_tables: MakeTables, place: PlaceRow) -> None:
    """The mean of a triangle is (a + b + c) ÷ 3 (any handbook of statistics)."""
    price = price_scope(maple, make_tables(settings={"price_expected_hours": "yes"}), place)
    dig = next(t for t in price.tasks if t.task == "machine dig")
    assert dig.each == pytest.approx((0.08 + 0.12 + 0.25) / 3)
    assert dig.hours == pytest.approx(105.6 / 27 * 0.15)
    crews = {c.crew: c for c in price.crews}
    assert crews["plumbing"].setup_hours == pytest.approx(1.0)  # (0.75 + 1 + 1.25) ÷ 3


def test_the_middle_of_the_range_lies_on_expected_hours(pecan: Scope, make_tables: MakeTables, place: PlaceRow) -> None:
    """On expected hours the mean of all draws is the cost in the price but for what half days round; on likely ones it is above."""
    shares = []
    for expected in ("no", "yes"):
        tables = make_tables(settings={"price_expected_hours": expected})
        own = float(price_scope(pecan, tables, place).direct)
        shares.append(likely_range(pecan, tables, place, seed=1).mean_cost / own)
    assert shares[0] > 1.08
    assert shares[1] == pytest.approx(1, abs=0.04)


def test_a_machine_is_paid_by_the_work_that_asks_for_it(maple: Scope, tables: Tables, place: PlaceRow) -> None:
    """Grass pays for no excavator; digging, 1 h by hand first and 0.469 h, and filling 0.967 h share it."""
    cost = next(c for c in price_scope(maple, tables, place).costs if c.ref == "excavator")
    assert {item: round(hours, 3) for _, item, hours in cost.shares} == {"yard dig": 1.469, "fill": 0.967}
    assert cost.quantity == 1


def test_a_machine_is_not_kept_while_its_crew_does_other_things(maple: Scope, tables: Tables, place: PlaceRow) -> None:
    """Sixty times the grass keeps the crew for days and the machine for one."""
    lawn = replace(
        maple[0], quantities=tuple(replace(q, value=3600) if q.name == "sod_sf" else q for q in maple[0].quantities)
    )
    price = price_scope((lawn, maple[1]), tables, place)
    assert next(c.days for c in price.crews if c.crew == "excavation") == D(
        "8.5"
    )  # 56.44 h + 9 of set-up; 8 days give 64.25
    assert next(c.quantity for c in price.costs if c.ref == "excavator") == 1


def with_class(tables: Tables) -> Tables:
    row = PriceClass(price_class="overhead", margin_percent=D(0), floor_margin_percent=D(0), contingency=False)
    return replace(tables, rows={**tables.rows, "pricing": (*tables.rows["pricing"], row)})


def test_overhead_by_the_crew_day_is_handed_on_as_it_is(maple: Scope, make_tables: MakeTables, place: PlaceRow) -> None:
    """Two crew-days at $180: 4,193.81 + 360.00 = 4,553.81, up to 4,575."""
    tables = with_class(make_tables(settings={"overhead_per_crew_day": "180"}))
    price = price_scope(maple, tables, place)
    assert next(c.amount for c in price.costs if c.part == "overhead") == D("360.00")
    assert (price.before_rounding, price.total) == (D("4553.81"), D("4575.00"))
    assert price.direct == D("2310.75")
    assert sum(line.amount for line in price.lines) == price.total


def test_what_leaves_with_the_price_is_in_it(maple: Scope, make_tables: MakeTables, place: PlaceRow) -> None:
    """4,193.81 ÷ (1 − 0.05 − 0.03 − 0.02) = 4,659.79, up to 4,675; of that 5 % are 233.75, 3 % 140.25, 2 % 93.50."""
    settings = {"commission_percent": "5", "card_fee_percent": "3", "warranty_reserve_percent": "2"}
    price = price_scope(maple, make_tables(settings=settings), place)
    assert (price.before_rounding, price.total) == (D("4659.79"), D("4675.00"))
    assert [(s.name, s.amount) for s in price.leaves] == [
        ("commission", D("233.75")),
        ("card fee", D("140.25")),
        ("warranty reserve", D("93.50")),
    ]
    assert price.cost_beside == D("467.50")
    assert price.margin == ((price.total - spent(price)) / price.total).quantize(D("0.0001"))
    permit = next(line for line in price.lines if line.work_item == "permit")
    assert permit.amount == D("150.00")
    assert sum(line.amount for line in price.lines) == price.total


def spent(price: Price) -> Decimal:
    return sum((c.amount for c in price.costs), D(0)) + D("467.50")


def test_the_search_counts_both(maple: Scope, make_tables: MakeTables, tables: Tables, place: PlaceRow) -> None:
    both = with_class(make_tables(settings={"overhead_per_crew_day": "180", "commission_percent": "10"}))
    hours = {"excavation": 3.336, "plumbing": 1.78}
    days = sum(h / 7 for h in hours.values())
    plain, more = rough_cost(maple[0], tables, place).cents, rough_cost(maple[0], both, place).cents
    assert more == pytest.approx((plain + 18000 * days) / 0.9, abs=60)

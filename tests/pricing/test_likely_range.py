"""The range against sums that can be done by hand, published three-point examples, and itself with more draws."""

import math
import random
import time
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from decimal import Decimal
from statistics import NormalDist

import numpy as np
import pytest

from estimator.model.paid_days import paid_steps
from estimator.model.problem import CannotGoOn
from estimator.model.work import JOB, Quantity, Takeoff
from estimator.pricing.build import price_scope
from estimator.pricing.draws import ThreePoints, Uncertain, draw, percentile
from estimator.pricing.house_rules import house_rules
from estimator.pricing.likely_range import likely_range, uncertain_things
from estimator.pricing.outcomes import EARTH, PRICES, SET_UP, cause_of, paid_steps_of
from estimator.tables import demo_folder, read_tables
from estimator.tables.rows import Equipment, PlaceRow
from estimator.tables.rows_of_hours import Production
from estimator.tables.tables import Tables

Scope = tuple[Takeoff, ...]


def mean_of(points: ThreePoints) -> float:
    """Triangular distribution, published: (a + b + c) / 3."""
    return (points.low + points.likely + points.high) / 3


def variance_of(points: ThreePoints) -> float:
    """Triangular distribution, published: (a² + b² + c² − ab − ac − bc) / 18."""
    a, c, b = points.low, points.likely, points.high
    return (a * a + b * b + c * c - a * b - a * c - b * c) / 18


@pytest.mark.parametrize(("share", "value"), [(0.0, 5.0), (1 / 3, 8.0), (0.5, 14 - math.sqrt(27)), (1.0, 14.0)])
def test_a_share_of_a_triangle_lies_where_its_area_says(share: float, value: float) -> None:
    # area left of the mode is (8 − 5) / (14 − 5) = 1/3; the median is b − √((b−a)(b−c)/2) [computed]
    assert ThreePoints(5, 8, 14).at(share) == pytest.approx(value)


def test_draws_of_independent_things_sum_as_the_formula_says() -> None:
    parts = [ThreePoints(n, n + 2.0, n + 5.0) for n in range(12)]
    drawn = draw([Uncertain(str(n), p) for n, p in enumerate(parts)], seed=3, count=20_000, common_share=0.5)
    sums = sorted(sum(column) for column in zip(*drawn, strict=True))
    mean, sigma = sum(map(mean_of, parts)), math.sqrt(sum(map(variance_of, parts)))
    assert sum(sums) / len(sums) == pytest.approx(mean, rel=0.002)
    # twelve triangles are near a normal distribution, whose 68/95 % rule is published
    normal = NormalDist(mean, sigma)
    for percent in (10, 50, 80, 90):
        assert percentile(sums, percent) == pytest.approx(normal.inv_cdf(percent / 100), rel=0.004)
    within = sum(mean - sigma <= s <= mean + sigma for s in sums) / len(sums)
    assert within == pytest.approx(0.68, abs=0.02)


def test_lows_and_highs_are_never_added() -> None:
    # sixteen alike and independent: their sum spreads four times as far as one, not sixteen times [computed]
    points = ThreePoints(0, 1, 3)
    drawn = draw([Uncertain(str(n), points) for n in range(16)], seed=8, count=20_000, common_share=0.5)
    sums = [sum(column) for column in zip(*drawn, strict=True)]
    assert _sigma(sums) == pytest.approx(4 * math.sqrt(variance_of(points)), rel=0.02)
    assert min(sums) > 16 * points.low
    assert max(sums) < 16 * points.high


def test_things_of_one_cause_move_together_and_keep_their_own_triangle() -> None:
    points = ThreePoints(0, 1, 2)
    alone = draw([Uncertain("a", points), Uncertain("b", points)], 1, 20_000, 0.5)
    shared = draw([Uncertain("a", points, "soil"), Uncertain("b", points, "soil")], 1, 20_000, 0.5)
    spread = [_sigma([a + b for a, b in zip(*pair, strict=True)]) for pair in (alone, shared)]
    assert spread[0] == pytest.approx(math.sqrt(2 * variance_of(points)), rel=0.02)
    assert spread[1] == pytest.approx(math.sqrt(2.5 * variance_of(points)), rel=0.02)  # correlation 0.5² [computed]
    assert _sigma(shared[0]) == pytest.approx(math.sqrt(variance_of(points)), rel=0.02)


def test_all_draws_at_once_are_those_of_one_dice_after_the_other() -> None:
    points, share = ThreePoints(0, 1, 2), 0.3
    things = [Uncertain("a", points, "soil"), Uncertain("b", points), Uncertain("c", points, "soil")]
    chance = random.Random(7).random
    soil = [chance() for _ in range(500)]
    expected = [
        [points.at(luck if chance() < share else chance()) if thing.cause else points.at(chance()) for luck in soil]
        for thing in things
    ]
    assert [column.tolist() for column in draw(things, 7, 500, share)] == expected


def test_days_of_all_draws_are_those_of_each(tables: Tables) -> None:
    dice, rules = random.Random(2), house_rules(tables)
    hours = [(dice.choice([0.0, dice.uniform(0, 90)]), dice.uniform(0, 3)) for _ in range(2_000)]
    expected = [
        paid_steps(
            work,
            set_up,
            day_hours=rules.day_hours,
            step_days=float(rules.day_step),
            tolerance_hours=rules.tolerance_hours,
        )
        for work, set_up in hours
    ]
    assert paid_steps_of(*np.array(hours).T, rules).tolist() == expected


def _sigma(values: tuple[float, ...] | list[float]) -> float:
    mean = sum(values) / len(values)
    return math.sqrt(sum((v - mean) ** 2 for v in values) / len(values))


def certain(tables: Tables) -> Tables:
    """The same tables with every low and high at the likely."""
    sure = tuple(
        replace(p, low=p.likely, high=p.likely) for p in tables.rows["production"] if isinstance(p, Production)
    )
    return replace(tables, rows={**tables.rows, "production": sure}).with_settings({"range_prices_percent": "0"})


def test_where_nothing_is_uncertain_every_percentile_is_the_price_s_own_cost(
    maple: Scope, pecan: Scope, tables: Tables, place: PlaceRow
) -> None:
    lawn = Takeoff(
        repair=replace(maple[0].repair, id="lawn"),
        quantities=(Quantity(name="sod_sf", value=2000, unit="sq ft"),),
        facts=frozenset(),
        size="4",
    )  # two days of the machine's crew where no machine is needed
    for scope in (maple, pecan, (lawn, *maple)):
        price = price_scope(scope, tables, place)
        sure = likely_range(scope, certain(tables), place, seed=1, draws=50)
        assert list(sure.cost.values()) == [pytest.approx(float(price.direct))] * 4
        assert set(sure.days.values()) == {float(price.days)}
        assert (sure.drivers, sure.contingency_needed_percent) == ((), 0.0)


def test_a_machine_with_least_days_costs_the_same_in_the_range_as_in_the_price(
    maple: Scope, tables: Tables, place: PlaceRow
) -> None:
    # the excavator of Maple is there a day; a yard that charges three is charged three in every draw [computed]
    least = tuple(replace(e, min_days=Decimal(3)) if isinstance(e, Equipment) else e for e in tables.rows["equipment"])
    dear = replace(tables, rows={**tables.rows, "equipment": least})
    price = price_scope(maple, dear, place)
    sure = likely_range(maple, certain(dear), place, seed=1, draws=5)
    assert price.direct > price_scope(maple, tables, place).direct
    assert list(sure.cost.values()) == [pytest.approx(float(price.direct))] * 4


@pytest.mark.parametrize(("high", "refused"), [(7.99, False), (8.0, True)])
def test_a_set_up_whose_highest_takes_the_day_is_refused_before_any_draw(
    maple: Scope, tables: Tables, place: PlaceRow, high: float, refused: bool
) -> None:
    rows = tuple(
        replace(p, high=high) if isinstance(p, Production) and p.task == "daily set-up" else p
        for p in tables.rows["production"]
    )
    long = replace(tables, rows={**tables.rows, "production": rows})
    if not refused:
        assert likely_range(maple, long, place, seed=1, draws=200).days[90] >= 2
        return
    with pytest.raises(CannotGoOn) as stopped:
        likely_range(maple, long, place, seed=1, draws=200)
    assert stopped.value.problems[0].code == "pricing/set-up-eats-the-day"
    assert stopped.value.problems[0].place.cell == "daily set-up, high"


def test_the_same_seed_says_the_same_and_another_says_otherwise(pecan: Scope, tables: Tables, place: PlaceRow) -> None:
    first = likely_range(pecan, tables, place, seed=7, draws=500)
    assert first == likely_range(pecan, tables, place, seed=7, draws=500)
    assert first != likely_range(pecan, tables, place, seed=8, draws=500)


def test_more_draws_come_to_the_same(pecan: Scope, tables: Tables, place: PlaceRow) -> None:
    few, many = (likely_range(pecan, tables, place, seed=s, draws=n) for s, n in ((1, 2_000), (2, 20_000)))
    for percent in (10, 50, 80, 90):
        assert few.cost[percent] == pytest.approx(many.cost[percent], rel=0.02)
        assert abs(few.days[percent] - many.days[percent]) <= 0.5


def test_percentiles_rise_and_the_contingency_for_the_confidence_is_their_distance_from_the_likely(
    pecan: Scope, tables: Tables, place: PlaceRow
) -> None:
    said = likely_range(pecan, tables, place, seed=7)
    assert said.cost[10] < said.cost[50] < said.cost[80] < said.cost[90]
    assert said.contingency_needed_percent == pytest.approx((said.cost[80] / 8601.80 - 1) * 100)
    assert said.contingency_percent == 10.0


def test_the_tunnel_dig_drives_a_tunnel_and_the_drivers_sum_to_all(
    pecan: Scope, tables: Tables, place: PlaceRow
) -> None:
    said = likely_range(pecan, tables, place, seed=7, draws=3_000)
    assert said.drivers[0][0] == "tunnel dig"
    assert sum(share for _, share in said.drivers) == pytest.approx(100)


def test_earth_that_nobody_saw_is_drawn_only_where_nobody_saw_it(maple: Scope, tables: Tables, place: PlaceRow) -> None:
    price = price_scope(maple, tables, place)
    assert {SET_UP, PRICES} < {t.name for t in uncertain_things(price, maple, tables)}
    unseen = (replace(maple[0], facts=frozenset({"depth_unlocated"})), maple[1])
    assert EARTH not in {t.name for t in uncertain_things(price, maple, tables)}
    assert EARTH in {t.name for t in uncertain_things(price, unseen, tables)}
    assert EARTH in dict(likely_range(unseen, tables, place, seed=1, draws=200).drivers)


def test_a_cause_comes_from_the_facts_that_slow_the_task(tables: Tables) -> None:
    assert cause_of("daily set-up", tables) == "access"
    assert cause_of("camera pass", tables) == ""


def test_in_the_demo_tables_digging_hangs_on_soil_and_inside_work_on_access(pecan: Scope, place: PlaceRow) -> None:
    demo = read_tables(demo_folder(), date(2026, 11, 25)).tables
    assert demo is not None
    things = uncertain_things(price_scope(pecan, demo, place), pecan, demo)
    causes = {t.name: t.cause for t in things}
    assert (causes["tunnel dig"], causes[SET_UP], causes["coupling"], causes[PRICES]) == ("soil", "access", "", "")
    assert cause_of("saw slab", demo) == "access"


def test_ten_thousand_draws_of_a_house_take_well_under_a_second(pecan: Scope, tables: Tables, place: PlaceRow) -> None:
    def took(seed: int) -> float:
        start = time.process_time()
        likely_range(pecan, tables, place, seed=seed, draws=10_000)
        return time.process_time() - start

    assert any(
        took(seed) < 1.0 for seed in range(5)
    )  # a fifth of a second on a quiet machine, more on one that does much else


def test_one_task_alone_has_the_percentiles_of_its_own_triangle(
    make_takeoff: Callable[..., Takeoff], make_tables: Callable[..., Tables], place: PlaceRow
) -> None:
    # with tiny day steps the cost of one task and no set-up is hours × rate: 100 branches of 0.75 / 1 / 1.75 h [computed]
    tables = make_tables(
        settings={"crew_step_days": "0.0001", "crew_tolerance_hours": "0", "range_prices_percent": "0"}
    )
    free = tuple(
        replace(p, low=0.0, likely=0.0, high=0.0) if isinstance(p, Production) and p.task == "daily set-up" else p
        for p in tables.rows["production"]
    )
    only = tuple(r for r in tables.recipes if r.ref in ("branch", "permit"))
    lump = tuple(replace(w, billed="lump") for w in tables.work_items)
    tables = replace(tables, rows={**tables.rows, "production": free, "recipes": only, "work_items": lump})
    scope = (make_takeoff("tunnel", branches_tunnel=100), make_takeoff(JOB, permits=1))
    said = likely_range(scope, tables, place, seed=5, draws=20_000)
    points = ThreePoints(75, 100, 175)
    for percent in (10, 50, 80, 90):
        assert said.cost[percent] == pytest.approx(points.at(percent / 100) * 79.20, rel=0.01)


def test_the_curve_rises_and_says_how_often_the_price_s_contingency_holds(
    pecan: Scope, tables: Tables, place: PlaceRow
) -> None:
    found = likely_range(pecan, tables, place, seed=5, draws=4_000)
    costs = [cost for _, cost, _ in found.curve]
    assert costs == sorted(costs)
    assert {p: c for p, c, _ in found.curve if p in found.cost} == dict(found.cost)
    price = price_scope(pecan, tables, place)
    held = float(price.direct) * 1.10  # the tables give a tunnel 10 %
    below, above = (max(p for p, c, _ in found.curve if c <= held), min(p for p, c, _ in found.curve if c > held))
    assert below <= found.held_chance_percent <= above


def test_where_nothing_is_uncertain_the_contingency_always_holds(pecan: Scope, tables: Tables, place: PlaceRow) -> None:
    sure = likely_range(pecan, certain(tables), place, seed=1, draws=50)
    assert (sure.held_chance_percent, sure.short_percent) == (100.0, 0.0)

"""The order of the build-up, held by properties and at its edges."""

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.model.money import cents, margin_of_markup, markup_of_margin
from estimator.model.problem import CannotGoOn
from estimator.model.work import JOB, Takeoff
from estimator.pricing.amounts import asked
from estimator.pricing.build import price_scope
from estimator.pricing.crew_days import days_needed
from estimator.pricing.hours import always
from estimator.pricing.house_rules import HouseRules
from estimator.pricing.markup import sell
from estimator.pricing.parts import made_of
from estimator.pricing.rough import rough_cost, smooth_price
from estimator.pricing.total import total_of
from estimator.scopes.least_price import LeastPrice
from estimator.tables.rows import PlaceRow, Recipe
from estimator.tables.tables import Tables
from estimator.works.methods import names

D = Decimal
MakeTakeoff = Callable[..., Takeoff]
feet = st.floats(0.1, 120).map(lambda x: round(x, 3))
RULES = HouseRules(day_hours=8, day_step=D("0.5"), tolerance_hours=0.25, factor_cap=3, night_rate=D("1.5"),
                   small_parts_percent=D(5), price_step=D(25), unit_price_step=D(1))  # fmt: skip


@given(
    dug=feet,
    pipe=feet,
    sod=st.integers(0, 400),
    loads=st.integers(0, 9),
    tunnel=feet,
    step=st.sampled_from(["1", "25"]),
)
@settings(max_examples=60, deadline=None)
def test_lines_sum_to_the_total_and_every_line_is_unit_price_times_quantity(
    dug: float, pipe: float, sod: int, loads: int, tunnel: float, step: str,
    make_takeoff: MakeTakeoff, make_tables: Callable[..., Tables], place: PlaceRow, job_takeoff: Takeoff,
) -> None:  # fmt: skip
    yard = make_takeoff(
        "yard spot",
        dig_bcy=dug,
        potholes=1,
        pipe_trench_ft=pipe,
        pipe_buy_ft=pipe,
        backfill_ccy=dug,
        sod_sf=sod,
        loads=loads,
    )
    under = make_takeoff("tunnel", tunnel_ft=tunnel, tunnel_ft_to_20=tunnel, pit_bcy=2, pits=1)
    price = price_scope((yard, under, job_takeoff), make_tables(settings={"round_price_to": step}), place)
    assert sum(line.amount for line in price.lines) == price.total
    assert all(line.amount == cents(line.unit_price * line.quantity) > 0 for line in price.lines)
    assert sum(line.cost_share for line in price.lines) == sum(c.amount for c in price.costs)
    assert price.before_rounding <= price.total < price.before_rounding + D(step)


@given(hours=st.floats(0.01, 400), more=st.floats(0, 50))
@settings(max_examples=200, deadline=None)
def test_more_hours_never_take_fewer_days(hours: float, more: float) -> None:
    assert days_needed(hours, 1, RULES) <= days_needed(hours + more, 1, RULES)


@given(dug=feet, more=feet)
@settings(max_examples=40, deadline=None)
def test_more_earth_never_costs_less_before_minimum_and_rounding(
    dug: float, more: float, make_takeoff: MakeTakeoff, tables: Tables, place: PlaceRow
) -> None:
    def dig(cy: float) -> tuple[Takeoff, ...]:
        return (make_takeoff("yard spot", dig_bcy=cy, potholes=1), make_takeoff(JOB, jobs=1))

    assert price_scope(dig(dug), tables, place).direct <= price_scope(dig(dug + more), tables, place).direct
    assert smooth_price(dig(dug), tables, place) < smooth_price(dig(dug + more), tables, place)


@pytest.mark.parametrize(
    ("work", "days"),
    [
        (3.25, "0.5"),
        (3.251, "1.0"),
        (7.25, "1.0"),
        (7.251, "1.5"),
        (52.1, "7.5"),
        (52.25, "7.5"),
        (52.251, "8.0"),
        (0.0, "0"),
    ],
)
def test_a_half_day_ends_at_its_hours_plus_the_tolerance(work: float, days: str) -> None:
    assert days_needed(work, 1, RULES) == D(days)


def test_margin_is_a_share_of_the_price_and_markup_of_the_cost() -> None:
    # construction cost texts: cost 200,000 marked up 25 % sells for 250,000, a gross profit of 20 %
    assert sell(D(200000), margin_of_markup(D(25))) == D("250000.00")
    # 30 % markup is 23.08 % margin; 20, 25, 30, 40, 50 % margin are 25, 33.3, 42.9, 66.7, 100 % markup [computed]
    assert round(margin_of_markup(D(30)), 2) == D("23.08")
    assert [round(markup_of_margin(D(m)), 1) for m in (20, 25, 30, 40, 50)] == [
        D(x) for x in ("25", "33.3", "42.9", "66.7", "100")
    ]
    assert sell(D(100), D(40)) != D(140)


def test_a_quarter_of_the_price_is_more_than_thirty_percent_on_the_cost() -> None:
    assert sell(D(100), D(25)) == D("133.33")
    assert sell(D(100), D(25)) > D(130)


def test_the_highest_contingency_counts_and_unknowns_add_to_it(
    maple: tuple[Takeoff, ...], pecan: tuple[Takeoff, ...], tables: Tables, place: PlaceRow
) -> None:
    both = (maple[0], pecan[0], maple[1])
    assert price_scope(both, tables, place).contingency_percent == 10
    unlocated = replace(maple[0], facts=maple[0].facts | {"depth_unlocated"})
    assert price_scope((unlocated, *both[1:]), tables, place).contingency_percent == 15


def test_a_minimum_lifts_a_small_job_and_says_so(
    make_takeoff: MakeTakeoff, tables: Tables, place: PlaceRow, job_takeoff: Takeoff
) -> None:
    small = make_takeoff("yard spot", sod_sf=10)
    price = price_scope((small, job_takeoff), tables, place)
    assert price.before_rounding == D("2650.00")  # 2,500 and the permit, which is passed on
    assert "minimum charge of $2,500" in str(price.minimum_charges[0])
    sod = next(line for line in price.lines if line.work_item == "sod")
    assert sod.amount > 600  # the lift goes on the method's own items


@pytest.mark.parametrize(
    ("kinds", "quantities", "least"),
    [
        ({"visit test"}, {"whole_tests": 1}, "450.00"),
        ({"visit film"}, {"films_before": 1}, "250.00"),
        ({"visit film", "visit test"}, {"films_before": 1, "whole_tests": 1}, "350.00"),
    ],
)
def test_a_visit_that_only_tests_or_only_films_has_a_least_charge_of_its_own(
    kinds: set[str],
    quantities: dict[str, float],
    least: str,
    make_takeoff: MakeTakeoff,
    make_tables: Callable[..., Tables],
    place: PlaceRow,
) -> None:
    tables = make_tables(settings={"crew_step_days": "0.01", "crew_tolerance_hours": "0"})
    free = tuple(
        replace(p, likely=0.001) if getattr(p, "task", "") != "isolate" else p for p in tables.rows["production"]
    )
    tables = replace(tables, rows={**tables.rows, "production": free})
    visit = replace(make_takeoff("visit", **quantities), facts=frozenset(kinds))
    assert price_scope((visit, make_takeoff(JOB, jobs=1)), tables, place).total == D(least)


def test_equipment_follows_whole_days_of_its_crew(
    make_takeoff: MakeTakeoff, tables: Tables, place: PlaceRow, job_takeoff: Takeoff
) -> None:
    under = make_takeoff("tunnel", tunnel_ft=18, tunnel_ft_to_20=18)  # 29.7 h + 5 of set-up: 4½ days
    price = price_scope((under, job_takeoff), tables, place)
    kit = next(c for c in price.costs if c.ref == "tunnel-kit")
    assert (price.crews[0].days, kit.quantity) == (D("4.5"), D(5))
    longer = make_takeoff("tunnel", tunnel_ft=20, tunnel_ft_to_20=20)  # 33 h + 5: 5 days
    price = price_scope((longer, job_takeoff), tables, place)
    kit = next(c for c in price.costs if c.ref == "tunnel-kit")
    assert (price.crews[0].days, kit.quantity) == (D("5.0"), D(5))


def test_a_machine_stays_only_while_its_crew_is_on_the_repairs_that_ask(
    make_takeoff: MakeTakeoff, tables: Tables, place: PlaceRow, job_takeoff: Takeoff
) -> None:
    dig = make_takeoff(
        "yard spot", dig_bcy=10, backfill_ccy=10, sod_sf=40
    )  # 1.2 + 2.5 + 0.6 h of the excavation crew: a day
    lawn = make_takeoff("yard spot", repair="lawn", sod_sf=1000)  # 15 h of the same crew, no machine
    price = price_scope((dig, lawn, job_takeoff), tables, place)
    days = {c.crew: c.days for c in price.crews}
    machine = next(c for c in price.costs if c.ref == "excavator")
    assert (days["excavation"], machine.quantity) == (D("3.0"), D(1))
    assert {repair for repair, _, _ in machine.shares} == {"yard spot"}


def test_a_machine_whose_crew_stays_away_is_charged_a_day_and_named(
    make_takeoff: MakeTakeoff, tables: Tables, place: PlaceRow, job_takeoff: Takeoff
) -> None:
    no_hours = {
        **tables.rows,
        "recipes": tuple(r for r in tables.rows["recipes"] if getattr(r, "ref", "") != "tunnel dig"),
    }
    under = make_takeoff("tunnel", tunnel_ft=9, pit_bcy=0)
    recipes = tuple(r for r in no_hours["recipes"] if getattr(r, "ref", "") != "tunnel backfill")
    price = price_scope(
        (under, job_takeoff), replace(tables, rows={**no_hours, "recipes": recipes + _slurry(tables)}), place
    )
    assert next(c for c in price.costs if c.ref == "tunnel-kit").amount == 60
    assert any("crew tunnel, which has no hours here" in str(said) for said in price.warnings)


def _slurry(tables: Tables) -> tuple[Recipe, ...]:
    row = next(r for r in tables.recipes if r.ref == "slurry")
    return (replace(row, quantity="tunnel_ft"),)


def test_a_method_without_its_usual_hours_is_a_red_line(
    maple: tuple[Takeoff, ...], tables: Tables, place: PlaceRow
) -> None:
    assert price_scope(maple, tables, place).warnings == ()
    left_open = replace(
        maple[0], quantities=tuple(q for q in maple[0].quantities if q.name not in ("backfill_ccy", "sod_sf"))
    )
    said = price_scope((left_open, maple[1]), tables, place).warnings
    assert [str(w) for w in said] == ["no hours for “put back” in yard spot: look for what is missing"]
    assert "no hours for “reach” in job" in str(
        price_scope((maple[0], changed_job(maple[1])), tables, place).warnings[0]
    )


def changed_job(job: Takeoff) -> Takeoff:
    return replace(job, quantities=tuple(q for q in job.quantities if q.name != "jobs"))


def test_every_method_has_work_that_it_always_takes() -> None:
    assert all(always(name) for name in (JOB, *names()))


def test_packs_are_rounded_once_over_the_scope(
    make_takeoff: MakeTakeoff, tables: Tables, place: PlaceRow, job_takeoff: Takeoff
) -> None:
    spots = [make_takeoff("yard spot", repair=f"spot {n}", pipe_trench_ft=3, pipe_buy_ft=3) for n in range(3)]
    price = price_scope((*spots, job_takeoff), tables, place)
    assert next(c for c in price.costs if c.ref == "pvc-4").quantity == 10  # 9 ft + 10 % = 9.9 ft: one stick, not three


def test_what_two_items_of_one_repair_ask_for_once_is_the_larger_and_not_both(
    make_takeoff: MakeTakeoff, tables: Tables
) -> None:
    """A letter asked for by two work items is one letter [computed]."""
    tunnel = make_takeoff("tunnel", repair="tunnel 1", tunnel_ft=5, tunnel_ft_to_20=5, pits=1, engineer_letters=1)
    part = next(p for p in made_of(tunnel, tables)[0] if p.ref == "engineer")
    once = replace(part, recipe=replace(part.recipe, once=True))
    (row,) = asked([once, replace(once, quantity=2 * once.quantity), replace(part, quantity=0.5)])
    assert (row.once, row.several) == (2 * once.amount, 0.5 * part.recipe.per)


def test_what_is_marked_once_is_paid_once(
    make_takeoff: MakeTakeoff, tables: Tables, place: PlaceRow, job_takeoff: Takeoff
) -> None:
    recipes = tuple(replace(r, once=True) if r.ref == "engineer" else r for r in tables.recipes)
    once = replace(tables, rows={**tables.rows, "recipes": recipes})
    two = [
        make_takeoff("tunnel", repair=f"tunnel {n}", tunnel_ft=5, tunnel_ft_to_20=5, pits=1, engineer_letters=1)
        for n in (1, 2)
    ]
    letters = [
        next(c for c in price_scope((*two, job_takeoff), t, place).costs if c.ref == "engineer") for t in (tables, once)
    ]
    assert [line.quantity for line in letters] == [2, 1]
    assert rough_cost(two[0], once, place).shared == (("engineer", 60000),)


def test_what_follows_a_crews_days_is_shared_by_its_hours(
    make_takeoff: MakeTakeoff, tables: Tables, place: PlaceRow, job_takeoff: Takeoff
) -> None:
    recipes = tuple(replace(r, quantity="days.tunnel") if r.ref == "engineer" else r for r in tables.recipes)
    by_day = replace(tables, rows={**tables.rows, "recipes": recipes})
    two = [make_takeoff("tunnel", repair=f"{n} ft", tunnel_ft=n, tunnel_ft_to_20=n, pits=1) for n in (10, 30)]
    price = price_scope((*two, job_takeoff), by_day, place)
    letters = next(c for c in price.costs if c.ref == "engineer")
    days = next(c.days for c in price.crews if c.crew == "tunnel")  # 66 h + 10 of set-up
    assert (days, letters.quantity) == (D("9.5"), D("9.5"))
    weights = {repair: weight for repair, _, weight in letters.shares}
    assert weights["30 ft"] == pytest.approx(3 * weights["10 ft"])


def test_a_crew_that_works_inside_sets_up_longer_and_at_night_costs_more(
    maple: tuple[Takeoff, ...], tables: Tables, place: PlaceRow
) -> None:
    inside = replace(maple[0], facts=maple[0].facts | {"inside_work", "night_work"})
    crews = {c.crew: c for c in price_scope((inside, maple[1]), tables, place).crews}
    assert crews["excavation"].setup_hours == 1.3
    assert crews["excavation"].rate == D("102.96")  # 68.64 × 1.5 [computed]


def test_factors_multiply_up_to_the_cap(
    make_takeoff: MakeTakeoff, make_tables: Callable[..., Tables], place: PlaceRow
) -> None:
    takeoff = make_takeoff("tunnel", ("tunnel",), branches_tunnel=2)
    for cap, factor in (("3", 1.5), ("1.2", 1.2)):
        price = price_scope((takeoff, make_takeoff(JOB, jobs=1)), make_tables(settings={"factor_cap": cap}), place)
        task = next(t for t in price.tasks if t.task == "branch")
        assert (task.factor, task.hours, task.factors) == (factor, 2 * factor, ("tunnel",))


def test_a_row_that_is_missing_stops_the_price_and_all_are_named(
    maple: tuple[Takeoff, ...], tables: Tables, place: PlaceRow
) -> None:
    lost = {**tables.rows, "production": tuple(p for p in tables.rows["production"] if getattr(p, "task", "") != "sod")}
    lost["materials"] = tuple(m for m in tables.rows["materials"] if getattr(m, "item", "") != "sand")
    with pytest.raises(CannotGoOn) as stopped:
        price_scope(maple, replace(tables, rows=lost), place)
    assert [p.code for p in stopped.value.problems] == ["pricing/unknown-row"] * 2
    assert "sand" in str(stopped.value.problems[0].wrong)


def test_a_work_item_without_a_recipe_stops_the_price(
    maple: tuple[Takeoff, ...], tables: Tables, place: PlaceRow
) -> None:
    bare = {**tables.rows, "recipes": tuple(r for r in tables.rows["recipes"] if getattr(r, "work_item", "") != "sod")}
    with pytest.raises(CannotGoOn) as stopped:
        price_scope(maple, replace(tables, rows=bare), place)
    assert [p.code for p in stopped.value.problems] == ["pricing/no-cost"]


def test_the_rough_cost_is_below_the_real_price_and_near_the_smooth_one(
    pecan: tuple[Takeoff, ...], tables: Tables, place: PlaceRow
) -> None:
    rough = sum(
        rough_cost(t, tables, place).cents + sum(c for _, c in rough_cost(t, tables, place).shared) for t in pecan
    )
    smooth = smooth_price(pecan, tables, place)
    assert smooth < 16525
    assert rough / 100 == pytest.approx(smooth, rel=0.03)  # only the job's own contingency differs


def test_the_smooth_price_of_a_tunnel_by_hand(make_takeoff: MakeTakeoff, tables: Tables, place: PlaceRow) -> None:
    under = make_takeoff("tunnel", tunnel_ft=10, tunnel_ft_to_20=10)
    # 10 × (1.15 + 0.50) h × 8/7 × 79.20 + kit 16.5/7 × 60, × 1.10 ÷ 0.60 [computed]
    assert smooth_price((under,), tables, place) == pytest.approx((16.5 * 8 / 7 * 79.20 + 16.5 / 7 * 60) * 1.1 / 0.6)


def test_pricing_leaves_its_input_alone_and_says_the_same_twice(
    maple: tuple[Takeoff, ...], tables: Tables, place: PlaceRow
) -> None:
    assert price_scope(maple, tables, place) == price_scope(maple, tables, place)


@given(dug=feet, tunnel=feet, sod=st.integers(1, 300), loads=st.integers(0, 6))
@settings(max_examples=60, deadline=None)
def test_no_real_price_lies_below_the_sum_for_the_search_by_more_than_its_slack(
    dug: float,
    tunnel: float,
    sod: int,
    loads: int,
    make_takeoff: MakeTakeoff,
    tables: Tables,
    place: PlaceRow,
    job_takeoff: Takeoff,
) -> None:
    yard = make_takeoff("yard spot", dig_bcy=dug, potholes=1, backfill_ccy=dug, sod_sf=sod, loads=loads)
    under = make_takeoff(
        "tunnel", tunnel_ft=tunnel, tunnel_ft_to_20=tunnel, pits=1, engineer_letters=1, slurry_cy=tunnel / 9
    )
    scope = (yard, under, job_takeoff)
    price = total_of(scope, tables, place)
    rough = [rough_cost(t, tables, place) for t in scope]
    summed = sum(r.cents for r in rough) + sum(dict(pair for r in rough for pair in r.shared).values())
    assert int(price.total * 100) >= summed - LeastPrice({"all": price}, {"all": 0}, {}, tables).slack


def test_a_place_charges_its_own_fees_for_a_permit() -> None:
    """A city with a permit of $325 and a bond of $90 in the place of the usual $150 [computed]; no septic tank, no fee for one."""
    from dataclasses import replace as with_

    from estimator.fieldnotes import read_job
    from estimator.pipeline import run
    from estimator.tables.rows import PlaceRow, SubOrFee
    from tests.tables.workbench import demo

    job = read_job(Path(__file__).parents[1] / "jobs" / "j10-chestnut" / "job.toml").job
    assert job is not None
    fees = {"city-permit": Decimal(325), "street-bond": Decimal(90)}
    usual = next(r for r in demo().rows["subs_and_fees"] if isinstance(r, SubOrFee) and r.item == "permit")
    theirs = tuple(with_(usual, item=name, cost=cost) for name, cost in fees.items())
    theirs += (with_(usual, item="tank-permit", cost=Decimal(240), when=("septic",)),)
    places = tuple(
        with_(r, permit_item=(*fees, "tank-permit"))
        if isinstance(r, PlaceRow) and r.place == job.house.jurisdiction
        else r
        for r in demo().rows["places"]
    )
    rows = {**demo().rows, "subs_and_fees": (*demo().rows["subs_and_fees"], *theirs), "places": places}
    before, after = run(job, demo(), job.day).quote, run(job, with_(demo(), rows=rows), job.day).quote
    assert before is not None and after is not None
    for old, new in zip(before.options, after.options, strict=True):
        was = {c.ref: c.amount for c in old.price.costs if c.part == "fee"}
        now = {c.ref: c.amount for c in new.price.costs if c.part == "fee"}
        assert ("permit" in was) == (set(fees) <= set(now))
        assert now == ({**fees} if "permit" in was else {})
    on_a_tank = with_(job, house=with_(job.house, sewer="septic"))
    charged = [run(on_a_tank, with_(demo(), rows=rows), job.day).quote]
    assert all(
        {c.ref for c in o.price.costs if c.part == "fee"} >= {*fees, "tank-permit"}
        for quote in charged if quote is not None
        for o in quote.options if any(c.part == "fee" for c in o.price.costs)
    )  # fmt: skip


def test_the_inspector_is_waited_for_as_often_as_he_comes() -> None:
    """Three visits of two hours and a third on the average, each paid by the crew that stands by [computed]."""
    from dataclasses import replace as with_

    from estimator.fieldnotes import read_job
    from estimator.pipeline import run
    from estimator.tables.rows import PlaceRow
    from tests.tables.workbench import demo

    job = read_job(Path(__file__).parents[1] / "jobs" / "j10-chestnut" / "job.toml").job
    assert job is not None

    def waited(visits: int | None) -> list[float]:
        places = tuple(with_(r, inspections=visits) for r in demo().rows["places"] if isinstance(r, PlaceRow))
        quote = run(job, with_(demo(), rows={**demo().rows, "places": places}), job.day).quote
        assert quote is not None
        return [sum(t.hours for t in o.price.tasks if t.task == "inspection wait") for o in quote.options]

    once = waited(None)
    assert any(once)
    assert waited(3) == pytest.approx([3 * hours for hours in once])
    assert waited(0) == [0.0] * len(once)

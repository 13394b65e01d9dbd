"""What a scope has once, the small methods, and promises that hold for every way of repair."""

from dataclasses import replace
from datetime import date

import pytest

from estimator.model.job import Foundation, Job, Leg, Reroute, WaterTest
from estimator.model.visit import KINDS, fact
from estimator.model.work import Repair, Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff import take_off, take_off_job
from estimator.takeoff.quantities import FACTS, QUANTITIES
from estimator.takeoff.takeoff import MEASURES
from estimator.takeoff.water_test import leak
from estimator.works.methods import names, record_of
from tests.takeoff.houses import at, changed, house, maple_line, pecan_house, pecan_line, repair


def test_every_method_has_a_way_to_be_measured() -> None:
    assert all(record_of(name).measure in MEASURES for name in names())


def everywhere() -> Job:
    """One line through lawn, under the slab and over a crawl space, with a way round: something for every method."""
    line = changed(
        pecan_line(),
        at("yard", -70.0, -10.0, choice="lawn"),
        at("depth", -20.0, depth_ft=3.4, surface="lawn"),
        at("crawl", 0.0, 40.0, lengths=(("", 1.5),)),
    )
    legs = (Leg(zone="wall", length_ft=10.0), Leg(zone="yard", length_ft=20.0))
    way = Reroute(name="east", replaces_line="main", legs=legs, fall_available_ft=2.0, serves=(("sink", 1),))
    return replace(pecan_house(line), reroutes=(way,))


@pytest.mark.parametrize("method", names())
def test_every_quantity_of_every_method_can_be_worked_out_on_paper(tables: Tables, method: str) -> None:
    """Each has its unit, a formula, a source; and where it is no plain count, numbers to put into the formula."""
    kinds = frozenset(map(fact, KINDS)) if method == "visit" else frozenset()
    found = take_off(repair(method, -12, 25, reroute="east", facts=kinds), everywhere(), tables)
    assert found.quantities
    for quantity in found.quantities:
        assert quantity.unit == QUANTITIES[quantity.name][0]
        assert len(quantity.formula) > 3, quantity.name
        assert quantity.source, quantity.name
        assert quantity.value > 0
        assert quantity.inputs or quantity.value <= 4, quantity.name


@pytest.mark.parametrize("method", names())
def test_every_fact_set_is_a_fact_that_recipes_may_ask_for(tables: Tables, method: str) -> None:
    assert take_off(repair(method, -12, 25, reroute="east"), everywhere(), tables).facts <= set(FACTS)


@pytest.mark.parametrize("method", names())
def test_no_method_ever_says_that_none_is_required(tables: Tables, method: str) -> None:
    found = take_off(repair(method, -12, 25, reroute="east"), everywhere(), tables)
    said = " ".join(str(s) for s in (*found.assumptions, *found.cautions)).lower()
    assert "none required" not in said
    assert "not required" not in said


@pytest.mark.parametrize("method", names())
def test_measuring_leaves_the_job_alone_and_gives_the_same_twice(tables: Tables, method: str) -> None:
    job = everywhere()
    assert take_off(repair(method, -12, 25, reroute="east"), job, tables) == take_off(
        repair(method, -12, 25, reroute="east"), job, tables
    )


@pytest.mark.parametrize("method", ["yard spot", "trench", "tunnel", "break-through", "reline", "burst"])
def test_a_longer_stretch_never_takes_less_pipe_earth_or_resin(tables: Tables, method: str) -> None:
    names = (
        "dig_cf",
        "tunnel_cf",
        "inside_dig_bcy",
        "pipe_ft",
        "resin_gal",
        "burst_pipe_ft",
        "hangers",
        "couplings",
        "sand_tons",
        "sod_sf",
    )
    short, long = (take_off(repair(method, -12, to, reroute="east"), everywhere(), tables) for to in (18, 25))
    for name in names:
        assert long.value(name) >= short.value(name) - 1e-9, name


# ── once a job ────────────────────────────────────────────────────────────────────────────────


def taken(tables: Tables, job: Job, *methods: str) -> list[Takeoff]:
    return [take_off(repair(m, 10, 30), job, tables) for m in methods]


def test_two_digs_bring_the_machine_and_the_permit_once(tables: Tables) -> None:
    job = house(maple_line())
    once = take_off_job(job, taken(tables, job, "yard spot", "trench"), tables)
    assert once.value("jobs") == once.value("permits") == once.value("inspections") == 1
    assert once.value("excavator_deliveries") == once.value("films_after") == 1


def test_cleaning_and_testing_need_no_permit_and_no_inspector(tables: Tables) -> None:
    job = house(maple_line(), jurisdiction="unknown")
    once = take_off_job(job, taken(tables, job, "clean", "isolation test"), tables)
    assert once.value("permits") == once.value("inspections") == 0
    assert once.assumptions == ()
    assert once.value("films_after") == 0


def test_a_test_alone_needs_no_film_after(tables: Tables) -> None:
    job = house(maple_line())
    assert take_off_job(job, taken(tables, job, "isolation test"), tables).value("films_after") == 0


def test_each_line_touched_is_filmed_after(tables: Tables) -> None:
    job = replace(house(maple_line()), lines=(maple_line(), replace(maple_line(), name="kitchen")))
    both = [take_off(replace(repair("yard spot", 10, 20), line=name), job, tables) for name in ("main", "kitchen")]
    assert take_off_job(job, both, tables).value("films_after") == 2


def test_where_nobody_asked_about_the_inspector_the_wait_is_counted_and_said(tables: Tables) -> None:
    job = house(maple_line(), jurisdiction="unknown")
    once = take_off_job(job, taken(tables, job, "yard spot"), tables)
    assert once.value("inspections") == 1
    assert any(
        "an inspector sees the pipe before it is covered; the price includes the standby" in str(a)
        for a in once.assumptions
    )


def test_the_job_has_the_facts_of_all_its_repairs(tables: Tables) -> None:
    job = pecan_house()
    once = take_off_job(job, [take_off(repair("tunnel", -2, 27), job, tables)], tables)
    assert {"tunnel", "engineer", "slurry_backfill", "under_slab"} <= once.facts


def test_a_job_without_repairs_is_still_a_job(tables: Tables) -> None:
    assert [q.name for q in take_off_job(house(maple_line()), [], tables).quantities] == ["jobs"]


# ── the house ─────────────────────────────────────────────────────────────────────────────────


@pytest.mark.parametrize(
    ("change", "fact"),
    [
        ({"lived_in": True}, "lived_in"),
        ({"sewer": "septic"}, "septic"),
        ({"built": 1977}, "built_before_1978"),
        ({"bathrooms": 1}, "one_bathroom"),
        ({"expansive_soil": True}, "expansive_soil"),
        ({"slab_thickness_ft": 0.5}, "slab_over_4in"),
        ({"soil": "fill"}, "over_fill"),
    ],
)
def test_a_word_about_the_house_becomes_a_fact(tables: Tables, change: dict[str, object], fact: str) -> None:
    plain = take_off(repair("yard spot", 10, 20), house(maple_line()), tables)
    told = take_off(repair("yard spot", 10, 20), house(maple_line(), **change), tables)
    assert fact not in plain.facts
    assert fact in told.facts


@pytest.mark.parametrize(("year", "old"), [(1977, True), (1978, False)])
def test_lead_paint_is_for_houses_built_before_1978(tables: Tables, year: int, old: bool) -> None:
    """40 CFR 745.83 [read]."""
    found = take_off(repair("yard spot", 10, 20), house(maple_line(), built=year), tables)
    assert ("built_before_1978" in found.facts) is old


@pytest.mark.parametrize(
    ("month", "facts"),
    [
        (5, set()),
        (6, {"hot_season"}),
        (8, {"hot_season", "clay_dry_months"}),
        (9, {"hot_season", "clay_dry_months"}),
        (10, set()),
    ],
)
def test_the_season_is_a_fact(tables: Tables, month: int, facts: set[str]) -> None:
    job = replace(house(maple_line()), day=date(2026, month, 15))
    found = take_off(repair("yard spot", 10, 20), job, tables)
    assert found.facts & {"hot_season", "clay_dry_months"} == facts


def test_planned_foundation_work_and_a_claim_are_facts(tables: Tables) -> None:
    job = replace(house(maple_line()), foundation=Foundation(work="planned"))
    job = replace(job, customer=replace(job.customer, claim="C-1"))
    assert {"foundation_planned", "insurance_claim"} <= take_off(repair("yard spot", 10, 20), job, tables).facts


# ── small methods ─────────────────────────────────────────────────────────────────────────────


def test_isolation_tests_the_line_and_each_side_drain_to_slab_level_only(tables: Tables) -> None:
    found = take_off(repair("isolation test", 0, 27), pecan_house(), tables)
    assert found.value("isolation_tests") == 4
    assert found.value("test_head_ft") == 2.6
    assert found.value("test_minutes") == 20
    assert any("lowest opening" in str(c) for c in found.cautions)


def test_new_pipe_is_tested_to_the_codes_head(tables: Tables) -> None:
    found = take_off(repair("tunnel", -2, 27), pecan_house(), tables)
    assert found.value("test_head_ft") == 10
    assert round(found.value("test_psi"), 2) == 4.33
    assert found.value("test_fill_gal") == pytest.approx(0.0408 * 16 * (29 + 10))


def test_pipe_in_a_crawl_space_is_hung_not_dug(tables: Tables) -> None:
    line = changed(pecan_line(), at("crawl", 0.0, 40.0, lengths=(("", 1.9),), note="mud"))
    found = take_off(repair("crawl replace", 0, 27), house(line, floor="crawl space"), tables)
    assert found.value("pipe_crawl_ft") == 27
    assert found.value("hangers") == 7 + 1 + 3
    assert found.value("dig_cf") == found.value("spoil_lcy") == 0
    assert {"crawl_low", "crawl_mud"} <= found.facts


def test_a_toilet_is_pulled_for_a_test_unless_one_is_off_already(tables: Tables) -> None:
    line = pecan_line()
    by_cleanout = replace(line, passes=tuple(replace(p, access="cleanout") for p in line.passes))
    assert toilets(repair("tunnel", -2, 27), pecan_house(by_cleanout), tables) == 1
    assert toilets(repair("tunnel", -2, 27), pecan_house(), tables) == 0


def test_pipe_in_a_yard_or_a_crawl_space_is_filled_through_a_riser_of_its_own(tables: Tables) -> None:
    """No toilet is pulled where no floor lies over the new pipe: the riser stands in its test tee (common practice)."""
    assert toilets(repair("trench", 10, 30), house(maple_line()), tables) == 0
    assert toilets(repair("burst", 10, 30), house(maple_line()), tables) == 0
    crawl = changed(pecan_line(), at("crawl", 0.0, 40.0, lengths=(("", 1.9),)))
    assert toilets(repair("crawl replace", 0, 27), house(crawl, floor="crawl space"), tables) == 0


def test_a_failed_test_over_the_line_makes_its_soil_type_c(tables: Tables) -> None:
    from estimator.model.stretch import Stretch
    from estimator.takeoff.case import Case
    from estimator.works.ground import leaks_here

    job = replace(
        house(replace(maple_line(), findings=())),
        water_tests=(WaterTest(section="main", covers=("main",), result="failed"),),
    )
    assert leaks_here(Case.of(repair("trench", 10, 20), job, tables), Stretch(10, 20))
    passed = replace(job, water_tests=(WaterTest(section="main", covers=("main",), result="passed"),))
    assert not leaks_here(Case.of(repair("trench", 10, 20), passed, tables), Stretch(10, 20))


def test_a_leak_is_reckoned_between_the_first_and_the_last_reading() -> None:
    """3 in riser: 0.0306 gal an inch; 1 in from minute 5 to minute 20 is 0.122 gal/h."""
    found = leak(WaterTest(section="main", open_risers_in=(3.0,), readings=((5, 0.5), (10, 1.0), (20, 1.5))))
    assert found is not None
    assert found.gal_per_hour == pytest.approx(0.0408 * 9 / 12 * 4, rel=1e-9)


def test_readings_that_do_not_follow_in_time_give_no_leak_rate() -> None:
    assert leak(WaterTest(section="main", open_risers_in=(3.0,), readings=((5, 0.0), (5, 1.0)))) is None
    assert leak(WaterTest(section="main", open_risers_in=(), readings=((0, 0.0), (5, 1.0)))) is None


@pytest.mark.parametrize(("high_ft", "low"), [(2.0, False), (1.99, True)])
def test_a_crawl_space_is_low_below_the_firms_limit(tables: Tables, high_ft: float, low: bool) -> None:
    line = changed(pecan_line(), at("crawl", 0.0, 40.0, lengths=(("", high_ft),)))
    assert ("crawl_low" in take_off(repair("crawl replace", 0, 27), house(line), tables).facts) is low


def test_a_level_read_in_the_lawn_does_not_set_the_height_of_a_test_in_the_house(tables: Tables) -> None:
    line = changed(pecan_line(), at("level", -5.0, depth_ft=9.0, surface="lawn"))
    assert take_off(repair("isolation test", 0, 27), pecan_house(line), tables).value("test_head_ft") == 2.6


def test_toilets_pulled_follow_the_firms_number_for_each_test(tables: Tables) -> None:
    two = tables.with_settings({"toilets_per_test": "2"})
    line = pecan_line()
    by_cleanout = replace(line, passes=tuple(replace(p, access="cleanout") for p in line.passes))
    assert toilets(repair("tunnel", -2, 27), pecan_house(by_cleanout), two) == 2
    assert toilets(repair("isolation test", 0, 27), pecan_house(by_cleanout), two) == 2


def toilets(one: Repair, job: Job, tables: Tables) -> float:
    """Toilets sold in an option of this repair alone; the works pull just as many."""
    found = take_off(one, job, tables)
    sold = found.value("toilets") + take_off_job(job, [found], tables).value("toilets")
    assert sold == found.works.toilets_pulled
    return sold

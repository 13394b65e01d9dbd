"""What a rule asks for becomes work somebody pays for, or at least a line on the crew's list: none gets lost on the way."""

from dataclasses import replace
from datetime import date

import pytest

from estimator.model.job import Leg, Reroute
from estimator.model.judgement import Effect, Verdict
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.model.wanted import Approval, Override
from estimator.model.work import Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff import take_off, take_off_job
from estimator.takeoff.quantities import FACTS, QUANTITIES
from tests.made_up.stretch import demo_tables
from tests.takeoff.houses import at, changed, house, maple_line, pecan_house, repair

PRICED: dict[str, str] = {
    # once a scope, in takeoff/asked.py or takeoff/job.py
    "services_scan": "service_scans", "lead_safe": "lead_safe_setups", "arborist": "arborist_visits",
    "test_after_lift": "tests_after_lift", "backwater_valve": "backwater_valves", "tendon_scan": "tendon_scans",
    "asbestos_check": "asbestos_tests", "private_locate": "private_locates", "portable_toilet": "portable_toilets",
    "sleeve": "sleeves", "flexible_connection": "flexible_joints", "seal_water_first": "water_seals",
    "prove_branches": "branches_proven", "fixtures_off": "fixtures_moved", "footing_support": "engineer_letters",
    "film_after_fill": "films_after", "inspection_before_cover": "inspections", "street_permit": "street_closures",
    # in the takeoff of the way of repair itself
    "vent_needed": "vents", "fill_old_pipe": "abandon_fill_cy", "cap_ends": "caps", "reinstate": "reinstatements",
    "descale_first": "descale_ft", "clean_first": "clean_ft", "film_again": "films_before", "split_shot": "shots",
    "transition_liner": "shots", "flexible_liner": "liner_cut_ft", "potholes_first": "potholes", "new_cleanout": "cleanouts",
    "new_pipe_test": "tests", "floor_opened_at_fixtures": "penetrations", "hand_tunnel_under_beam": "tunnel_ft",
    "second_way_out": "pits", "air_plan": "tunnel_ft", "concrete_dust": "dust_wall_lf",
}  # fmt: skip
"""A fact that costs the firm something, and the quantity by which a work item prices it."""

ONLY_SAID = {
    "cable_through_first", "competent_person", "confirm_first", "dip_stays", "drains_locked_out", "end_seals", "ladder",
    "levels_missing", "low_odor_resin", "permission_first", "septic_permit", "utility_locate", "utility_in_the_bore", "void",
    "dig_first", "dig_at_branch", "asbestos_cement",
}  # fmt: skip
"""Facts that cost nothing of their own: word of mouth, paper, a repair of its own that comes first, resin the firm has."""

ASKED = list(FACTS)[list(FACTS).index("air_plan") :]


def test_every_fact_a_rule_asks_for_is_priced_or_said() -> None:
    assert set(ASKED) == set(PRICED) | ONLY_SAID
    assert not set(PRICED) & ONLY_SAID


def test_every_priced_fact_has_a_work_item_that_asks_for_its_quantity() -> None:
    sold = {item.quantity for item in demo_tables().work_items} | {r.quantity for r in demo_tables().recipes}
    assert set(PRICED.values()) <= set(QUANTITIES)
    assert set(PRICED.values()) <= sold


def told(*facts: str, method: str = "trench", effect: Effect = Effect.REQUIRES_FIRST) -> Takeoff:
    """A measured repair with a verdict that adds these facts."""
    say = Say.of("said to the crew")
    verdict = Verdict(
        rule="a-rule", effect=effect, method=method, line="main", stretch=Stretch(10, 30), homeowner=say, estimator=say, facts=frozenset(facts)
    )  # fmt: skip
    return Takeoff(repair=replace(repair(method, 10, 30), verdicts=(verdict,)), quantities=(), facts=frozenset(facts))


@pytest.mark.parametrize("fact", ["lead_safe", "arborist", "test_after_lift", "backwater_valve", "services_scan"])
def test_what_is_asked_for_by_two_repairs_is_done_once(tables: Tables, fact: str) -> None:
    job = house(maple_line())
    assert take_off_job(job, [told(fact), told(fact)], tables).value(PRICED[fact]) == 1
    assert take_off_job(job, [told()], tables).value(PRICED[fact]) == 0


def test_a_scan_for_cables_finds_water_and_power_too(tables: Tables) -> None:
    both = take_off_job(house(maple_line()), [told("services_scan", "tendon_scan")], tables)
    assert (both.value("tendon_scans"), both.value("service_scans")) == (1, 0)


def test_an_engineer_asked_for_by_a_rule_writes_one_letter_unless_it_is_on_file(tables: Tables) -> None:
    job = pecan_house()
    tunnel = take_off(repair("tunnel", -2, 27), job, tables)  # counts a letter of its own: beams
    assert tunnel.value("engineer_letters") == 1
    assert take_off_job(job, [told("engineer")], tables).value("engineer_letters") == 1
    assert take_off_job(job, [told("engineer"), tunnel], tables).value("engineer_letters") == 0
    filed = Approval(what="engineer's letter", by="a registered engineer", on=date(2026, 11, 1), covers=("a-rule",))
    on_file = replace(job, approvals=(filed,))
    assert take_off_job(on_file, [told("engineer")], tables).value("engineer_letters") == 0


@pytest.mark.parametrize(("days", "weeks"), [(0.5, 0), (1.0, 0), (1.01, 1), (5.0, 1), (5.01, 2)])
def test_a_portable_toilet_comes_when_the_only_bathroom_is_out_for_more_than_a_day(
    tables: Tables, days: float, weeks: int
) -> None:
    """portable_toilet_from_days 1, portable_toilet_days 5: the firm's settings."""
    job = house(maple_line(), bathrooms=1, lived_in=True)
    assert take_off_job(job, [told("portable_toilet")], tables, days).value("portable_toilets") == weeks
    assert take_off_job(job, [told()], tables, days).value("portable_toilets") == 0


def test_a_sleeve_for_each_wall_a_joint_for_each_edge_and_water_run_through_each_unproven_drain(tables: Tables) -> None:
    beams = (at("beam", 12.0, 13.0, through=True), at("beam", 20.0, 21.0))
    drains = (at("branch", 15.0, size_in=2.0), at("branch", 25.0, size_in=2.0, live="live", proven=True))
    job = house(
        changed(maple_line(), *beams, *drains, at("under", 12.0, choice="tub"), at("under", 60.0, choice="wall"))
    )
    asked = take_off_job(
        job, [told("sleeve", "flexible_connection", "prove_branches", "fixtures_off", "seal_water_first")], tables
    )
    names = ("sleeves", "flexible_joints", "branches_proven", "fixtures_moved", "water_seals")
    assert [asked.value(name) for name in names] == [1, 1, 1, 1, 1]


def test_a_way_round_through_two_walls_gets_two_sleeves(tables: Tables) -> None:
    way = Reroute(
        name="east", replaces_line="main", legs=(Leg(zone="wall", length_ft=9.0),), penetrations=(("wall", 2),)
    )
    job = replace(house(maple_line()), reroutes=(way,))
    takeoff = told("sleeve", method="reroute")
    there = replace(takeoff, repair=replace(takeoff.repair, reroute="east"))
    assert take_off_job(job, [there], tables).value("sleeves") == 2


@pytest.mark.parametrize(("asked", "noted", "vents"), [(False, 0, 0), (True, 0, 1), (True, 2, 2), (False, 1, 1)])
def test_a_new_way_longer_than_a_trap_arm_gets_a_vent(tables: Tables, asked: bool, noted: int, vents: int) -> None:
    way = Reroute(name="east", replaces_line="main", legs=(Leg(zone="wall", length_ft=9.0),), vents=noted)
    job = replace(house(maple_line()), reroutes=(way,))
    facts = frozenset({"vent_needed"} if asked else set())
    assert take_off(repair("reroute", 10, 30, reroute="east", facts=facts), job, tables).value("vents") == vents


def test_old_pipe_is_filled_where_a_rule_asks_even_if_it_is_small(tables: Tables) -> None:
    job = house(replace(maple_line(), size_in=2))
    assert take_off(repair("abandon", 10, 30), job, tables).value("abandon_fill_cy") == 0
    asked = repair("abandon", 10, 30, facts=frozenset({"fill_old_pipe"}))
    assert take_off(asked, job, tables).value("abandon_fill_cy") > 0


@pytest.mark.parametrize("effect", [e for e in Effect if e not in (Effect.BLOCKS, Effect.DOES_NOT_FIX, Effect.PREFERS)])
def test_what_a_rule_asks_for_is_on_the_crews_list(tables: Tables, effect: Effect) -> None:
    said = take_off_job(house(maple_line()), [told("potholes_first", effect=effect)], tables).cautions
    assert Say.of("said to the crew") in said


def test_what_the_owner_overruled_asks_for_nothing(tables: Tables) -> None:
    takeoff = told("lead_safe")
    verdict = replace(takeoff.repair.verdicts[0], overruled="paint tested: no lead")
    overruled = replace(takeoff.repair, verdicts=(verdict,))
    job = replace(house(maple_line()), overrides=(Override(rule="a-rule", reason="paint tested: no lead"),))
    assert "lead_safe" not in take_off(overruled, job, tables).facts
    assert take_off_job(job, [replace(takeoff, repair=overruled, facts=frozenset())], tables).cautions == ()

"""Maple: one hole in the lawn over 9 ft of clay pipe. Every quantity as worked out by hand on paper.

D = 3.4 + 0.1875 + 0.33 = 3.9175 -> 4.0 ft; width 0.375 + 2.0 = 2.375 -> 2.4 ft; L = 9 + 2 = 11 ft.
"""

import math

import pytest

from estimator.model.job import Site
from estimator.model.work import Takeoff
from estimator.scopes.judge import Judge
from estimator.scopes.rules import may
from estimator.tables.tables import Tables
from estimator.takeoff import take_off, take_off_job
from tests.takeoff.houses import house, maple_line, repair


@pytest.fixture
def maple(tables: Tables) -> Takeoff:
    return take_off(repair("yard spot", 36, 45), house(maple_line()), tables)


BY_HAND = {
    "pipe_ft": 9.0,
    "dig_length_ft": 11.0,
    "dig_depth_ft": 4.0,
    "safety_depth_ft": 3.4 + 0.1875 + 0.33 + 0.5,
    "dig_width_ft": 2.4,
    "dig_top_width_ft": 2.4,
    "dig_cf": 105.6,
    "dig_bcy": 105.6 / 27,
    "spoil_lcy": 105.6 / 27 * 1.30,
    "pile_sf": 105.6 * 1.30 / 2.5,
    "pipe_zone_cf": 11 * 2.4 * (0.33 + 0.375 + 0.5),
    "pipe_zone_ccy": (31.812 - math.pi / 4 * 0.375**2 * 11) / 27,
    "sand_tons": (31.812 - math.pi / 4 * 0.375**2 * 11) / 27 * 1.15 * 1.35,
    "sand_delivery": 1,
    "native_ccy": (105.6 - 31.812) / 27,
    "backfill_ccy": (105.6 - 31.812) / 27 + (31.812 - math.pi / 4 * 0.375**2 * 11) / 27,
    "export_lcy": (105.6 / 27 - (105.6 - 31.812) / 27 / 0.90) * 1.30,
    "loads": 1,
    "ladders": 1,
    "potholes": 1,
    "pipe_trench_ft": 9.0,
    "pipe_buy_ft": 9.0,
    "end_couplings": 2,
    "couplings": 2,
    "sod_sf": 60,
}


@pytest.mark.parametrize("name", BY_HAND)
def test_maple_gives_the_quantity_worked_out_by_hand(maple: Takeoff, name: str) -> None:
    assert maple.value(name) == pytest.approx(BY_HAND[name], abs=1e-9)


@pytest.mark.parametrize(
    ("name", "shown"),
    [("dig_bcy", 3.911), ("native_ccy", 2.733), ("pipe_zone_ccy", 1.133), ("sand_tons", 1.759)],
)
def test_maple_rounds_to_the_figures_on_the_page(maple: Takeoff, name: str, shown: float) -> None:
    assert round(maple.value(name), 3) == shown


def test_maple_has_no_branch_no_tunnel_no_water_test_and_no_second_way_of_digging(maple: Takeoff) -> None:
    for name in (
        "branches",
        "wyes",
        "tunnel_ft",
        "tests",
        "toilets",
        "hand_dig_bcy",
        "boxes",
        "dewater_days",
        "cleanouts",
    ):
        assert maple.value(name) == 0, name


def test_maple_says_that_one_reading_was_taken_over_the_whole_hole(maple: Takeoff) -> None:
    assert "one located depth applies to 11 ft" in [str(a) for a in maple.assumptions]


def test_maple_with_the_locators_error_counts_as_deeper_than_four_feet(maple: Takeoff) -> None:
    assert "depth_over_4" in maple.facts
    assert "depth_over_5" not in maple.facts


def test_maple_never_says_that_no_protection_is_needed(maple: Takeoff, tables: Tables) -> None:
    ruled = Judge(house(maple_line()), tables, may).verdicts(maple.repair.method, "main", maple.repair.stretch, ())
    said = " ".join(str(c) for c in (*maple.cautions, *(v.estimator for v in ruled)))
    assert "competent person" in said
    assert "none" not in said


def test_maple_facts(maple: Takeoff) -> None:
    of_the_works = {"dug", "people_below", "ground_opened", "machine_dug", "pipe_laid", "pipe_cut", "pipe_renewed"}
    assert maple.facts == of_the_works | {"clay_pipe", "depth_over_4", "lawn", "roots_in_pipe", "small_finish"}
    assert maple.size == "4"


def test_the_job_around_maple_has_everything_once(tables: Tables, maple: Takeoff) -> None:
    job = take_off_job(house(maple_line()), [maple], tables)
    assert {q.name: q.value for q in job.quantities} == {
        "jobs": 1,
        "permits": 1,
        "inspections": 1,
        "films_after": 1,
        "excavator_deliveries": 1,
    }


def test_by_hand_only_the_same_hole_is_dug_and_filled_by_hand(tables: Tables) -> None:
    narrow = house(maple_line(), site=Site(gate_ft=35.9 / 12))
    dug = take_off(repair("yard spot", 36, 45), narrow, tables)
    assert dug.value("hand_dig_bcy") == pytest.approx(105.6 / 27)
    assert dug.value("dig_bcy") == 0
    assert dug.value("hand_backfill_ccy") == pytest.approx(BY_HAND["backfill_ccy"])
    assert "hand_only" in dug.facts


def test_a_gate_of_exactly_the_machines_width_lets_it_through(tables: Tables) -> None:
    wide = house(maple_line(), site=Site(gate_ft=36 / 12))
    assert take_off(repair("yard spot", 36, 45), wide, tables).value("dig_bcy") > 0


def test_every_quantity_of_maple_carries_formula_inputs_and_source(maple: Takeoff) -> None:
    for quantity in maple.quantities:
        assert quantity.formula, quantity.name
        assert quantity.source, quantity.name

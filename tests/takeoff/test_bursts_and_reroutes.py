"""Bursting and ways round: pits from the pipe's bend, fall needed and left, size by fixtures, what is left in the ground."""

import math
from dataclasses import replace
from typing import Any

import pytest

from estimator.model.job import Job, Leg, Reroute
from estimator.model.judgement import Effect
from estimator.model.say import Feet
from estimator.model.work import Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from estimator.takeoff.working import up
from estimator.works.burst_works import s_entry_ft, straight_entry_ft
from tests.takeoff.houses import at, changed, house, maple_line, pecan_line, repair


@pytest.fixture
def burst(tables: Tables) -> Takeoff:
    return take_off(repair("burst", 10, 50), house(maple_line()), tables)


def test_the_entry_pit_is_as_long_as_the_bend_needs(burst: Takeoff) -> None:
    """R = 27 x 4.5 in = 10.125 ft, H = 4.0 ft: √(2 x 10.125 x 4 - 16) = 8.062 -> 8.1 ft."""
    assert burst.value("burst_entry_ft") == up(math.sqrt(2 * 10.125 * 4.0 - 16), 0.1) == 8.1


def test_a_rig_that_needs_an_s_curve_takes_a_longer_pit(tables: Tables) -> None:
    found = take_off(repair("burst", 10, 50), house(maple_line()), tables.with_settings({"burst_entry": "S"}))
    assert found.value("burst_entry_ft") == up(math.sqrt(4 * (4 * 10.125 - 4)), 0.1)


@pytest.mark.parametrize(("entry", "most"), [(straight_entry_ft, 7.5), (s_entry_ft, 15.0)])
def test_an_entry_grows_with_depth_to_its_most_and_no_farther(entry, most: float) -> None:  # type: ignore[no-untyped-def]
    lengths = [entry(7.5, depth) for depth in (1.0, 3.0, 6.0, most, most + 5)]
    assert lengths == sorted(lengths)
    assert lengths[-1] == lengths[-2] == most


def test_pipe_tails_joints_and_pits(burst: Takeoff) -> None:
    assert burst.value("burst_pipe_ft") == 46
    assert burst.value("burst_joints") == math.ceil(46 / 20) - 1
    assert burst.value("pits") == 2
    assert burst.value("dig_bcy") == pytest.approx(4.0 * (8.1 * 2.5 + 5 * 4) / 27)
    assert burst.value("pipe_trench_ft") == burst.value("pipe_buy_ft") == 0


def test_each_side_drain_has_its_own_pit_and_each_utility_its_pothole(tables: Tables) -> None:
    line = changed(
        maple_line(), at("branch", 20.0, size_in=3.0, live="live", proven=True), at("crossing", 30.0, choice="gas")
    )
    found = take_off(repair("burst", 10, 50), house(line), tables)
    assert found.value("pits") == 3
    assert found.value("potholes") == 2
    assert found.value("branches") == 1
    assert found.value("dig_bcy") == pytest.approx(4.0 * (8.1 * 2.5 + 5 * 4 + 3 * 3) / 27)


@pytest.mark.parametrize(("to_ft", "pulls"), [(150, 1), (150.1, 2)])
def test_a_run_too_long_is_pulled_twice(tables: Tables, to_ft: float, pulls: float) -> None:
    assert take_off(repair("burst", 0, to_ft), house(maple_line()), tables).value("burst_pulls") == pulls


# ── ways round ────────────────────────────────────────────────────────────────────────────────


def way(**slots: Any) -> Reroute:
    facts: dict[str, Any] = {
        "name": "east wall",
        "replaces_line": "main",
        "legs": (Leg(zone="wall", length_ft=12.0), Leg(zone="yard", length_ft=26.0)),
        "fall_available_ft": 14 / 12,
        "serves": (("kitchen sink", 1), ("clothes washer", 1)),
        "size_in": 2.0,
        "penetrations": (("wall", 2), ("roof", 1)),
        "turns": 3,
        "vents": 1,
        **slots,
    }
    return Reroute(**facts)


def round_about(tables: Tables, **slots: Any) -> Takeoff:
    job: Job = house(pecan_line(), job={"reroutes": (way(**slots),)})
    return take_off(repair("reroute", 0, 27, reroute="east wall"), job, tables)


def test_the_way_is_as_long_as_its_legs_and_five_percent(tables: Tables) -> None:
    found = round_about(tables)
    assert found.value("reroute_ft") == pytest.approx(38 * 1.05)
    assert found.size == "2"


def test_fall_needed_against_fall_left_after_the_wye(tables: Tables) -> None:
    found = round_about(tables)
    assert found.value("fall_needed_ft") * 12 == pytest.approx(38 * 1.05 * 0.25)  # 9.975 in
    assert found.value("fall_available_ft") * 12 == pytest.approx(14 - 3)
    assert "reroute-has-the-fall" not in [f.rule for f in found.finds]


@pytest.mark.parametrize(("inches", "blocked"), [(9.975 + 3.001, False), (9.975 + 2.99, True), (6.6, True)])
def test_a_way_without_the_fall_is_blocked(tables: Tables, inches: float, blocked: bool) -> None:
    finds = [f for f in round_about(tables, fall_available_ft=inches / 12).finds if f.rule == "reroute-has-the-fall"]
    assert bool(finds) is blocked
    assert all(f.effect is Effect.BLOCKS for f in finds)


def test_a_fall_nobody_measured_gives_no_fixed_price(tables: Tables) -> None:
    finds = round_about(tables, fall_available_ft=None).finds
    assert [(f.rule, f.effect) for f in finds] == [("reroute-has-the-fall", Effect.NO_FIXED_PRICE)]


def test_a_drop_needs_no_fall(tables: Tables) -> None:
    found = round_about(tables, legs=(Leg(zone="drop", length_ft=8.0), Leg(zone="yard", length_ft=20.0)))
    assert found.value("fall_needed_ft") * 12 == pytest.approx(20 * 1.05 * 0.25)


@pytest.mark.parametrize(
    ("serves", "units", "size"),
    [
        ((("kitchen sink", 1),), 2, "2"),
        ((("bathroom_groups", 1),), 5, "3"),
        ((("bathroom_groups", 2), ("kitchen_sink", 1), ("clothes_washer", 1)), 14, "3"),
        ((("kitchen sink", 11),), 22, "3"),
        ((("bathroom_groups", 8),), 40, "4"),
    ],
)
def test_the_size_follows_the_fixtures_where_the_notes_name_none(
    tables: Tables, serves: tuple[tuple[str, int], ...], units: float, size: str
) -> None:
    found = round_about(tables, serves=serves, size_in=None)
    assert found.value("fixture_units") == units
    assert found.size == size


def test_a_pipe_too_small_for_its_fixtures_is_blocked(tables: Tables) -> None:
    small = round_about(tables, serves=(("toilet", 1),), size_in=2.0)
    assert "pipe-carries-its-fixtures" in [f.rule for f in small.finds]
    assert "pipe-carries-its-fixtures" not in [
        f.rule for f in round_about(tables, serves=(("toilet", 1),), size_in=3.0).finds
    ]


def test_toilets_and_tubs_cannot_go_by_the_wall_without_opening_the_floor(tables: Tables) -> None:
    found = round_about(tables, serves=(("tub", 1),), size_in=2.0)
    assert [(f.rule, f.effect) for f in found.finds] == [
        ("wall-way-serves-what-drains-above-the-floor", Effect.ADDS_WORK)
    ]


def test_a_fixture_no_table_knows_is_said_and_left_out(tables: Tables) -> None:
    found = round_about(tables, serves=(("kitchen sink", 1), ("fish pond", 1)))
    assert found.value("fixture_units") == 2
    assert any("fish pond" in str(a) for a in found.assumptions)


def test_where_nobody_asked_for_the_code_the_stricter_family_counts(tables: Tables) -> None:
    """Nine units on 2 in at 1/4 in/ft: the IPC allows 21, the UPC 8."""
    job = house(
        pecan_line(),
        jurisdiction="unknown",
        job={"reroutes": (way(serves=(("kitchen sink", 4), ("lavatory", 1)), size_in=None),)},
    )
    assert take_off(repair("reroute", 0, 27, reroute="east wall"), job, tables).size == "3"
    assert round_about(tables, serves=(("kitchen sink", 4), ("lavatory", 1)), size_in=None).size == "2"


def test_holes_vents_flashing_and_the_buried_part(tables: Tables) -> None:
    found = round_about(tables)
    assert found.value("penetrations") == 3
    assert found.value("roof_flashings") == found.value("vents") == 1
    assert found.value("wall_cover_ft") == 12
    width = up(2.375 / 12 + 2.0, 0.1)
    deep = up(1.5 + 26 * 0.25 / 12, 0.1)  # falls 6.5 in on the way
    assert found.value("dig_bcy") == pytest.approx(26 * width * (1.5 + deep) / 2 / 27)
    assert found.value("end_couplings") == 2
    assert found.value("potholes") == 1


def test_the_old_pipe_is_capped_at_each_end_and_side_drain_and_filled_under_the_slab(tables: Tables) -> None:
    found = round_about(tables)
    assert found.value("caps") == 2 + 3
    whole_ft = found.quantity("abandon_fill_cy")
    assert whole_ft is not None
    length = {i.name: i.value for i in whole_ft.inputs}["length"]
    assert whole_ft.value == pytest.approx(0.0408 * 16 * float(length) / (7.48 * 27))


def test_small_old_pipe_is_capped_but_not_filled(tables: Tables) -> None:
    small = replace(pecan_line(), size_in=3)
    assert take_off(repair("abandon", 0, 27), house(small), tables).value("abandon_fill_cy") == 0
    assert take_off(repair("abandon", 0, 27), house(pecan_line()), tables).value("abandon_fill_cy") > 0


def test_a_way_round_that_is_not_in_the_notes_is_said(tables: Tables) -> None:
    found = take_off(repair("reroute", 0, 27, reroute="west wall"), house(pecan_line()), tables)
    assert found.quantities == ()
    assert any("no reroute of that name" in str(a) for a in found.assumptions)


def test_the_reader_is_told_inches_needed_and_inches_there(tables: Tables) -> None:
    missing = round_about(tables, fall_available_ft=6.6 / 12).finds[0]
    assert "needs 10.0 inches and has 3.6" in str(missing.homeowner)
    unknown = round_about(tables, fall_available_ft=None).finds[0]
    assert "10.0 in are needed" in str(unknown.estimator)


def test_the_buried_part_has_sand_and_new_lawn(tables: Tables) -> None:
    found = round_about(tables)
    width = up(2.375 / 12 + 2.0, 0.1)
    assert found.value("pipe_zone_ccy") == pytest.approx(26 * width * (0.33 + 2.375 / 12 + 0.5) / 27)
    assert found.value("sod_sf") == up(28 * (width + 2), 10)


def test_two_pulls_have_two_tails_and_two_pits_to_pull_to(tables: Tables) -> None:
    found = take_off(repair("burst", 0, 160), house(maple_line()), tables)
    assert found.value("burst_pipe_ft") == 160 + 2 * 6
    assert found.value("pits") == 3


def test_clearance_kept_free_comes_off_the_fall(tables: Tables) -> None:
    kept = tables.with_settings({"reroute_clearance_in": "2"})
    assert round_about(kept).value("fall_available_ft") * 12 == pytest.approx(14 - 3 - 2)


def test_sand_and_soil_go_back_into_every_pit(burst: Takeoff) -> None:
    plan = 8.1 * 2.5 + 5 * 4
    assert burst.value("pipe_zone_ccy") == pytest.approx(plan * (0.33 + 0.375 + 0.5) / 27)
    assert burst.value("native_ccy") == pytest.approx(plan * (4.0 - 1.205) / 27)
    assert burst.value("backfill_ccy") == pytest.approx(plan * 4.0 / 27)


def test_the_buried_part_of_a_way_round_is_filled_to_the_top(tables: Tables) -> None:
    found = round_about(tables)
    assert found.value("backfill_ccy") == pytest.approx(found.value("dig_bcy"))


def test_a_way_round_under_the_drive_puts_the_drive_back(tables: Tables) -> None:
    legs = (Leg(zone="yard", length_ft=10.0), Leg(zone="drive", length_ft=12.0), Leg(zone="walk", length_ft=4.0))
    found = round_about(tables, legs=legs)
    width = up(2.375 / 12 + 2.0, 0.1)
    assert found.value("drive_sf") == pytest.approx(12.0 * (width + 2))
    assert found.value("flatwork_sf") == pytest.approx(5.0 * 5.0)  # 4 + 1 ft, and 4.2 ft up to the panel
    assert found.value("sod_sf") == up(11 * (width + 2), 10)


@pytest.mark.parametrize(("begins", "ladders", "boxes"), [("3.3", 0, 0), ("3.4", 1, 0), ("4.3", 1, 0), ("4.4", 1, 2)])
def test_a_deep_way_round_is_protected_like_any_trench(
    tables: Tables, begins: str, ladders: float, boxes: float
) -> None:
    """26 ft at 1/4 in/ft is 0.542 ft deeper at the lower end: 3.3 -> 3.9, 3.4 -> 4.0, 4.3 -> 4.9, 4.4 -> 5.0 ft. Two boxes at once."""
    found = round_about(tables.with_settings({"reroute_depth_ft": begins}))
    assert (found.value("ladders"), found.value("boxes")) == (ladders, boxes)


def test_ground_water_in_burst_pits_is_pumped(tables: Tables) -> None:
    wet = house(changed(maple_line(), at("water table", 30.0, depth_ft=3.0)))
    assert take_off(repair("burst", 10, 50), wet, tables).value("dewater_days") == 2


def test_every_pit_of_a_burst_is_put_back(tables: Tables) -> None:
    found = take_off(repair("burst", 10, 50), house(changed(maple_line(), at("drive", 46.0, 60.0))), tables)
    assert found.value("drive_sf") > 0
    assert found.value("sod_sf") > 0


def test_lawn_over_burst_pits_is_the_pits_and_their_margins(burst: Takeoff) -> None:
    entry, pull = (8.1 + 2) * (2.5 + 2), (5 + 2) * (4 + 2)
    assert burst.value("sod_sf") == up(entry + pull, 10)


def test_every_pit_of_a_burst_has_its_ladder(tables: Tables) -> None:
    line = changed(maple_line(), at("branch", 20.0, size_in=3.0, live="live", proven=True))
    assert take_off(repair("burst", 10, 50), house(line), tables).value("ladders") == 3


@pytest.mark.parametrize(("legs_ft", "cleanouts"), [(95.0, 1), (96.0, 2)], ids=["99.75 ft with its turns", "100.8 ft"])
def test_a_long_way_round_takes_more_cleanouts(tables: Tables, legs_ft: float, cleanouts: float) -> None:
    found = round_about(tables, legs=(Leg(zone="yard", length_ft=legs_ft),), fall_available_ft=5.0)
    assert found.value("cleanouts") == cleanouts


def test_a_deep_way_round_is_as_wide_as_its_box(tables: Tables) -> None:
    """4.4 to 5.0 ft deep: boxed, so 3.25 ft wide instead of 0.198 + 2.0, up 2.2."""
    deep, shallow = (round_about(tables.with_settings({"reroute_depth_ft": ft})) for ft in ("4.4", "4.3"))
    assert deep.value("dig_bcy") == pytest.approx(26 * 3.25 * (4.4 + 5.0) / 2 / 27)
    assert shallow.value("dig_bcy") == pytest.approx(26 * 2.2 * (4.3 + 4.9) / 2 / 27)


def test_a_new_way_in_the_ground_has_the_cover_its_place_asks_for(tables: Tables) -> None:
    """36 in against frost + 2.375 in of pipe + 0.33 ft of bedding = 3.528 ft, up 3.6; 26 ft at 1/4 in/ft lower 4.07, up 4.1."""
    cold = tuple(replace(row, least_cover_in=36.0) for row in tables.rows["places"])
    found = round_about(replace(tables, rows={**tables.rows, "places": cold}))
    assert found.value("dig_bcy") == pytest.approx(26 * 2.2 * (3.6 + 4.1) / 2 / 27)
    assert any("the city requires 36 inches" in str(said) for said in found.assumptions)
    asked = round_about(
        replace(tables, rows={**tables.rows, "places": tuple(replace(row, least_cover_in=6.0) for row in cold)})
    )
    assert asked.value("dig_bcy") == round_about(tables).value("dig_bcy")  # the firm's own depth is more already


def test_a_way_round_is_filled_and_tested_along_its_own_length_and_size(tables: Tables) -> None:
    """IPC 312: 10 ft of water. 0.0408 x 2² x (38 x 1.05 + 10 ft) = 8.14 gal."""
    found = round_about(tables)
    assert found.value("test_head_ft") == 10
    assert found.value("test_fill_gal") == pytest.approx(0.0408 * 4 * (38 * 1.05 + 10))


def test_how_much_soil_lies_over_a_way_round_is_said(tables: Tables) -> None:
    """1.5 ft to the bottom - 0.33 bedding - 2.375 / 12 outside = 0.97 ft."""
    said = next(a for a in round_about(tables).assumptions if "the reroute starts" in str(a))
    assert dict(said.words)["cover"] == Feet(0.97)

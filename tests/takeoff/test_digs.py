"""Digs from the open air: depth along the line, sand, native soil, hauling, potholes and what is put back on top."""

import math
from dataclasses import replace

import pytest

from estimator.model.job import Job, Site
from estimator.model.line import Line
from estimator.model.work import Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff import take_off, take_off_job
from estimator.takeoff.restoration import to_panels
from estimator.takeoff.working import up
from tests.takeoff.houses import at, changed, house, maple_line, repair


def dug(
    line: Line, tables: Tables, method: str = "trench", low: float = 10, high: float = 30, **facts: object
) -> Takeoff:
    return take_off(repair(method, low, high), house(line, **facts), tables)


def two_depths() -> Line:
    """3.0 ft deep at 5 ft and 5.0 ft deep at 45 ft: a straight line between."""
    line = maple_line()
    marks = tuple(m for m in line.marks if m.word != "depth")
    return replace(line, marks=(*marks, at("depth", 5.0, depth_ft=2.4), at("depth", 45.0, depth_ft=3.4)))


def test_between_two_readings_the_depth_runs_in_a_straight_line(tables: Tables) -> None:
    found = dug(two_depths(), tables)
    below = 0.1875 + 0.33
    ends = [up(2.4 + (at_ft - 5) / 40 + below, 0.1) for at_ft in (9.0, 31.0)]
    assert found.value("dig_cf") == pytest.approx(22 * 2.4 * sum(ends) / 2)
    assert found.value("dig_depth_ft") == ends[1]
    assert not any("one located depth" in str(a) for a in found.assumptions)


def test_a_depth_carried_beyond_the_last_reading_is_said(tables: Tables) -> None:
    found = dug(two_depths(), tables, high=60)
    assert any("past our last depth reading" in str(a) for a in found.assumptions)


@pytest.mark.parametrize("method", ["trench", "burst"])
def test_a_pipe_renewed_where_it_lies_with_less_cover_than_its_city_requires_says_so(
    tables: Tables, method: str
) -> None:
    """At 10 ft its center lies 2.4 + 5/40 = 2.525 ft deep: 2.525 − 2.25 in = 28.05 in of soil over it."""

    def said(least_in: float | None) -> list[str]:
        rows = tuple(replace(row, least_cover_in=least_in) for row in tables.rows["places"])  # type: ignore[call-arg]
        found = dug(two_depths(), replace(tables, rows={**tables.rows, "places": rows}), method)
        return [str(text) for text in found.assumptions if "the city requires" in str(text)]

    (shallow,) = said(36)
    assert "2.34 ft of soil" in shallow and "requires 36 inches" in shallow
    assert said(24) == said(None) == []


def test_without_any_depth_the_firms_depth_is_taken_and_said(tables: Tables) -> None:
    line = maple_line()
    found = dug(replace(line, marks=tuple(m for m in line.marks if m.word != "depth")), tables)
    assert "depth_unlocated" in found.facts
    assert found.value("dig_depth_ft") == up(4.0 + 0.1875 + 0.33, 0.1)
    assert any("the depth is not measured" in str(a) for a in found.assumptions)


def test_swell_and_shrink_never_meet_in_one_quantity(tables: Tables) -> None:
    """Spoil swells, what goes back shrinks, what is left over swells: bank yards balance."""
    found = dug(maple_line(), tables)
    back_in_bank = found.value("native_ccy") / 0.90
    assert found.value("spoil_lcy") == pytest.approx(found.value("dig_bcy") * 1.30)
    assert found.value("export_lcy") == pytest.approx((found.value("dig_bcy") - back_in_bank) * 1.30)


def test_when_packing_takes_more_than_was_dug_soil_is_brought_in(tables: Tables) -> None:
    deep = replace(maple_line(), findings=())
    marks = tuple(replace(m, depth_ft=14.0) if m.word == "depth" else m for m in deep.marks)
    found = dug(replace(deep, marks=marks), tables)
    short = found.value("native_ccy") / 0.90 - found.value("dig_bcy")
    assert short > 0
    assert found.value("import_lcy") == pytest.approx(short * 1.30)
    assert found.value("loads") == 0


def test_heavy_soil_is_hauled_by_weight(tables: Tables) -> None:
    rock = dug(maple_line(), tables, low=10, high=58, soil="broken rock")
    out_bcy = rock.value("dig_bcy") - rock.value("native_ccy")
    by_weight = math.ceil(out_bcy * 1.7 / 4)
    assert rock.value("loads") == max(by_weight, math.ceil(rock.value("export_lcy") / 5))


def test_utilities_that_cross_are_uncovered_by_hand_first(tables: Tables) -> None:
    crossed = changed(
        maple_line(),
        at("crossing", 12.0, choice="gas"),
        at("crossing", 20.0, choice="water"),
        at("crossing", 50.0, choice="gas"),
    )
    assert dug(crossed, tables).value("potholes") == 2 + 1


def test_a_private_line_in_the_dig_is_located_once_for_the_job(tables: Tables) -> None:
    job = house(changed(maple_line(), at("crossing", 12.0, choice="irrigation")))
    found = take_off(repair("trench", 10, 30), job, tables)
    assert take_off_job(job, [found, found], tables).value("private_locates") == 1


def test_without_a_pothole_first_the_hole_is_longer_by_the_locators_error(tables: Tables) -> None:
    other = tables.with_settings({"pothole_pipe_first": "no"})
    assert dug(maple_line(), other).value("dig_length_ft") == 20 + 2 * (1.0 + 0.5)


def drive_line() -> Line:
    return changed(maple_line(), at("drive", 18.0, 26.0, choice="concrete"))


def test_lawn_and_driveway_are_put_back_each_over_its_own_length(tables: Tables) -> None:
    found = dug(drive_line(), tables)
    lawn = (9.0 + 1 + 5.0 + 1) * (2.4 + 2)
    assert found.value("sod_sf") == up(lawn, 10)
    whole_panel = 10.0  # 8 ft would leave 2 ft of a 10 ft panel, less than the firm's 3 ft
    assert found.value("drive_sf") == pytest.approx(whole_panel * 4.4)
    assert found.value("drive_saw_lf") == pytest.approx(2 * whole_panel + 2 * 4.4)
    assert {"lawn", "drive"} <= found.facts


@pytest.mark.parametrize(("surface", "quantity"), [("beds", "bed_sf"), ("lawn", "sod_sf")])
def test_what_grew_there_is_put_back(tables: Tables, surface: str, quantity: str) -> None:
    line = maple_line()
    planted = replace(line, marks=tuple(replace(m, choice=surface) if m.word == "yard" else m for m in line.marks))
    assert dug(planted, tables).value(quantity) > 0


def test_bare_ground_is_left_bare(tables: Tables) -> None:
    line = maple_line()
    bare = replace(line, marks=tuple(replace(m, choice="bare ground") if m.word == "yard" else m for m in line.marks))
    found = dug(bare, tables)
    assert found.value("sod_sf") == found.value("bed_sf") == 0
    assert "lawn" not in found.facts


def test_a_walk_is_taken_up_to_the_next_joint_where_little_would_be_left(tables: Tables) -> None:
    walk = changed(maple_line(), at("walk", 19.0, 21.0))
    found = dug(walk, tables)
    assert found.value("flatwork_sf") == pytest.approx(2.0 * 5.0)


def test_a_side_drain_known_dead_is_not_tied_in_and_an_unproven_one_is(tables: Tables) -> None:
    with_branches = changed(
        maple_line(),
        at("branch", 12.0, size_in=2.0, live="dead"),
        at("branch", 15.0, size_in=2.0, live="live", proven=False),
        at("branch", 50.0, size_in=3.0, live="live", proven=True),
    )
    found = dug(with_branches, tables)
    assert found.value("branches") == found.value("wyes") == 1
    assert found.value("couplings") == 3
    assert any("is in use; we run water" in str(a) for a in found.assumptions)


def test_cleanouts_come_every_hundred_feet_and_at_sharp_turns(tables: Tables) -> None:
    line = changed(maple_line(), at("bend", 20.0, degrees=45.0), at("bend", 25.0, degrees=46.0))
    assert dug(line, tables, low=10, high=110).value("cleanouts") == 1
    assert dug(line, tables, low=10, high=110.5).value("cleanouts") == 2


def test_a_job_in_the_street_closes_it(tables: Tables) -> None:
    job: Job = house(changed(maple_line(), at("street", 40.0, 60.0)))
    found = take_off(repair("trench", 10, 50), job, tables)
    assert take_off_job(job, [found], tables).value("street_closures") == 1
    assert "street_work" in found.facts


def test_plywood_is_laid_where_a_machine_crosses_the_lawn(tables: Tables) -> None:
    job = house(maple_line(), site=Site(carry_ft=60.0))
    found = take_off(repair("trench", 10, 30), job, tables)
    assert found.value("plywood_path_ft") == 60.0
    assert "carry_over_50" in found.facts


@pytest.mark.parametrize(
    ("carry_ft", "fact"), [(50.0, None), (50.1, "carry_over_50"), (100.0, "carry_over_50"), (100.1, "carry_over_100")]
)
def test_carrying_far_is_a_fact_from_just_over_the_firms_limit(
    tables: Tables, carry_ft: float, fact: str | None
) -> None:
    found = take_off(repair("trench", 10, 30), house(maple_line(), site=Site(carry_ft=carry_ft)), tables)
    assert {f for f in found.facts if f.startswith("carry")} == ({fact} if fact else set())


def test_the_trench_is_never_narrower_than_the_plastic_pipe_standard(tables: Tables) -> None:
    """ASTM D2321: 4.5 + 16 = 20.5 in = 1.71 ft -> 1.8 ft where the firm's own rule is narrower."""
    narrow = tables.with_settings({"trench_clear_ft": "0.5", "trench_clear_min_ft": "0.5"})
    assert dug(maple_line(), narrow).value("dig_width_ft") == pytest.approx(1.8)


def test_a_look_is_one_hole_at_unit_prices(tables: Tables) -> None:
    found = dug(maple_line(), tables, "look and see", 38, 40)
    assert found.value("looks") == 1
    assert found.value("pipe_ft") == found.value("sand_tons") == found.value("loads") == 0
    assert found.value("native_ccy") == pytest.approx(found.value("dig_bcy") * 0.90)
    assert any("unit prices agreed" in str(a) for a in found.assumptions)


@pytest.mark.parametrize(("clear_ft", "warned"), [(9.4, False), (9.2, True)])
def test_a_heap_that_does_not_fit_beside_the_dig_goes_elsewhere(tables: Tables, clear_ft: float, warned: bool) -> None:
    """2.4 ft of dig + 2 ft back + 54.9 sq ft of heap over 11 ft = 9.39 ft."""
    found = dug(changed(maple_line(), at("clear", 40.0, lengths=(("", clear_ft),))), tables, "yard spot", 36, 45)
    assert any("heap goes elsewhere" in str(c) for c in found.cautions) is warned


@pytest.mark.parametrize(("length", "joints", "sets"), [(210, 20, 1), (211, 21, 2)])
def test_cement_and_primer_come_in_sets(tables: Tables, length: float, joints: float, sets: float) -> None:
    found = dug(maple_line(), tables, low=0, high=length)
    assert (found.value("glue_joints"), found.value("glue_sets")) == (joints, sets)


def test_the_margin_of_new_lawn_is_laid_at_both_ends_and_sides(tables: Tables) -> None:
    wide = dug(maple_line(), tables.with_settings({"sod_margin_ft": "2"}), "yard spot", 36, 45)
    assert wide.value("sod_sf") == up((11 + 4) * (2.4 + 4), 10)


@pytest.mark.parametrize(
    ("cut_ft", "taken_ft"), [(1.99, 1.99), (2.0, 2.0), (2.01, 5.0), (5.0, 5.0), (5.01, 5.01), (7.01, 10.0)]
)
def test_a_panel_is_taken_whole_when_less_than_three_feet_of_it_would_stay(cut_ft: float, taken_ft: float) -> None:
    assert to_panels(cut_ft, 5.0, 3.0) == taken_ft


def test_layers_follow_the_deepest_place(tables: Tables) -> None:
    found = dug(two_depths(), tables)
    assert found.value("lifts") == up(found.value("dig_depth_ft") / 0.5)


def test_limits_are_compared_with_the_deepest_place_of_the_hole(tables: Tables) -> None:
    """At 31 ft of 2.4 + 26/40 = 3.05 ft to the centre; the larger of 10 % and 0.5 ft on top."""
    found = dug(two_depths(), tables)
    assert found.value("safety_depth_ft") == pytest.approx(2.4 + 26 / 40 + 0.1875 + 0.33 + 0.5)


def test_where_the_place_says_nothing_the_firms_spacing_of_cleanouts_counts(tables: Tables) -> None:
    other = tables.with_settings({"cleanout_every_ft": "30"})
    line = maple_line()
    assert dug(line, other, low=0, high=90).value("cleanouts") == 0  # the demo place says 100 ft
    assert dug(line, other, low=0, high=90, jurisdiction="texas lump sum").value("cleanouts") == 2


def test_the_new_pipe_is_never_smaller_than_the_largest_bore_it_replaces(tables: Tables) -> None:
    line = changed(maple_line(), at("size", 0.0, 20.0, size_in=4.0), at("size", 20.0, 60.0, size_in=6.0))
    found = dug(line, tables)
    assert found.size == "6"
    assert found.value("dig_width_ft") == up(6.625 / 12 + 2.0, 0.1)


def test_each_turn_takes_a_bend(tables: Tables) -> None:
    assert (
        dug(changed(maple_line(), at("bend", 20.0, degrees=45.0), at("bend", 50.0)), tables).value("eighth_bends") == 1
    )


def test_a_pipe_near_the_surface_has_sand_up_to_the_surface_and_no_more(tables: Tables) -> None:
    line = maple_line()
    shallow = replace(line, marks=tuple(replace(m, depth_ft=0.3) if m.word == "depth" else m for m in line.marks))
    found = dug(shallow, tables)
    assert found.value("dig_depth_ft") == 0.9
    assert found.value("pipe_zone_cf") == pytest.approx(found.value("dig_cf"))
    assert found.value("native_ccy") == 0


@pytest.mark.parametrize(
    ("zone", "surface", "put_back"),
    [
        ("drive", "asphalt", {"asphalt_sf": 8.0 * 4.4, "asphalt_saw_lf": 2 * 8.0 + 2 * 4.4}),  # no panels in asphalt
        ("walk", "asphalt", {"asphalt_sf": 8.0 * 4.4, "asphalt_saw_lf": 2 * 8.0 + 2 * 4.4}),
        ("street", "asphalt", {"street_sf": 8.0 * 4.4, "street_saw_lf": 2 * 8.0 + 2 * 4.4}),
        ("drive", "gravel", {"gravel_sf": 8.0 * 4.4}),
        ("street", "gravel", {"gravel_sf": 8.0 * 4.4}),
        ("drive", "pavers", {"pavers_sf": 8.0 * 4.4}),
        ("walk", "brick", {"pavers_sf": 8.0 * 4.4}),
        ("street", "dirt", {}),
        ("drive", "dirt", {}),
    ],
)
def test_each_surface_is_put_back_as_what_it_is(
    tables: Tables, zone: str, surface: str, put_back: dict[str, float]
) -> None:
    """8 ft of the dig lie in the zone and both its ends in lawn; it is 2.4 ft wide, and 1 ft beyond each side is opened."""
    found = dug(changed(maple_line(), at(zone, 18.0, 26.0, choice=surface)), tables, low=18, high=26)
    paved = ("flatwork", "drive", "street", "asphalt", "gravel", "pavers")
    names = [f"{name}_{what}" for name in paved for what in ("sf", "saw_lf")]
    assert {name: found.value(name) for name in names if found.value(name)} == pytest.approx(put_back)
    assert (found.value("flatwork_tons") > 0) == (surface == "asphalt")
    assert ("drive" in found.facts) == (zone == "drive")


def test_a_hole_that_ends_in_the_driveway_is_cut_a_foot_beyond_its_end(tables: Tables) -> None:
    line = changed(maple_line(), at("drive", 24.0, 60.0))
    found = dug(line, tables)  # the hole ends at 31: 7 ft + 1 ft beyond, then the rest of a 10 ft panel
    assert found.value("drive_sf") == pytest.approx(10.0 * 4.4)


def test_glued_joints_are_sticks_side_drains_and_turns(tables: Tables) -> None:
    line = changed(
        maple_line(), at("branch", 12.0, size_in=3.0, live="live", proven=True), at("bend", 20.0, degrees=45.0)
    )
    assert dug(line, tables).value("glue_joints") == (2 - 1) + 3 + 2


def test_a_hole_that_reaches_a_foot_under_the_slab_keeps_the_lawns_depth(tables: Tables) -> None:
    """The lawn's depth is never mixed with the floor's, and a foot of room to work is not an unlocated pipe."""
    line = changed(maple_line(), at("slab", 30.0, 60.0))
    marks = tuple(m for m in line.marks if m.word != "depth")
    located = replace(line, marks=(*marks, at("depth", 20.0, depth_ft=3.4, to="centre", surface="lawn")))
    found = dug(located, tables, low=20, high=30)
    assert "depth_unlocated" not in found.facts
    assert found.value("dig_depth_ft") == 4.0
    assert any("one located depth" in str(a) for a in found.assumptions)


@pytest.mark.parametrize(
    ("degrees", "bends"),
    [(None, 1), (22.5, 1), (45.0, 1), (45.1, 2), (90.0, 2)],
    ids=["not said", "16th", "8th", "more", "square"],
)
def test_a_turn_takes_an_eighth_bend_for_each_45_degrees(tables: Tables, degrees: float | None, bends: float) -> None:
    """Common practice: a square turn of a drain is made of two eighth bends or a long sweep."""
    found = dug(changed(maple_line(), at("bend", 20.0, degrees=degrees)), tables)
    assert found.value("eighth_bends") == bends
    assert found.value("glue_joints") == 1 + 2 * bends  # 20 ft in two sticks


def test_the_length_of_a_dig_adds_up_on_paper_where_no_pothole_is_dug(tables: Tables) -> None:
    found = dug(maple_line(), tables.with_settings({"pothole_pipe_first": "no"}))
    quantity = found.quantity("dig_length_ft")
    assert quantity is not None
    given = {i.name: i.value for i in quantity.inputs}
    assert given["pipe replaced"] + 2 * given["room at each end"] == quantity.value == 23  # type: ignore[operator]

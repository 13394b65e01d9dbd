"""What holds the sides and can be built: boxes where a machine sets them, boards by hand where none gets to."""

from dataclasses import replace
from math import ceil

import pytest

from estimator.model.job import Job, Site
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from tests.takeoff.houses import at, changed, house, maple_line, repair

TIGHT = at("clear", 30.0, 50.0, lengths=(("wide", 6.0),))  # no room for a slope


def deep(depth_ft: float, site: Site | None = None) -> Job:
    line = maple_line()
    marks = tuple(replace(m, depth_ft=depth_ft) if m.word == "depth" else m for m in line.marks)
    return house(changed(replace(line, marks=marks), TIGHT), site=site or Site())


def test_where_no_machine_gets_to_the_sides_are_shored_by_hand(tables: Tables) -> None:
    found = take_off(repair("yard spot", 36, 45), deep(5.0, Site(machine=False)), tables)
    assert found.value("boxes") == 0
    assert {"hand_shored", "hand_only"} <= found.facts
    sides = 2 * (found.value("dig_length_ft") + 3.4)
    assert found.value("shores_sf") == pytest.approx(sides * found.value("dig_depth_ft"))


def test_with_a_machine_the_same_hole_is_boxed_and_its_ends_are_closed(tables: Tables) -> None:
    found = take_off(repair("yard spot", 36, 45), deep(5.0), tables)
    assert found.value("shores_sf") == 0
    assert found.value("boxes") == 2  # 11 ft of 8 ft boxes
    assert found.value("end_shields") == 2
    assert found.value("end_shield_days") == 2 * 1


@pytest.mark.parametrize(("centre_ft", "layers"), [(7.4, 1), (7.5, 2)], ids=["8.0 ft deep", "8.1 ft deep"])
def test_a_dig_deeper_than_a_box_takes_two_one_on_another(tables: Tables, centre_ft: float, layers: int) -> None:
    found = take_off(repair("yard spot", 36, 45), deep(centre_ft), tables)
    assert found.value("dig_depth_ft") == {1: 8.0, 2: 8.1}[layers]
    per_layer = found.value("boxes") / layers
    assert per_layer == 2.0
    assert found.value("end_shields") == 2 * layers


@pytest.mark.parametrize(("centre_ft", "slow"), [(7.4, False), (7.5, True)])
def test_machine_digging_is_slower_past_eight_feet(tables: Tables, centre_ft: float, slow: bool) -> None:
    assert ("depth_over_8" in take_off(repair("yard spot", 36, 45), deep(centre_ft), tables).facts) is slow


def test_burst_pits_are_boxed_each_with_two_end_shields(tables: Tables) -> None:
    found = take_off(repair("burst", 5, 55), deep(5.0), tables)
    assert found.value("pits") == 2
    assert found.value("end_shields") == 4
    by_hand = take_off(repair("burst", 5, 55), deep(5.0, Site(machine=False)), tables)
    assert by_hand.value("boxes") == 0
    assert by_hand.value("shores_sf") > 0


@pytest.mark.parametrize(
    ("centre_ft", "length_ft"), [(5.1875, 11.0), (5.2, 12.0)], ids=["5 ft to its top", "a step more"]
)
def test_a_pipe_too_deep_for_a_pothole_keeps_the_locators_error(
    tables: Tables, centre_ft: float, length_ft: float
) -> None:
    """The pipe's top lies at centre - 2.25 in; where no pothole reaches it the hole is 0.5 ft longer at each end.

    It is uncovered by hand all the same, within the held dig, which takes no less than a pothole.
    """
    found = take_off(repair("yard spot", 36, 45), deep(centre_ft), tables)
    assert found.value("dig_length_ft") == length_ft
    assert found.value("potholes") == 1


@pytest.mark.parametrize(("depth_ft", "tolerance_ft"), [(5.0, 0.0), (5.1, 0.51)])
def test_a_pothole_noted_deeper_than_one_can_be_dug_removes_no_tolerance(
    tables: Tables, depth_ft: float, tolerance_ft: float
) -> None:
    line = maple_line()
    marks = tuple(m for m in line.marks if m.word != "depth")
    seen = at("pothole", 40.0, depth_ft=depth_ft, to="centre", surface="lawn")
    found = take_off(repair("yard spot", 36, 45), house(replace(line, marks=(*marks, seen))), tables)
    bottom = depth_ft + 4.5 / 24 + 0.33
    assert found.value("safety_depth_ft") == pytest.approx(bottom + tolerance_ft)


@pytest.mark.parametrize(("invert_ft", "width_ft"), [(4.1, 2.0), (4.2, 3.4)], ids=["below 5 ft", "past 5 ft"])
def test_a_strip_past_five_feet_is_as_wide_as_a_shored_trench(
    tables: Tables, invert_ft: float, width_ft: float
) -> None:
    from tests.takeoff.houses import pecan_house, pecan_line

    line = pecan_line()
    marks = tuple(replace(m, depth_ft=invert_ft) if m.word == "invert" else m for m in line.marks)
    found = take_off(repair("break-through", 0, 14), pecan_house(replace(line, marks=marks)), tables)
    assert found.value("dig_width_ft") == width_ft
    assert (found.value("safety_depth_ft") >= 5.0) is (width_ft == 3.4)
    assert bool(found.value("shores_sf")) is (width_ft == 3.4)


@pytest.mark.parametrize(("invert_ft", "held"), [(4.6, False), (4.7, True)], ids=["4.9 ft with tolerance", "5.0 ft"])
def test_the_outside_end_of_a_strip_is_shored_and_wider_from_five_feet_on(
    tables: Tables, invert_ft: float, held: bool
) -> None:
    """Invert + 2/96 ft of fall + wall and bedding 0.35 - 0.5 ft the ground lies lower; 0.5 ft of tolerance on top, before anything is rounded."""
    from tests.takeoff.houses import pecan_house, pecan_line

    line = pecan_line()
    marks = tuple(replace(m, depth_ft=invert_ft) if m.word == "invert" else m for m in line.marks)
    job = pecan_house(replace(line, marks=marks))
    inside = take_off(repair("break-through", 0, 14), job, tables).value("shores_sf")
    found = take_off(repair("break-through", -2, 14), job, tables)
    depth, width = (4.6, 3.4) if held else (4.5, 2.4)
    assert found.value("hand_dig_bcy") == pytest.approx(3.0 * width * depth / 27)
    assert found.value("shores_sf") - inside == pytest.approx(2 * (3.0 + width) * depth if held else 0.0)


def test_burst_pits_are_dug_as_large_as_their_boxes(tables: Tables) -> None:
    """D = 5.0 + 0.1875 + 0.33 up = 5.6 ft; R = 10.125 ft: √(2 x 10.125 x 5.6 - 5.6²) = 9.06, up 9.1. A box is 3.25 x 8 ft.

    Entry 9.1 x 2.5 becomes 9.1 x 3.4 ft (what held sides need: 0.375 + 3.0, up), the pull pit 5 x 4 becomes 8 x 4 ft.
    """
    found = take_off(repair("burst", 5, 55), deep(5.0), tables)
    assert found.value("dig_bcy") == pytest.approx(5.6 * (9.1 * 3.4 + 8 * 4) / 27)
    by_hand = take_off(repair("burst", 5, 55), deep(5.0, Site(machine=False)), tables)
    assert by_hand.value("hand_dig_bcy") == pytest.approx(5.6 * (9.1 * 3.4 + 5 * 4) / 27)
    assert by_hand.value("shores_sf") == pytest.approx(5.6 * 2 * (9.1 + 3.4 + 5 + 4))


@pytest.mark.parametrize(("centre_ft", "railed"), [(4.98, False), (4.99, True)])
def test_a_hole_of_six_feet_is_railed(tables: Tables, centre_ft: float, railed: bool) -> None:
    """29 CFR 1926.501(b)(7). Bottom 0.5175 ft below the centre, 0.5 ft locator: 5.9975 and 6.0075 ft."""
    found = take_off(repair("yard spot", 36, 45), deep(centre_ft), tables)
    assert any("is railed or fenced" in str(c) for c in found.cautions) is railed


@pytest.mark.parametrize(("centre_ft", "tested"), [(2.98, False), (3.0, True)])
def test_air_is_tested_past_four_feet_where_a_drain_leaks(tables: Tables, centre_ft: float, tested: bool) -> None:
    """29 CFR 1926.651(g). Bottom 0.5175 ft below the centre, 0.5 ft locator: 3.9975 and 4.0175 ft. Maple has a crack there."""
    leaking = take_off(repair("yard spot", 36, 45), deep(centre_ft), tables)
    assert any("the air in the hole is tested" in str(c) for c in leaking.cautions) is tested
    tight = deep(centre_ft)
    tight = replace(tight, lines=(replace(tight.lines[0], findings=()),))
    quiet = take_off(repair("yard spot", 36, 45), tight, tables)
    assert not any("the air in the hole" in str(c) for c in quiet.cautions)


def test_boxes_are_dragged_along_a_long_trench(tables: Tables) -> None:
    """64 ft in boxes of 8 ft: 8 places, 2 boxes in it at once, dragged 6 times; 4 lengths at two a day are 2 days (by hand)."""
    found = take_off(repair("trench", 0, 60), deep(5.5), tables)
    length = found.value("dig_length_ft")
    places = ceil(length / 8)
    assert (found.value("boxes"), found.value("box_moves")) == (2, places - 2)
    assert found.value("shoring_box_days") == 2 * max(2, ceil(ceil(places / 2) / 2))

"""Openings in the floor: a strip between beams, a single opening, concrete out and in, what the crew and others do."""

import math
from dataclasses import replace

import pytest

from estimator.model.work import Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff import take_off, take_off_job
from estimator.takeoff.working import up
from tests.takeoff.houses import at, changed, pecan_house, pecan_line, repair

T = 1 / 3  # slab, ft
FAR = 27.5  # half a foot beyond the new pipe, to couple it
BEAM_ENDS = 15 + 10 / 12
STRIPS = ((14.0, 2.0, 8.0), (FAR - 3 - BEAM_ENDS, 2.0, (BEAM_ENDS + FAR - 3) / 2), (3.0, 3.0, FAR - 1.5))
"""Long, wide, middle: 1 to 15 ft and 15.833 to 24.5 ft, the strip stops at both beams; its last 3 ft as wide as one opening."""

ACROSS = sum(long * wide for long, wide, _ in STRIPS) + (1 + 10 / 12) * 2.0
"""The strip and what is dug by hand under the beams, sq ft."""


@pytest.fixture
def strip(tables: Tables) -> Takeoff:
    return take_off(repair("break-through", -2, 27), pecan_house(), tables)


def test_the_strip_stops_on_each_side_of_every_beam(strip: Takeoff) -> None:
    assert strip.value("beam_crossings") == 2
    assert strip.value("slab_sf") == pytest.approx(sum(long * wide for long, wide, _ in STRIPS))
    assert strip.value("dig_length_ft") == pytest.approx(FAR - 1 - 10 / 12)


def test_saw_cuts_go_round_each_opening_and_across_every_two_feet(strip: Takeoff) -> None:
    assert strip.value("saw_lf") == pytest.approx(
        sum(2 * (long + wide) + wide * int(long / 2) for long, wide, _ in STRIPS)
    )


def test_concrete_out_is_weighed_bulked_and_hauled(strip: Takeoff) -> None:
    volume = strip.value("slab_sf") * T
    assert strip.value("slab_cy") == pytest.approx(volume / 27)
    assert strip.value("slab_tons") == pytest.approx(volume * 150 / 2000)
    assert strip.value("slab_haul_lcy") == pytest.approx(volume / 27 * 1.5)


def test_a_small_patch_comes_from_bags(strip: Takeoff) -> None:
    assert strip.value("patch_bags") == up(strip.value("slab_sf") * T / 0.60 * 1.10)
    assert strip.value("patch_ready_mix_cy") == strip.value("short_loads") == 0


def test_a_large_patch_comes_by_truck_and_pays_the_part_load_fee(tables: Tables) -> None:
    thick = replace(pecan_house(), house=replace(pecan_house().house, slab_thickness_ft=0.5))
    found = take_off(repair("break-through", -2, 27), thick, tables)
    assert found.value("patch_ready_mix_cy") == pytest.approx(found.value("slab_cy") * 1.10)
    assert found.value("short_loads") == 1
    assert found.value("patch_bags") == 0
    assert "slab_over_4in" in found.facts


def test_dowels_retarder_and_floor_follow_each_opening(strip: Takeoff) -> None:
    assert strip.value("dowels") == sum(up(2 * (long + wide) / 1.5) for long, wide, _ in STRIPS)
    assert strip.value("retarder_sf") == pytest.approx(sum((long + 1) * (wide + 1) for long, wide, _ in STRIPS))
    assert strip.value("floor_sf") == pytest.approx(sum((long + 2) * (wide + 2) for long, wide, _ in STRIPS))


def test_earth_below_the_strip_and_under_the_beams_by_hand(strip: Takeoff) -> None:
    """Invert 2.6 and 2.3135 ft, wall 0.237 in, bedding 0.33 ft: 2.616 -> 2.7 and 2.330 -> 2.4 ft below the slab's underside."""
    near = up(2.6 - T + 0.237 / 12 + 0.33, 0.1)
    far = up(2.6 - FAR / 96 - T + 0.237 / 12 + 0.33, 0.1)
    assert (near, far) == (2.7, 2.4)
    falls = (near - far) / FAR
    plain = sum(long * wide * (near - falls * middle) for long, wide, middle in STRIPS)
    under_beams = (1.0 + 10 / 12) * 2.0 * 2.0
    assert strip.value("inside_dig_bcy") == pytest.approx((plain + under_beams) / 27)


def test_the_two_feet_outside_are_dug_by_hand(strip: Takeoff) -> None:
    depth = up(2.6 + 2 / 96 - 0.5 + 0.237 / 12 + 0.33, 0.1)
    assert strip.value("hand_dig_bcy") == pytest.approx(3.0 * 2.4 * depth / 27)


def test_the_strip_ties_in_every_branch_and_gets_the_cleanout_and_the_test(tables: Tables, strip: Takeoff) -> None:
    assert strip.value("branches") == 3
    assert strip.value("cleanouts") == 1
    assert take_off_job(pecan_house(), [strip], tables).value("tests") == 1
    assert strip.value("pipe_trench_ft") == 29
    assert strip.value("branches_tunnel") == strip.value("hangers") == 0


def test_dust_is_named_and_masks_are_counted(strip: Takeoff) -> None:
    said = " ".join(str(c) for c in strip.cautions)
    assert "masks indoors" in said
    assert strip.value("respirators") == 2
    assert strip.value("negative_air_days") == up(sum(long for long, _, _ in STRIPS) / 15) + 1


def test_services_in_the_floor_are_found_before_the_first_cut(strip: Takeoff) -> None:
    assert any("shut off before the first cut" in str(c) for c in strip.cautions)


def test_each_room_takes_its_dust_wall(tables: Tables) -> None:
    rooms = changed(pecan_line(), at("room", 0.0, 12.0, name="hall"), at("room", 12.0, 40.0, name="kitchen"))
    found = take_off(repair("break-through", -2, 27), pecan_house(rooms), tables)
    assert found.value("dust_wall_lf") == 2 * 16


@pytest.mark.parametrize(("near", "far", "long"), [(8, 10, 3.0), (8, 10.5, 3.5), (6, 12, 7.0)])
def test_a_single_opening_is_never_smaller_than_the_firms_least(
    tables: Tables, near: float, far: float, long: float
) -> None:
    found = take_off(repair("slab spot", near, far), pecan_house(), tables)
    assert found.value("slab_sf") == pytest.approx(long * 3.0)


@pytest.mark.parametrize(("built", "tests"), [(1980, 1), (1981, 0), (None, 1)])
def test_a_floor_of_asbestos_years_is_tested_before_it_is_opened(
    tables: Tables, built: int | None, tests: float
) -> None:
    job = replace(pecan_house(), house=replace(pecan_house().house, built=built))
    found = take_off(repair("slab spot", 8, 10), job, tables)
    assert take_off_job(job, [found], tables).value("asbestos_tests") == tests


@pytest.mark.parametrize(
    ("floor", "built", "tendons"),
    [
        ("slab", 1964, False),
        ("slab", 1965, True),
        ("slab", None, True),
        ("post-tensioned slab", 1990, True),
        ("slab, tendons unknown", 1964, False),
        ("slab, tendons unknown", 1965, True),
        ("slab, tendons unknown", None, True),
    ],
)
def test_a_slab_that_may_have_tendons_is_scanned_before_it_is_opened(
    tables: Tables, floor: str, built: int | None, tendons: bool
) -> None:
    job = replace(pecan_house(), house=replace(pecan_house().house, built=built, floor=floor, tendons=""))
    found = take_off(repair("slab spot", 8, 10), job, tables)
    assert ("slab_may_have_tendons" in found.facts) is tendons
    assert take_off_job(job, [found], tables).value("tendon_scans") == tendons
    tunnel = take_off(repair("tunnel", 8, 10), job, tables)
    assert take_off_job(job, [tunnel], tables).value("tendon_scans") == 0


def test_the_strip_too_is_blocked_where_the_pipe_would_hit_a_beam(tables: Tables) -> None:
    nobody_asked = replace(pecan_house(), house=replace(pecan_house().house, jurisdiction="unknown"))
    found = take_off(repair("break-through", -2, 27), nobody_asked, tables)
    assert [f.rule for f in found.finds] == ["pipe-clears-the-beam"]


def test_sand_round_the_pipe_inside_and_outside(strip: Takeoff) -> None:
    """0.33 + 0.375 + 0.5 = 1.205 ft of pipe zone inside, under beams too, and 3 ft outside, less the pipe."""
    inside = ACROSS * 1.205 - math.pi / 4 * 0.375**2 * 27
    outside = 3 * 2.4 * 1.205 - math.pi / 4 * 0.375**2 * 3
    assert strip.value("pipe_zone_ccy") == pytest.approx((inside + outside) / 27)
    assert strip.value("sand_tons") == pytest.approx((inside + outside) / 27 * 1.15 * 1.35)
    dug = strip.value("inside_dig_bcy") * 27
    assert strip.value("inside_backfill_ccy") == pytest.approx((dug - ACROSS * 1.205 + inside) / 27)


def test_both_sides_of_a_deep_strip_are_shored_by_hand(tables: Tables) -> None:
    line = pecan_line()
    deep = replace(line, marks=tuple(replace(m, depth_ft=4.6) if m.word == "invert" else m for m in line.marks))
    found = take_off(repair("break-through", 0, 27), pecan_house(deep), tables)
    assert {"hand_shored", "depth_over_5"} <= found.facts
    assert found.value("dig_width_ft") == 3.4  # as a shored trench: 4.5 in + 3 ft, up
    sides = 2 * (14 + 3.4) + 2 * (FAR - BEAM_ENDS + 3.4)  # already wide enough to couple at the end
    assert found.value("shores_sf") == pytest.approx(sides * found.value("dig_depth_ft"))
    assert found.value("boxes") == 0


def test_broken_concrete_rides_along_with_the_earth(strip: Takeoff) -> None:
    loads = strip.quantity("loads")
    assert loads is not None
    given = {i.name: i.value for i in loads.inputs}
    assert given["left over, loose, concrete included"] == pytest.approx(
        strip.value("export_lcy") + strip.value("slab_haul_lcy")
    )
    tons = strip.value("export_lcy") / 1.30 * 1.35 + strip.value("slab_tons")
    assert given["weight"] == pytest.approx(tons)
    assert strip.value("loads") == max(up((strip.value("export_lcy") + strip.value("slab_haul_lcy")) / 5), up(tons / 4))


def test_sand_round_the_pipe_of_a_single_opening(tables: Tables) -> None:
    found = take_off(repair("slab spot", 8, 12), pecan_house(), tables)
    assert found.value("pipe_zone_ccy") == pytest.approx((5 * 3.0 * 1.205 - math.pi / 4 * 0.375**2 * 4) / 27)


def test_what_is_dug_outside_goes_back_round_the_pipe(strip: Takeoff) -> None:
    assert strip.value("hand_backfill_ccy") == pytest.approx(
        strip.value("hand_dig_bcy") - math.pi / 4 * 0.375**2 * 3 / 27
    )


def test_native_soil_goes_back_inside_and_outside(strip: Takeoff) -> None:
    inside = strip.value("inside_dig_bcy") - ACROSS * 1.205 / 27
    outside = strip.value("hand_dig_bcy") - 3 * 2.4 * 1.205 / 27
    assert strip.value("native_ccy") == pytest.approx(inside + outside)

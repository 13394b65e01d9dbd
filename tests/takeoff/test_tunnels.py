"""Tunnels beyond the worked example: the way in, soil, water, pits in lawn, who is warned of what."""

from dataclasses import replace
from pathlib import Path

import pytest

from estimator.fieldnotes import read_job
from estimator.model.job import EdgeBeam, Job, Site
from estimator.model.line import Join, Line
from estimator.model.wanted import Approval
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from estimator.takeoff.together import together
from estimator.takeoff.working import up
from tests.takeoff.houses import at, changed, pecan_house, pecan_line, repair


def beside(ft: float) -> Job:
    return pecan_house(changed(pecan_line(), at("beside", 20.0, lengths=(("", ft),))))


@pytest.mark.parametrize(("entry", "length"), [("exit", 29.0), ("wall", 6.0 + 4.0 + 2 * 2.0), ("", 14.0)])
def test_the_way_in_is_the_one_named_else_the_shorter(tables: Tables, entry: str, length: float) -> None:
    found = take_off(repair("tunnel", 18, 22, entry=entry), beside(6.0), tables)
    expected = 22 + 2.0 if entry == "exit" else length
    assert found.value("tunnel_ft") == expected


def test_a_wall_farther_than_the_exit_is_not_taken(tables: Tables) -> None:
    assert take_off(repair("tunnel", 18, 22), beside(30.0), tables).value("tunnel_ft") == 24.0


def test_a_wall_nobody_measured_falls_back_to_the_exit_and_says_so(tables: Tables) -> None:
    found = take_off(repair("tunnel", 18, 22, entry="wall"), pecan_house(), tables)
    assert found.value("tunnel_ft") == 24.0
    assert any("the access from the wall is not measured" in str(a) for a in found.assumptions)


@pytest.mark.parametrize(
    ("length_ft", "near", "middle", "far"), [(20.0, 20, 0, 0), (20.1, 20, 0.1, 0), (29.0, 20, 9, 0)]
)
def test_feet_are_told_apart_by_how_far_they_lie_from_a_pit(
    tables: Tables, length_ft: float, near: float, middle: float, far: float
) -> None:
    found = take_off(repair("tunnel", -2, length_ft - 2), pecan_house(), tables)
    bands = [found.value(n) for n in ("tunnel_ft_to_20", "tunnel_ft_20_to_40", "tunnel_ft_over_40")]
    assert bands == pytest.approx([near, middle, far])


def test_from_two_pits_each_crew_goes_half_the_way(tables: Tables) -> None:
    found = take_off(repair("tunnel", -2, 42), pecan_house(), tables)
    assert found.value("pits") == 2
    assert found.value("tunnel_ft_to_20") == 40
    assert found.value("tunnel_ft_20_to_40") == pytest.approx(4.0)
    assert found.value("pit_bcy") == pytest.approx(2 * 4 * 4 * 3.5 / 27)


def test_the_three_bands_are_the_whole_tunnel(tables: Tables) -> None:
    once = tables.with_settings({"second_pit_over_ft": "60"})
    found = take_off(repair("tunnel", -2, 50), pecan_house(), once)
    parts = sum(found.value(n) for n in ("tunnel_ft_to_20", "tunnel_ft_20_to_40", "tunnel_ft_over_40"))
    assert parts == pytest.approx(found.value("tunnel_ft"))
    assert found.value("tunnel_ft_over_40") == pytest.approx(12.0)


@pytest.mark.parametrize(("far_ft", "warned"), [(23.0, False), (23.1, True)], ids=["25 ft", "a step more"])
def test_a_face_far_from_the_way_out_is_a_caution(tables: Tables, far_ft: float, warned: bool) -> None:
    found = take_off(repair("tunnel", -2, far_ft), pecan_house(), tables)
    assert any("second way out" in str(c) for c in found.cautions) is warned


def test_a_tunnel_always_warns_of_flushing_air_and_the_floating_pipe(tables: Tables) -> None:
    said = " ".join(str(c) for c in take_off(repair("tunnel", -2, 10), pecan_house(), tables).cautions)
    for words in ("nobody flushes", "air is tested", "an empty pipe floats", "competent person"):
        assert words in said


@pytest.mark.parametrize(("soil", "sets"), [("firm clay", 6), ("soft clay", 10), ("sand", 10)])
def test_shoring_sets_follow_the_soil(tables: Tables, soil: str, sets: float) -> None:
    job = replace(pecan_house(), house=replace(pecan_house().house, soil=soil))
    assert take_off(repair("tunnel", -2, 27), job, tables).value("shoring_sets") == sets


def test_running_soil_is_a_caution_of_its_own(tables: Tables) -> None:
    job = replace(pecan_house(), house=replace(pecan_house().house, soil="sand"))
    assert any("will not stand" in str(c) for c in take_off(repair("tunnel", -2, 27), job, tables).cautions)


def test_a_pit_in_lawn_takes_sod(tables: Tables) -> None:
    line = pecan_line()
    lawn = replace(line, marks=tuple(replace(m, choice="lawn") if m.word == "yard" else m for m in line.marks))
    found = take_off(repair("tunnel", -2, 27), pecan_house(lawn), tables)
    assert found.value("sod_sf") == 40  # (4 + 2) x (4 + 2) = 36, up to 40
    assert "lawn" in found.facts


def test_ground_water_over_the_floor_takes_a_pump(tables: Tables) -> None:
    job = replace(pecan_house(), site=Site(water_table_ft=3.0))
    found = take_off(repair("tunnel", -2, 27), job, tables)
    assert "wet" in found.facts
    assert found.value("dewater_days") > 0


def test_an_engineers_letter_on_file_is_not_bought_again(tables: Tables) -> None:
    job = pecan_house()
    on_file = replace(
        job, approvals=(Approval(what="letter", by="P. Stone", on=job.day, covers=("tunnel-under-a-beam",)),)
    )
    found = take_off(repair("tunnel", -2, 27), on_file, tables)
    assert found.value("engineer_letters") == 0
    assert "engineer" in found.facts


def test_deep_pits_get_a_ladder_and_are_shored_by_hand_for_no_machine_sets_a_box_at_a_wall(tables: Tables) -> None:
    line = pecan_line()
    marks = tuple(replace(m, depth_ft=4.6) if m.word == "invert" else m for m in line.marks)
    found = take_off(repair("tunnel", -2, 27), pecan_house(replace(line, marks=marks)), tables)
    assert found.value("pit_depth_ft") == 5.2
    assert found.value("ladders") == 1
    assert found.value("boxes") == 0
    assert found.value("shores_sf") == pytest.approx(4 * 4 * 5.2)
    far = tables.with_settings({"second_pit_over_ft": "20"})
    two = take_off(repair("tunnel", -2, 27), pecan_house(replace(line, marks=marks)), far)
    assert (two.value("pits"), two.value("ladders")) == (2, 2), "a ladder in each pit"
    assert {"depth_over_4", "depth_over_5", "hand_shored"} <= found.facts


def test_without_beams_no_letter_and_no_dips(tables: Tables) -> None:
    line = pecan_line()
    plain = replace(line, marks=tuple(m for m in line.marks if m.word != "beam"))
    job = pecan_house(plain)
    no_edge = replace(job, house=replace(job.house, edge_beam=EdgeBeam(0.0, 0.0)))
    found = take_off(repair("tunnel", -2, 27), no_edge, tables)
    assert found.value("engineer_letters") == found.value("tunnel_dips_cf") == found.value("tunnel_beams_cf") == 0
    assert "engineer" not in found.facts
    assert found.value("pit_depth_ft") == pytest.approx(3.2)  # 0.333 + 3.3 - 0.5 = 3.133, up


def test_a_tunnel_to_a_side_line_first_follows_the_line_it_joins(tables: Tables) -> None:
    """Kitchen line, 14 ft, joins the main 16 ft inside the slab edge: 16 + 14 + 2 ft of tunnel to its upper end."""
    marks = (at("cleanout", 0.0), at("depth", 5.0, depth_ft=1.8, surface="tile"))
    kitchen = Line(name="kitchen", size_in=2, pipe="cast iron", length_ft=14.0, joins=Join("main", 16.0), marks=marks)
    job = replace(pecan_house(), lines=(*pecan_house().lines, kitchen))
    found = take_off(replace(repair("tunnel", 0, 14), line="kitchen"), job, tables)
    assert found.value("tunnel_ft") == 32.0
    assert any("follows the line it joins for 16 ft" in str(a) for a in found.assumptions)
    assert (found.value("end_couplings_tunnel"), found.value("junctions")) == (1, 1), (
        "the wye is glued on at the one end"
    )
    assert found.value("hangers") == up(14 / 4) + 1


def test_in_one_scope_a_side_tunnel_begins_in_the_main_tunnel_and_digs_no_pit(tables: Tables) -> None:
    marks = (at("cleanout", 0.0), at("depth", 5.0, depth_ft=1.8, surface="tile"))
    kitchen = Line(name="kitchen", size_in=2, pipe="cast iron", length_ft=14.0, joins=Join("main", 16.0), marks=marks)
    job = replace(pecan_house(), lines=(*pecan_house().lines, kitchen))
    main = take_off(repair("tunnel", -2, 27), job, tables)
    side = take_off(replace(repair("tunnel", 0, 14), id="k", line="kitchen"), job, tables)
    both = together([main, replace(side, facts=side.facts | {"second_way_out"})], job, tables)
    assert both[0] is main
    assert both[1].value("tunnel_ft") == 16.0
    assert both[1].value("pits") == both[1].value("pit_bcy") == 0
    bands = [both[1].value(n) for n in ("tunnel_ft_to_20", "tunnel_ft_20_to_40")]
    assert bands == [4.0, 12.0]  # the join lies 16 ft from the pit
    assert "second_way_out" in both[1].facts


def test_a_main_tunnel_that_ends_short_of_the_join_does_not_help(tables: Tables) -> None:
    marks = (at("cleanout", 0.0), at("depth", 5.0, depth_ft=1.8, surface="tile"))
    kitchen = Line(name="kitchen", size_in=2, pipe="cast iron", length_ft=14.0, joins=Join("main", 16.0), marks=marks)
    job = replace(pecan_house(), lines=(*pecan_house().lines, kitchen))
    side = take_off(replace(repair("tunnel", 0, 14), id="k", line="kitchen"), job, tables)
    short = take_off(repair("tunnel", -2, 15.9), job, tables)
    assert together([short, side], job, tables) == (short, side)
    assert together([side], job, tables) == (side,)


def test_of_two_ways_in_from_the_wall_the_shorter_is_taken(tables: Tables) -> None:
    two = changed(pecan_line(), at("beside", 19.0, lengths=(("", 9.0),)), at("beside", 21.0, lengths=(("", 5.0),)))
    assert (
        take_off(repair("tunnel", 18, 22, entry="wall"), pecan_house(two), tables).value("tunnel_ft") == 5.0 + 4.0 + 4.0
    )


def test_a_line_that_leaves_the_slab_itself_follows_no_other(tables: Tables) -> None:
    found = take_off(repair("tunnel", -2, 27, entry="exit"), pecan_house(), tables)
    assert not any("follows the line" in str(a) or "begins in the one" in str(a) for a in found.assumptions)


def test_the_pit_lies_in_what_grows_right_at_the_wall(tables: Tables) -> None:
    line = pecan_line()
    marks = (
        *(m for m in line.marks if m.word != "yard"),
        at("yard", -3.0, 0.0, choice="lawn"),
        at("yard", -20.0, -3.0, choice="bare ground"),
    )
    assert take_off(repair("tunnel", -2, 27), pecan_house(replace(line, marks=marks)), tables).value("sod_sf") == 40


@pytest.mark.parametrize(("near_ft", "cleanouts"), [(0.0, 0), (-0.5, 1)])
def test_a_cleanout_comes_only_with_pipe_that_leaves_the_slab(tables: Tables, near_ft: float, cleanouts: float) -> None:
    assert take_off(repair("tunnel", near_ft, 27), pecan_house(), tables).value("cleanouts") == cleanouts


@pytest.mark.parametrize(("at_ft", "cleanouts"), [(-5.0, 0), (-5.1, 1)], ids=["near enough", "too far"])
def test_a_cleanout_that_stands_near_the_exit_is_enough(tables: Tables, at_ft: float, cleanouts: float) -> None:
    line = changed(pecan_line(), at("cleanout", at_ft))
    assert take_off(repair("tunnel", -2, 27), pecan_house(line), tables).value("cleanouts") == cleanouts


def test_from_the_wall_the_face_is_as_high_as_the_pipe_there_asks(tables: Tables) -> None:
    line = pecan_line()
    deep = replace(line, marks=tuple(replace(m, depth_ft=3.6) if m.word == "invert" else m for m in line.marks))
    found = take_off(
        repair("tunnel", 18, 22, entry="wall"),
        pecan_house(changed(deep, at("beside", 20.0, lengths=(("", 6.0),)))),
        tables,
    )
    assert found.value("tunnel_face_height_ft") == up(3.6 - 24 / 96 + 1.0 - 1 / 3, 0.1)
    assert found.value("tunnel_mouth_height_ft") == up(3.6 - 18 / 96 + 1.0 - 1 / 3, 0.1)


def test_only_the_pipe_that_hangs_is_given_hangers(tables: Tables) -> None:
    found = take_off(repair("tunnel", 8, 20, entry="exit"), pecan_house(), tables)
    assert found.value("hangers") == 12 / 4 + 1 + 2


def test_the_crew_is_told_how_hard_an_empty_pipe_pushes_up(tables: Tables) -> None:
    """pi/4 x 0.375² x 120 - 2.01 lb = 11.2 lb a foot."""
    found = take_off(repair("tunnel", -2, 27), pecan_house(), tables)
    assert found.value("uplift_lb_per_ft") == pytest.approx(3.14159265 / 4 * 0.375**2 * 120 - 2.01)
    dry = take_off(repair("tunnel", -2, 27), pecan_house(), tables.with_settings({"tunnel_fill": "native"}))
    assert dry.value("uplift_lb_per_ft") == 0


@pytest.mark.parametrize(("water_ft", "wet"), [(3.49, True), (3.5, False)])
def test_water_is_compared_with_the_lowest_floor_below_the_ground(tables: Tables, water_ft: float, wet: bool) -> None:
    """Pecan: slab 0.333 + mouth 3.3 + dip 0.4 under the edge beam - 0.5 ft the ground lies lower = 3.533; the inner dip
    0.333 + 3.3 - 0.3 x 13 / 29 + 0.6 - 0.5 = 3.599 ft."""
    job = replace(pecan_house(), site=Site(water_table_ft=water_ft + 0.1))
    assert ("wet" in take_off(repair("tunnel", -2, 27), job, tables).facts) is wet


def test_a_tunnel_says_what_it_counts_on(tables: Tables) -> None:
    found = take_off(repair("tunnel", -2, 27), pecan_house(), tables)
    assert any("supports under it are not included" in str(a) for a in found.assumptions)
    assert any("off gas and electric lines" in str(c) for c in found.cautions)


def test_a_letter_for_one_thing_is_none_for_another(tables: Tables) -> None:
    """Each excavation's protection past 20 ft is designed by a registered engineer: 29 CFR 1926.652(b), (c)."""
    house = Path(__file__).parents[1] / "cases" / "houses" / "twenty-feet-and-a-half"
    read = read_job(house / "job.toml").job
    assert read is not None

    def letters(*covers: str) -> float:
        paper = Approval(what="engineer's letter", by="P. Stone", on=read.day, covers=covers)
        found = take_off(replace(repair("trench", 56, 64), line="yard"), replace(read, approvals=(paper,)), tables)
        return found.value("engineer_letters")

    assert letters() == letters("tunnel-under-a-beam") == 1
    assert letters("engineer-past-twenty-feet") == 0

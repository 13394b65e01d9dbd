"""The new pipe's crown against every beam: at the edge of the firm's clearance and one step off."""

from dataclasses import replace

import pytest

from estimator.model.job import EdgeBeam
from estimator.model.line import Line
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from tests.takeoff.houses import at, pecan_house, pecan_line, repair


def with_beam(deep_ft: float, **slots: object) -> Line:
    line = pecan_line()
    marks = tuple(m for m in line.marks if m.word != "beam")
    return replace(line, marks=(*marks, at("beam", 15.0, lengths=(("wide", 10 / 12), ("deep", deep_ft)), **slots)))


CROWN_AT_FAR_FACE = 2.6 - (15 + 10 / 12) * 0.125 / 12 - (4.026 + 0.237) / 12
CLEARANCE = 0.5 / 12


@pytest.mark.parametrize(("off_ft", "finds"), [(0.0, 0), (0.001, 1)], ids=["just clears", "a hair too near"])
def test_the_crown_clears_the_beams_far_face_by_the_firms_clearance(tables: Tables, off_ft: float, finds: int) -> None:
    line = with_beam(CROWN_AT_FAR_FACE - CLEARANCE + off_ft)
    assert len(take_off(repair("tunnel", -2, 27), pecan_house(line), tables).finds) == finds


@pytest.mark.parametrize(
    ("deep_ft", "words"), [(2.2, "1.4 in into the beam at 15 ft"), (2.06, "0.2 in under the beam at 15 ft")]
)
def test_the_estimator_reads_how_much_is_missing(tables: Tables, deep_ft: float, words: str) -> None:
    found = take_off(repair("tunnel", -2, 27), pecan_house(with_beam(deep_ft)), tables).finds[0]
    assert words in str(found.estimator)
    assert found.settings == ("beam_clearance_in",)


def test_a_pipe_through_a_beam_is_not_compared_but_asks_for_a_sleeve(tables: Tables) -> None:
    found = take_off(repair("tunnel", -2, 27), pecan_house(with_beam(3.0, through=True)), tables)
    assert found.finds == ()
    assert any("sleeve" in str(c) for c in found.cautions)


def test_two_inverts_read_give_the_pipes_own_slope(tables: Tables) -> None:
    line = pecan_line()
    read = replace(
        line, marks=(*line.marks, at("invert", 26.0, depth_ft=2.6 - 26 * 0.2 / 12, to="invert", surface="slab"))
    )
    found = take_off(repair("tunnel", -2, 27), pecan_house(read), tables)
    assert found.value("fall_in_per_ft") == pytest.approx(0.2)
    assert not any("one reading of the pipe's bottom" in str(a) for a in found.assumptions)


def test_a_locators_depth_gives_digging_depth_and_says_that_it_gives_no_fall(tables: Tables) -> None:
    line = pecan_line()
    marks = tuple(m for m in line.marks if m.word != "invert")
    located = replace(line, marks=(*marks, at("loc", 13.5, depth_ft=2.3, to="centre", surface="tile")))
    found = take_off(repair("tunnel", -2, 27), pecan_house(located), tables)
    assert found.value("exit_invert_ft") == pytest.approx(2.3 + 2 / 12 + 13.5 * 0.125 / 12)
    assert any("is from a locator" in str(a) for a in found.assumptions)


def test_a_transmitter_that_rides_low_gives_a_shallower_invert(tables: Tables) -> None:
    line = pecan_line()
    marks = tuple(m for m in line.marks if m.word != "invert")
    located = replace(line, marks=(*marks, at("loc", 13.5, depth_ft=2.3, to="centre", surface="tile")))
    low = take_off(repair("tunnel", -2, 27), pecan_house(located), tables.with_settings({"sonde_height_in": "0.5"}))
    assert low.value("exit_invert_ft") == pytest.approx(2.3 + 0.5 / 12 + 13.5 * 0.125 / 12)


def test_with_nothing_read_under_the_slab_the_depth_counts_as_unlocated(tables: Tables) -> None:
    line = pecan_line()
    blind = replace(line, marks=tuple(m for m in line.marks if m.word != "invert"))
    assert "depth_unlocated" in take_off(repair("tunnel", -2, 27), pecan_house(blind), tables).facts


@pytest.mark.parametrize(("apart_ft", "how"), [(2.9, "one reading"), (3.0, "read")])
def test_two_inverts_close_together_give_no_slope(tables: Tables, apart_ft: float, how: str) -> None:
    line = pecan_line()
    read = replace(line, marks=(*line.marks, at("invert", apart_ft, depth_ft=2.5, to="invert", surface="slab")))
    found = take_off(repair("tunnel", -2, 27), pecan_house(read), tables).quantity("exit_invert_ft")
    assert found is not None
    assert [i.value for i in found.inputs] == [how]


@pytest.mark.parametrize(("far_invert", "flat"), [(2.6 - 24 * 0.125 / 12, False), (2.6 - 24 * 0.124 / 12, True)])
def test_inverts_that_give_less_than_the_places_fall_are_said(tables: Tables, far_invert: float, flat: bool) -> None:
    line = pecan_line()
    read = replace(line, marks=(*line.marks, at("invert", 24.0, depth_ft=far_invert, to="invert", surface="slab")))
    found = take_off(repair("tunnel", -2, 27), pecan_house(read), tables)
    assert any("inspector's word" in str(c) for c in found.cautions) is flat


def test_with_nothing_read_the_firms_depth_stands_at_the_middle_of_the_run(tables: Tables) -> None:
    line = pecan_line()
    blind = replace(line, marks=tuple(m for m in line.marks if m.word != "invert"))
    found = take_off(repair("tunnel", -2, 27), pecan_house(blind), tables)
    assert found.value("exit_invert_ft") == pytest.approx(4.0 + 2 / 12 + 13.5 * 0.125 / 12)


def test_two_inverts_inside_the_house_are_carried_to_the_edge_along_their_slope(tables: Tables) -> None:
    line = pecan_line()
    marks = tuple(m for m in line.marks if m.word != "invert")
    two = (
        at("invert", 5.0, depth_ft=2.5, to="invert", surface="slab"),
        at("invert", 25.0, depth_ft=2.1, to="invert", surface="slab"),
    )
    found = take_off(repair("tunnel", -2, 27), pecan_house(replace(line, marks=(*marks, *two))), tables)
    assert found.value("fall_in_per_ft") == pytest.approx(0.02 * 12)
    assert found.value("exit_invert_ft") == pytest.approx(2.5 + 5 * 0.02)


def test_one_invert_inside_the_house_is_carried_to_the_edge_at_the_places_fall(tables: Tables) -> None:
    line = pecan_line()
    marks = tuple(m for m in line.marks if m.word != "invert")
    one = at("invert", 12.0, depth_ft=2.4, to="invert", surface="slab")
    found = take_off(repair("tunnel", -2, 27), pecan_house(replace(line, marks=(*marks, one))), tables)
    assert found.value("exit_invert_ft") == pytest.approx(2.4 + 12 * 0.125 / 12)


def test_beams_beyond_the_face_and_outside_the_slab_are_not_on_the_way(tables: Tables) -> None:
    line = pecan_line()
    plain = replace(line, marks=tuple(m for m in line.marks if m.word != "beam"))
    beyond = replace(
        plain,
        marks=(
            *plain.marks,
            at("beam", 29.0, 30.0, lengths=(("deep", 2.0),)),
            at("beam", -6.0, -5.0, lengths=(("deep", 2.0),)),
        ),
    )
    job = pecan_house(beyond)
    no_edge = replace(job, house=replace(job.house, edge_beam=EdgeBeam(0.0, 0.0)))
    found = take_off(repair("tunnel", -2, 27), no_edge, tables)
    assert found.value("tunnel_beams_cf") == found.value("engineer_letters") == 0


def test_of_two_inverts_read_at_one_place_the_shallower_counts(tables: Tables) -> None:
    line = pecan_line()
    twice = replace(line, marks=(*line.marks, at("invert", 0.0, depth_ft=2.5, to="invert", surface="slab")))
    assert take_off(repair("tunnel", -2, 27), pecan_house(twice), tables).value("exit_invert_ft") == 2.5

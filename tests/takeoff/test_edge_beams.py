"""The beam along the slab's edge: whoever tunnels in passes under it, wherever he begins; silence is not "none"."""

from dataclasses import replace

import pytest

from estimator.model.edge_beam import edge_beam
from estimator.model.job import EdgeBeam, Job
from estimator.model.line import Line
from estimator.model.work import Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from tests.takeoff.houses import at, changed, pecan_house, pecan_line, repair

NONE = EdgeBeam(0.0, 0.0)


def without_beams() -> Line:
    line = pecan_line()
    return replace(line, marks=tuple(m for m in line.marks if m.word != "beam"))


def house_with(line: Line, edge: EdgeBeam | None = None) -> Job:
    job = pecan_house(line)
    return replace(job, house=replace(job.house, edge_beam=edge))


def from_the_wall(line: Line) -> Line:
    return changed(line, at("beside", 20.0, lengths=(("", 6.0),)))


def test_a_tunnel_from_a_wall_dips_under_the_beam_noted_at_the_exit(tables: Tables) -> None:
    """24 in deep, 12 in wide at the exit: 2.0 + 2.0 ft to crawl - 0.333 slab - 3.09 high = 0.58, up 0.6, x (1 + 2) ft x 3 ft wide."""
    line = from_the_wall(pecan_line())
    found = take_off(repair("tunnel", 18, 22, entry="wall"), pecan_house(line), tables)
    assert found.value("tunnel_ft") == 14.0
    assert found.value("engineer_letters") == 1
    assert found.value("tunnel_dips_cf") == pytest.approx(0.6 * 3.0 * 3.0)
    assert found.value("tunnel_beams_cf") == pytest.approx((2.0 - 1 / 3) * 1.0 * 3.0)
    assert found.value("pit_depth_ft") == 3.5  # 2.0 + 2.0 - 0.5
    assert any("runs around the house" in str(a) for a in found.assumptions)


def test_from_a_wall_a_beam_over_the_stretch_is_dipped_under_and_its_crown_checked(tables: Tables) -> None:
    """In 6 + 2 ft, then along the pipe: the beam at 20 ft lies 10 ft along the tunnel."""
    over = changed(from_the_wall(pecan_line()), at("beam", 20.0, lengths=(("wide", 1.0), ("deep", 2.4))))
    found = take_off(repair("tunnel", 18, 22, entry="wall"), pecan_house(over), tables)
    assert found.value("tunnel_beams_cf") == pytest.approx((5 / 3 + 2.4 - 1 / 3) * 3.0)
    assert [f.rule for f in found.finds] == ["pipe-clears-the-beam"]


def test_where_nobody_said_anything_a_usual_beam_is_counted_with_and_asked_for(tables: Tables) -> None:
    for line in (without_beams(), from_the_wall(without_beams())):
        found = take_off(repair("tunnel", 18, 22), house_with(line), tables)
        assert {"edge_beam_unknown", "engineer"} <= found.facts
        assert found.value("engineer_letters") == 1
        assert found.value("tunnel_beams_cf") == pytest.approx((2.0 - 1 / 3) * 1.0 * 3.0)
        assert any("we assume a perimeter beam" in str(a) for a in found.assumptions)


def test_a_house_whose_edge_was_looked_at_and_has_no_beam_takes_no_letter(tables: Tables) -> None:
    found = take_off(repair("tunnel", 18, 22), house_with(without_beams(), NONE), tables)
    assert found.value("engineer_letters") == found.value("tunnel_beams_cf") == 0
    assert not {"edge_beam_unknown", "engineer"} & found.facts


@pytest.mark.parametrize(("deep_ft", "pit_ft"), [(1.5, 3.0), (3.0, 4.5)])
def test_the_houses_own_word_sets_the_pit(tables: Tables, deep_ft: float, pit_ft: float) -> None:
    """Beam + 2 ft to crawl - 0.5 ft the ground lies below the slab; never less than the mouth: 0.333 + 3.0 - 0.5, up."""
    job = house_with(from_the_wall(without_beams()), EdgeBeam(deep_ft, 1.0))
    found = take_off(repair("tunnel", 18, 22, entry="wall"), job, tables)
    assert found.value("pit_depth_ft") == pytest.approx(pit_ft, abs=0.1)


@pytest.mark.parametrize(("at_ft", "said_by"), [(2.0, "the line's log"), (2.1, "nobody")])
def test_a_beam_near_the_edge_is_the_edges(at_ft: float, said_by: str) -> None:
    line = changed(without_beams(), at("beam", at_ft, lengths=(("wide", 1.0), ("deep", 2.0))))
    assert edge_beam(house_with(line), line, 2.0).said_by == said_by


def test_a_side_tunnel_that_follows_the_main_first_passes_the_mains_beams(tables: Tables) -> None:
    from estimator.model.line import Join

    marks = (at("cleanout", 0.0), at("depth", 5.0, depth_ft=1.8, surface="tile"))
    kitchen = Line(name="kitchen", size_in=2, pipe="cast iron", length_ft=14.0, joins=Join("main", 16.0), marks=marks)
    job = replace(pecan_house(), lines=(*pecan_house().lines, kitchen))
    found = take_off(replace(repair("tunnel", 0, 14), line="kitchen"), job, tables)
    assert found.value("engineer_letters") == 1
    assert found.value("tunnel_beams_cf") == pytest.approx((2.0 - 1 / 3) * (1.0 + 10 / 12) * 3.0)


@pytest.mark.parametrize(("built", "hangers", "stands"), [(1964, True, False), (1965, False, True)])
def test_a_slab_that_may_have_tendons_carries_no_anchors(
    tables: Tables, built: int, hangers: bool, stands: bool
) -> None:
    job = pecan_house()
    job = replace(job, house=replace(job.house, built=built, tendons=""))
    found = take_off(repair("tunnel", -2, 27), job, tables)
    assert bool(found.value("hangers")) is hangers
    assert bool(found.value("pipe_stands")) is stands
    assert any("no anchors or cores" in str(c) for c in found.cautions) is stands


def strip(tables: Tables, line: Line, edge: EdgeBeam | None, near_ft: float = -2, far_ft: float = 10) -> Takeoff:
    return take_off(repair("break-through", near_ft, far_ft), house_with(line, edge), tables)


def test_a_strip_stops_at_the_edge_beam_the_house_tells_of_as_at_one_the_log_notes(tables: Tables) -> None:
    """The log's beam of 0 to 1 ft, 24 in deep, and the same in the key edge_beam: the same earth, saw cut and letter."""
    noted = take_off(repair("break-through", -2, 10), pecan_house(), tables)
    told = strip(tables, without_beams(), EdgeBeam(2.0, 1.0))
    assert told.value("beam_crossings") == noted.value("beam_crossings") == 1
    for name in ("inside_dig_bcy", "saw_lf", "slab_sf", "engineer_letters", "inside_backfill_ccy"):
        assert told.value(name) == pytest.approx(noted.value(name)), name
    assert told.value("slab_sf") == pytest.approx(2.0 * 6.5 + 3.0 * 3.0)  # 1 to 10.5 ft, the last 3 ft 3 ft wide


def test_a_strip_at_an_edge_nobody_spoke_of_counts_with_a_usual_beam(tables: Tables) -> None:
    found = strip(tables, without_beams(), None)
    assert found.value("beam_crossings") == 1
    assert "edge_beam_unknown" in found.facts
    assert any("we assume a perimeter beam" in str(a) for a in found.assumptions)


@pytest.mark.parametrize(("near_ft", "beams"), [(0.9, 1), (1.0, 0)])
def test_a_strip_that_begins_inside_the_edge_beam_meets_it_not(tables: Tables, near_ft: float, beams: float) -> None:
    assert strip(tables, without_beams(), EdgeBeam(2.0, 1.0), near_ft).value("beam_crossings") == beams


def test_a_strip_at_an_edge_without_a_beam_is_opened_up_to_the_edge(tables: Tables) -> None:
    found = strip(tables, without_beams(), NONE)
    assert found.value("beam_crossings") == found.value("engineer_letters") == 0
    assert found.value("slab_sf") == pytest.approx(2.0 * 7.5 + 3.0 * 3.0)


@pytest.mark.parametrize("method", ["break-through", "tunnel"])
@pytest.mark.parametrize(("deep_ft", "through"), [(2.19, False), (2.2, True)])
def test_a_pipe_that_does_not_clear_the_edge_beams_bottom_leaves_through_it(
    tables: Tables, method: str, deep_ft: float, through: bool
) -> None:
    """Exit invert 2.6 ft: its top lies 2.6 - (4.026 + 0.237) / 12 = 2.245 ft below the slab top, 1/8 in higher
    at the beam's inner face: 2.234 ft, and half an inch is kept clear: 2.193 ft."""
    found = take_off(repair(method, -2, 10), house_with(without_beams(), EdgeBeam(deep_ft, 1.0)), tables)
    assert any("through a beam needs a sleeve" in str(c) for c in found.cautions) is through
    assert found.finds == ()


@pytest.mark.parametrize("method", ["break-through", "tunnel"])
@pytest.mark.parametrize(("far_ft", "inner", "said"), [(13, False, False), (27, False, True), (27, True, False)])
def test_silence_about_inner_beams_over_a_long_way_is_said(
    tables: Tables, method: str, far_ft: float, inner: bool, said: bool
) -> None:
    """A beam about every 15 ft: a regional contractor's page on slab types (read). The tunnel is 2 ft longer than its pipe."""
    line = changed(without_beams(), *([at("beam", 15.0, lengths=(("wide", 1.0), ("deep", 2.0)))] if inner else []))
    found = take_off(repair(method, 0, far_ft), house_with(line, NONE), tables)
    assert any("no inside grade beam" in str(a) for a in found.assumptions) is said


def test_a_basement_floor_has_no_beams_to_ask_for(tables: Tables) -> None:
    job = house_with(without_beams(), None)
    job = replace(job, house=replace(job.house, floor="basement"))
    found = take_off(repair("break-through", 0, 27), job, tables)
    assert found.value("beam_crossings") == 0
    assert not any("beam" in str(a) for a in found.assumptions)

"""The beam along the slab's edge: whoever tunnels in passes under it, wherever he begins; silence is not "none"."""

from dataclasses import replace

import pytest

from estimator.model.edge_beam import edge_beam
from estimator.model.job import EdgeBeam, Job
from estimator.model.line import Line
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
    assert any("taken to run round the house" in str(a) for a in found.assumptions)


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
        assert any("nobody said whether a beam" in str(a) for a in found.assumptions)


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
    assert any("no anchor, pin or core" in str(c) for c in found.cautions) is stands

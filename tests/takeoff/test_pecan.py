"""Pecan: 29 ft of iron pipe replaced from a tunnel under the slab. Every quantity as worked out by hand on paper.

Exit invert 2.6 ft below the slab top, fall 1/8 in/ft, slab 4 in, edge beam 12 in and inner beam 10 in wide, both 24 in deep.
Height at the mouth 2.6 + 1.0 - 0.333 = 3.267 -> 3.3 ft, at the face 3.0 ft, straight between.
"""

from dataclasses import replace

import pytest

from estimator.model.judgement import Effect
from estimator.model.work import Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff import take_off, take_off_job
from tests.takeoff.houses import pecan_house, pecan_line, repair


@pytest.fixture
def pecan(tables: Tables) -> Takeoff:
    return take_off(repair("tunnel", -2, 27, entry="exit"), pecan_house(), tables)


DIPS = 3 * (0.4 * 3.0 + 0.6 * (0.8333333333 + 4.0))
BEAMS = (2.0 - 1 / 3) * 3 * (1.0 + 10 / 12)
TUNNEL = 3 * 29 * (3.3 + 3.0) / 2 + DIPS - BEAMS
PIT = 4 * 4 * (4.0 - 0.5)
NATIVE = 0.75 * TUNNEL / 27 + PIT / 27

BY_HAND = {
    "pipe_ft": 29.0,
    "pipe_tunnel_ft": 29.0,
    "pipe_buy_ft": 29.0,
    "tunnel_ft": 27 + 2.0,
    "tunnel_ft_to_20": 20.0,
    "tunnel_ft_20_to_40": 9.0,
    "tunnel_width_ft": 3.0,
    "tunnel_mouth_height_ft": 3.3,
    "tunnel_face_height_ft": 3.0,
    "tunnel_dips_cf": DIPS,
    "tunnel_beams_cf": BEAMS,
    "tunnel_cf": TUNNEL,
    "tunnel_bcy": TUNNEL / 27,
    "pits": 1,
    "pit_depth_ft": 3.5,
    "pit_bcy": PIT / 27,
    "safety_depth_ft": 3.5 + 0.5,
    "ladders": 1,
    "spoil_lcy": (TUNNEL + PIT) / 27 * 1.30,
    "shoring_sets": 6,
    "hangers": 7 + 1 + 3,
    "branches_tunnel": 3,
    "wyes": 3,
    "eighth_bends": 3,
    "couplings": 5,
    "end_couplings_tunnel": 2,
    "cleanouts": 1,
    "tunnel_native_ccy": 0.75 * TUNNEL / 27,
    "native_ccy": NATIVE,
    "slurry_cy": 0.25 * TUNNEL / 27,
    "export_lcy": ((TUNNEL + PIT) / 27 - NATIVE / 0.95) * 1.30,
    "loads": 1,
    "engineer_letters": 1,
    "fall_in_per_ft": 0.125,
    "exit_invert_ft": 2.6,
}


@pytest.mark.parametrize("name", BY_HAND)
def test_pecan_gives_the_quantity_worked_out_by_hand(pecan: Takeoff, name: str) -> None:
    assert pecan.value(name) == pytest.approx(BY_HAND[name], abs=1e-6)


def test_pecan_rounds_to_the_figures_on_the_page(pecan: Takeoff) -> None:
    assert round(pecan.value("tunnel_dips_cf"), 1) == 12.3
    assert round(pecan.value("tunnel_bcy"), 2) == 10.27
    assert round(pecan.value("pit_bcy"), 3) == 2.074


def test_pecan_has_no_side_cut_no_stub_no_sod_and_no_toilet_to_pull(pecan: Takeoff) -> None:
    for name in (
        "side_cut_ft",
        "stub_ft",
        "sod_sf",
        "toilets",
        "branches",
        "pipe_trench_ft",
        "end_couplings",
        "flowable_cy",
    ):
        assert pecan.value(name) == 0, name


def test_pecan_facts(pecan: Takeoff) -> None:
    of_the_works = {
        "dug", "people_below", "ground_opened", "below_floor", "under_house", "in_or_under_house", "tunnel",
        "pipe_laid", "pipe_cut", "pipe_renewed",
    }  # fmt: skip
    assert pecan.facts - of_the_works == {"built_before_1978", "cast_iron", "engineer", "slurry_backfill", "under_slab"}
    assert pecan.facts >= of_the_works


def test_the_job_around_pecan_has_everything_once(tables: Tables, pecan: Takeoff) -> None:
    job = take_off_job(pecan_house(), [pecan], tables)
    assert {q.name: q.value for q in job.quantities} == {
        "jobs": 1,
        "permits": 1,
        "inspections": 1,
        "films_after": 1,
        "tests": 1,
    }


def test_the_pipe_at_an_eighth_of_an_inch_clears_both_beams(pecan: Takeoff) -> None:
    assert pecan.finds == ()


def test_the_pipe_at_a_quarter_inch_would_run_into_the_inner_beam(tables: Tables) -> None:
    nobody_asked = replace(pecan_house(), house=replace(pecan_house().house, jurisdiction="unknown"))
    found = take_off(repair("tunnel", -2, 27, entry="exit"), nobody_asked, tables).finds
    assert [(f.rule, f.effect) for f in found] == [("pipe-clears-the-beam", Effect.BLOCKS)]


def test_a_branch_that_ties_three_feet_away_takes_a_side_cut_a_stub_and_a_foot_more_tunnel(tables: Tables) -> None:
    line = pecan_line()
    marks = tuple(
        replace(m, lengths=(("away", 3.0),)) if m.word == "branch" and m.stretch.from_ft == 10 else m
        for m in line.marks
    )
    away = take_off(repair("tunnel", -2, 27, entry="exit"), pecan_house(replace(line, marks=marks)), tables)
    assert away.value("side_cut_ft") == 3.0
    assert away.value("stub_ft") == 3.0
    assert away.value("tunnel_ft") == 30.0
    height_there = 3.3 - 0.3 * 10 / 30
    plain = 3 * 30 * 3.15
    dips = away.value("tunnel_dips_cf") - away.value("tunnel_beams_cf")
    assert away.value("tunnel_cf") == pytest.approx(plain + dips + 3 * height_there * 3, abs=1e-6)


@pytest.mark.parametrize(("far_ft", "pits"), [(28.0, 1), (28.1, 2)], ids=["30 ft of tunnel", "one step more"])
def test_a_second_pit_comes_where_the_face_is_farther_than_the_firms_limit(
    tables: Tables, far_ft: float, pits: int
) -> None:
    found = take_off(repair("tunnel", -2, far_ft, entry="exit"), pecan_house(), tables)
    assert found.value("pits") == pits


@pytest.mark.parametrize(
    ("fill", "fact", "quantity", "share"),
    [
        ("slurry", "slurry_backfill", "slurry_cy", 0.25),
        ("flowable", "flowable_backfill", "flowable_cy", 1.05),
        ("native", "native_backfill", "tunnel_native_ccy", 1.0),
    ],
)
def test_a_tunnel_is_filled_as_the_firm_decides(
    tables: Tables, fill: str, fact: str, quantity: str, share: float
) -> None:
    other = tables.with_settings({"tunnel_fill": fill})
    found = take_off(repair("tunnel", -2, 27, entry="exit"), pecan_house(), other)
    assert fact in found.facts
    assert found.value(quantity) == pytest.approx(share * found.value("tunnel_bcy"))


def test_a_tunnel_left_open_puts_nothing_back_but_the_pit(tables: Tables) -> None:
    found = take_off(repair("tunnel", -2, 27), pecan_house(), tables.with_settings({"tunnel_fill": "open"}))
    assert "left_open" in found.facts
    assert found.value("native_ccy") == pytest.approx(found.value("pit_bcy"))


def test_stations_that_grow_with_the_flow_give_the_same_tunnel(tables: Tables, pecan: Takeoff) -> None:
    line = pecan_line()
    turned = replace(
        line,
        downstream=1,
        marks=tuple(_turn(m) for m in line.marks),
        findings=tuple(
            replace(f, stretch=type(f.stretch)(-f.stretch.to_ft, -f.stretch.from_ft)) for f in line.findings
        ),
    )
    other = take_off(repair("tunnel", -27, 2, entry="exit"), pecan_house(turned), tables)
    assert [(q.name, round(q.value, 9)) for q in other.quantities] == [
        (q.name, round(q.value, 9)) for q in pecan.quantities
    ]


def _turn(mark):  # type: ignore[no-untyped-def]
    from estimator.model.stretch import Stretch

    low, high = mark.stretch.from_ft, mark.stretch.to_ft
    if mark.word == "slab":
        return replace(mark, stretch=Stretch(-40.0, 0.0))
    if mark.word == "beam" and low == high:
        high = low + (mark.length("wide") or 0.0)
    return replace(mark, stretch=Stretch(-high, -low))

"""Our figures beside published ones; and the printed table in docs/checks.md is the one these rows make."""

import hashlib
import math
from pathlib import Path

import pytest
from fluids import nearest_pipe

from estimator.knowledge import f1216, fixture_units
from estimator.knowledge.excavation import clear_of_footing, may_bench, type_over_a_pipe
from estimator.knowledge.pipes import pipe_size
from tests.published import soil_volumes
from tests.published.all_checks import CHECKS
from tests.published.check import Check
from tests.published.page import checks_page
from tests.published.settings_checks import demo

DOCS = Path(__file__).resolve().parents[2] / "docs"


@pytest.mark.parametrize("check", CHECKS, ids=lambda c: c.id)
def test_our_figure_agrees_with_the_published_one(check: Check) -> None:
    assert check.ours() == pytest.approx(check.published, abs=check.within), check.source


def test_every_check_has_an_id_of_its_own() -> None:
    ids = [c.id for c in CHECKS]
    assert len(ids) == len(set(ids))


def test_docs_checks_is_the_table_these_rows_make() -> None:
    """To print it anew: python -m tests.published.page"""
    assert (DOCS / "checks.md").read_text(encoding="utf-8") == checks_page()


@pytest.mark.parametrize(
    ("table", "digest"),
    [
        (fixture_units.UNITS, "8e33bc6f23f9c9d2"),
        (fixture_units.IPC_DRAIN, "de638ab848792aa6"),
        (fixture_units.UPC_HORIZONTAL, "79ff4ac6198530e8"),
        (soil_volumes.FACTORS, "7535e097e2a595eb"),
    ],
    ids=["fixture units", "building drains", "level pipe, UPC", "soil volumes"],
)
def test_a_published_table_is_as_it_was_read(table: dict[object, object], digest: str) -> None:
    assert hashlib.sha256(repr(table).encode()).hexdigest()[:16] == digest


@pytest.mark.parametrize("size", [1.5, 2, 3, 4, 6, 8, 10, 12, 14, 16, 18, 20, 24])
def test_pipe_sizes_agree_with_an_engineering_library(size: float) -> None:
    """fluids, nearest_pipe, Schedule 40: metric tables rounded to the hundredth of a millimetre, so 0.002 in; from 14 in on
    half a thousandth of wall is rounded up where ours is rounded down, from 18 in on outsides are whole millimeters."""
    within = 0.002 if size < 14 else 0.003 if size < 18 else 0.02
    _, inside_m, outside_m, wall_m = nearest_pipe(NPS=size, schedule="40")
    ours = pipe_size(size)
    for theirs_m, mine_in in ((inside_m, ours.inside_in), (outside_m, ours.outside_in), (wall_m, ours.wall_in)):
        assert theirs_m / 0.0254 == pytest.approx(mine_in, abs=within)


@pytest.mark.parametrize("soil", soil_volumes.FACTORS)
def test_soil_conversions_agree_with_themselves(soil: str) -> None:
    """f(a to c) = f(a to b) x f(b to c) within 0.01: FM 5-434 table 1-1 [memory]."""
    states: tuple[soil_volumes.State, ...] = ("bank", "loose", "compacted")
    for a in states:
        for b in states:
            for c in states:
                through = soil_volumes.factor(soil, a, b) * soil_volumes.factor(soil, b, c)
                assert through == pytest.approx(soil_volumes.factor(soil, a, c), abs=0.01), (a, b, c)


@pytest.mark.parametrize("soil", ["sand", "common earth", "clay"])
def test_published_swell_of_soil_makes_more_and_packing_less(soil: str) -> None:
    assert soil_volumes.factor(soil, "bank", "loose") > 1 > soil_volumes.factor(soil, "bank", "compacted")


def test_soil_over_a_pipe_is_never_type_a() -> None:
    """29 CFR 1926 Subpart P App. A: previously disturbed or fissured soil is not type A; seeping or submerged is C [read]."""
    for classified in (True, False):
        for leak in (True, False):
            for water in (True, False):
                assert type_over_a_pipe("A", classified=classified, leak=leak, water=water) in ("B", "C")


@pytest.mark.parametrize(
    ("classified", "leak", "water", "expected"),
    [(True, False, False, "B"), (False, False, False, "C"), (True, True, False, "C"), (True, False, True, "C")],
)
def test_soil_is_type_b_only_when_classified_dry_and_without_a_leak(
    classified: bool, leak: bool, water: bool, expected: str
) -> None:
    assert type_over_a_pipe("B", classified=classified, leak=leak, water=water) == expected


def test_type_c_is_never_benched() -> None:
    """Subpart P App. B: no benching in type C [read second-hand]."""
    assert not may_bench("C", cohesive=True)
    assert may_bench("B", cohesive=True)
    assert not may_bench("B", cohesive=False)


def test_the_footing_line_is_at_forty_five_degrees() -> None:
    """IPC 307.5; IRC P2604.4 [read second-hand]: offset at least the depth below the footing's lower edge."""
    assert clear_of_footing(2.0, 2.0)
    assert not clear_of_footing(1.99, 2.0)
    assert clear_of_footing(0.0, 0.0)


# ── the liner equation moves the right way (textbook table 7.9 [read]) ────────────────────────

LINER = f1216.Liner()


def _soil(**change: float) -> float:
    ground = {"cover_ft": 8.0, "water_over_crown_ft": 2.0, "soil_modulus_psi": 1000.0, **change}
    return f1216.wall_for_soil_in(6, LINER, f1216.Ground(**ground))


def test_a_liner_grows_thicker_with_ground_water() -> None:
    assert _soil(water_over_crown_ft=4.0) > _soil()
    assert f1216.wall_for_water_in(6, LINER, 7) > f1216.wall_for_water_in(6, LINER, 6)


def test_a_liner_grows_thicker_with_cover() -> None:
    assert _soil(cover_ft=20.0) > _soil(cover_ft=12.0)


def test_a_liner_grows_thicker_out_of_round() -> None:
    rounder, flatter = f1216.Liner(ovality_percent=2), f1216.Liner(ovality_percent=5)
    assert f1216.wall_for_water_in(6, flatter, 6) > f1216.wall_for_water_in(6, rounder, 6)
    assert f1216.wall_for_stress_in(6, flatter, 6) > f1216.wall_for_stress_in(6, rounder, 6)


def test_a_liner_grows_thinner_in_stiffer_soil() -> None:
    assert _soil(soil_modulus_psi=2000.0) < _soil()


@pytest.mark.parametrize(
    "rule",
    [
        lambda d: f1216.wall_for_water_in(d, LINER, 6),
        lambda d: f1216.wall_for_stiffness_in(d, LINER),
        lambda d: f1216.wall_for_stress_in(d, LINER, 6),
    ],
)
def test_a_liner_wall_is_in_proportion_to_the_bore(rule) -> None:  # type: ignore[no-untyped-def]
    assert rule(8) == pytest.approx(2 * rule(4))


def test_editions_before_07b_put_the_ovality_outside_the_root_and_ask_for_more() -> None:
    ground = f1216.Ground(cover_ft=8)
    ratio = f1216.wall_for_soil_in(6, LINER, ground, "before 07b") / f1216.wall_for_soil_in(6, LINER, ground)
    assert ratio == pytest.approx(f1216.ovality_factor(2) ** (-1 / 3))


def test_the_wall_found_carries_the_load_of_equation_x1_3_exactly() -> None:
    """Put back into q_t = (1/N) [32 R_w B' E's C (E_L I / D³)]^½ with I = t³/12, the wall gives the load it was made for."""
    ground = f1216.Ground(cover_ft=16, water_over_crown_ft=8, live_psi=0.3507)
    t = f1216.wall_for_soil_in(48, LINER, ground)
    support = f1216.buoyancy(8, 16) * f1216.elastic_support(16) * 1000 * f1216.ovality_factor(2)
    carried = math.sqrt(32 * support * LINER.long_term_psi * t**3 / 12 / 48**3) / LINER.safety
    assert carried == pytest.approx(f1216.total_load_psi(ground), rel=0.001)


def test_partly_rotten_pipe_asks_only_for_water_and_stress() -> None:
    wall = f1216.least_wall(4, LINER, f1216.Ground(cover_ft=6, water_over_invert_ft=6), fully=False)
    assert wall.soil_in == wall.stiffness_in == 0.0
    assert wall.least_in == max(wall.water_in, wall.stress_in) > 0


def test_a_bathroom_group_counts_less_than_its_fixtures() -> None:
    """IPC table 709.1 [read]."""
    apart = fixture_units.fixture_units((("toilet", 1), ("lavatory", 1), ("tub", 1)))
    assert fixture_units.fixture_units((("bathroom group", 1),)) < apart


def test_two_percent_does_not_meet_a_quarter_inch() -> None:
    assert fixture_units.column(0.02 * 12) == fixture_units.column(0.125)
    assert fixture_units.column(0.25) == fixture_units.column(0.125) + 1


def test_a_slope_flatter_than_the_table_is_refused() -> None:
    with pytest.raises(ValueError, match="flatter than any column"):
        fixture_units.column(0.06)


def test_more_units_than_any_pipe_carries_are_refused() -> None:
    with pytest.raises(ValueError, match="no size carries"):
        fixture_units.least_size_in((("toilet", 9000),), 0.25)


def test_the_wall_for_stress_puts_back_the_strength_of_equation_x1_2() -> None:
    """1.5 q (1 + q) DR² - 0.5 (1 + q) DR = S / (P N) with long-term strength."""
    ratio = 48 / f1216.wall_for_stress_in(48, LINER, 12)
    q, pressure = 0.02, 0.433 * 12
    left = 1.5 * q * (1 + q) * ratio**2 - 0.5 * (1 + q) * ratio
    assert left == pytest.approx(4500 * 0.5 / (pressure * 2))


@pytest.mark.parametrize(
    ("soil", "range_of"),
    [
        ("sand", "sand and gravel"),
        ("loam", "loam"),
        ("firm clay", "dense clay"),
        ("hard clay", "dense clay"),
        ("rock", "solid rock"),
    ],
)
def test_the_demo_soils_swell_within_the_textbooks_range(soil: str, range_of: str) -> None:
    """Dagostino / Peterson, fig. 9.1 [read]."""
    low, high = soil_volumes.TEXTBOOK_SWELL_PERCENT[range_of]
    assert low <= demo().soil(soil).swell_percent <= high


@pytest.mark.parametrize("soil", ["sand", "loam", "firm clay", "hard clay"])
def test_the_demo_soils_shrink_within_the_textbooks_range(soil: str) -> None:
    """90 to 100 % for loam and clay, 85 to 100 % for sand: Dagostino / Peterson, fig. 9.1 [read]."""
    row = demo().soil(soil)
    assert 0.85 <= row.shrink_machine <= row.shrink_hand <= 1.0

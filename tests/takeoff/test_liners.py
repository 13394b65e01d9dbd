"""Liners: cut length, shots, side drains, resin, what is left of the bore, and the wall against equation and place."""

import math
from dataclasses import replace

import pytest

from estimator.model.judgement import Effect
from estimator.model.line import Line, Pass
from estimator.model.work import Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from estimator.takeoff.case import Case
from estimator.takeoff.liner_wall import ground_over, liner_of
from tests.takeoff.houses import at, changed, hole, house, maple_line, pecan_house, pecan_line, repair

WALL = 3 / 25.4


@pytest.fixture
def lined(tables: Tables) -> Takeoff:
    return take_off(repair("reline", 10, 50), house(maple_line()), tables)


def test_the_liner_is_cut_with_overlap_launch_tail_and_riser(lined: Takeoff) -> None:
    assert lined.value("liner_ft") == 40
    assert lined.value("liner_cut_ft") == 40 + 1 + 2 + 1 + 2  # riser 2 ft
    assert lined.value("shots") == lined.value("bladders") == 1


def test_resin_fills_the_hollows_of_the_wall_and_ten_percent(lined: Takeoff) -> None:
    by_hand = math.pi * (4 - WALL) * WALL * 12 * 46 / 231 * 0.87 * 1.10
    assert lined.value("resin_gal") == pytest.approx(by_hand)


def test_rough_iron_takes_five_percent_more_resin_and_is_scraped_first(tables: Tables) -> None:
    iron = replace(maple_line(), pipe="cast iron")
    found = take_off(repair("reline", 10, 50), house(iron), tables)
    assert found.value("resin_gal") == pytest.approx(math.pi * (4 - WALL) * WALL * 12 * 46 / 231 * 0.87 * 1.15)
    assert found.value("descale_ft") == 40


def test_what_is_left_of_the_bore(lined: Takeoff) -> None:
    assert lined.value("finished_bore_in") == pytest.approx(4 - 2 * WALL)


def test_the_pipe_is_cleaned_to_the_far_end_and_filmed_again(lined: Takeoff) -> None:
    assert lined.value("clean_ft") == 50  # from the cleanout at 0
    assert lined.value("films_before") == 1


@pytest.mark.parametrize(("to_ft", "shots"), [(120, 1), (120.1, 2)], ids=["the longest shot", "a step more"])
def test_a_liner_too_long_is_shot_in_parts(tables: Tables, to_ft: float, shots: float) -> None:
    assert take_off(repair("reline", 0, to_ft), house(maple_line()), tables).value("shots") == shots


@pytest.mark.parametrize(("to_ft", "shots"), [(60, 1), (60.1, 2)])
def test_small_pipe_is_shot_less_far(tables: Tables, to_ft: float, shots: float) -> None:
    assert take_off(repair("reline", 0, to_ft), house(replace(maple_line(), size_in=3)), tables).value("shots") == shots


def test_a_change_of_bore_takes_a_shot_each(tables: Tables) -> None:
    line = changed(maple_line(), at("size", 0.0, 30.0, size_in=3.0), at("size", 30.0, 60.0, size_in=4.0))
    found = take_off(repair("reline", 10, 50), house(line), tables)
    assert found.value("shots") == 2
    assert found.value("size_changes") == 1
    assert found.value("finished_bore_in") == pytest.approx(3 - 2 * WALL)
    share = found.value("liner_cut_ft") / 40
    by_hand = sum(math.pi * (d - WALL) * WALL * 12 * 20 * share / 231 * 0.87 * 1.10 for d in (3, 4))
    assert found.value("resin_gal") == pytest.approx(by_hand)


def with_branch(**slots: object) -> Line:
    return changed(maple_line(), at("branch", 20.0, **{"size_in": 3.0, "live": "live", "proven": True, **slots}))


@pytest.mark.parametrize(
    ("slots", "reopened", "dug"),
    [
        ({}, 1, 0),
        ({"size_in": 2.0}, 1, 0),
        ({"size_in": 1.5}, 0, 1),
        ({"out_of_reach": True}, 0, 1),
        ({"live": "dead"}, 0, 0),
        ({"live": None, "proven": None}, 1, 0),
    ],
    ids=["3 in", "2 in", "1 1/2 in", "out of the cutter's reach", "dead", "nobody knows"],
)
def test_side_drains_are_reopened_dug_to_or_left_shut(
    tables: Tables, slots: dict[str, object], reopened: float, dug: float
) -> None:
    found = take_off(repair("reline", 10, 50), house(with_branch(**slots)), tables)
    assert (found.value("reinstatements"), found.value("dig_to_reopen")) == (reopened, dug)


def test_a_drain_not_proven_live_is_said_before_it_is_lined_over(tables: Tables) -> None:
    found = take_off(repair("reline", 10, 50), house(with_branch(proven=False)), tables)
    assert any("is in use and is reopened; we run water to verify it first" in str(a) for a in found.assumptions)


@pytest.mark.parametrize(("cure", "hours"), [("ambient", 4), ("hot", 1.5), ("light", 0.75)])
def test_cure_and_bypass_follow_the_firms_way_of_curing(tables: Tables, cure: str, hours: float) -> None:
    found = take_off(repair("reline", 10, 50), house(maple_line()), tables.with_settings({"liner_cure": cure}))
    assert found.value("cure_hours") == hours
    assert found.value("bypass_hours") == hours + 1


# ── the wall ──────────────────────────────────────────────────────────────────────────────────


def rules(tables: Tables, line: Line | None = None, **facts: object) -> list[str]:
    found = take_off(repair("reline", 10, 50), house(line or maple_line(), **facts), tables)
    assert all(f.effect is Effect.CAUTION for f in found.finds)
    return [f.rule for f in found.finds]


@pytest.mark.parametrize(("wall_mm", "found"), [("3.0", []), ("2.99", ["liner-wall-meets-the-place"])])
def test_a_wall_thinner_than_the_place_asks_is_a_caution(tables: Tables, wall_mm: str, found: list[str]) -> None:
    assert rules(tables.with_settings({"liner_thickness_mm": wall_mm})) == found


def test_sound_dry_pipe_asks_for_no_wall_by_the_equation(tables: Tables) -> None:
    found = take_off(repair("reline", 10, 50), house(replace(maple_line(), findings=())), tables)
    assert found.value("liner_least_wall_in") == 0.0


def test_rotten_pipe_counts_as_carrying_nothing(tables: Tables) -> None:
    rotten = replace(maple_line(), findings=(hole("channel", 20.0, 30.0),))
    found = take_off(repair("reline", 10, 50), house(rotten), tables)
    stiffness = 4 * (12 * 0.093 / 250_000) ** (1 / 3)
    assert found.value("liner_least_wall_in") == pytest.approx(stiffness)


@pytest.mark.parametrize(("wall_mm", "thin"), [("1.68", False), ("1.67", True)])
def test_a_wall_thinner_than_the_equation_is_a_caution(tables: Tables, wall_mm: str, thin: bool) -> None:
    """Stiffness of 4 in pipe asks for 1.674 mm."""
    rotten = replace(maple_line(), findings=(hole("channel", 20.0, 30.0),))
    found = rules(tables.with_settings({"liner_thickness_mm": wall_mm}), rotten)
    assert ("liner-wall-meets-the-equation" in found) is thin


def test_ground_water_asks_for_more_wall(tables: Tables) -> None:
    wet = changed(replace(maple_line(), findings=()), at("water table", 30.0, depth_ft=1.0))
    found = take_off(repair("reline", 10, 50), house(wet), tables)
    assert found.value("liner_least_wall_in") > 0


def test_the_older_edition_asks_for_more(tables: Tables) -> None:
    rotten = replace(
        maple_line(),
        findings=(hole("channel", 20.0, 30.0),),
        marks=tuple(replace(m, depth_ft=19.0) if m.word == "depth" else m for m in maple_line().marks),
    )
    newer = take_off(repair("reline", 10, 50), house(rotten), tables)
    older = take_off(repair("reline", 10, 50), house(rotten), tables.with_settings({"f1216_edition": "before 07b"}))
    soil = {
        t: {i.name: i.value for i in t.quantity("liner_least_wall_in").inputs}["soil, X1.3"] for t in (newer, older)
    }
    assert soil[older] > soil[newer]


# ── short liners ──────────────────────────────────────────────────────────────────────────────


@pytest.mark.parametrize(("length", "pieces", "lined"), [(4.0, 1, 4), (4.1, 1, 6), (6.0, 1, 6), (6.1, 2, 12)])
def test_a_short_liner_comes_in_stock_lengths(tables: Tables, length: float, pieces: float, lined: float) -> None:
    stock = tables.with_settings({"sectional_stock_ft": "2, 3, 4, 6"})
    found = take_off(repair("sectional liner", 20, 20 + length), house(maple_line()), stock)
    assert (found.value("sectional_pieces"), found.value("liner_ft")) == (pieces, lined)


def test_cleaning_starts_from_the_nearest_way_in(tables: Tables) -> None:
    two = replace(
        maple_line(),
        passes=(*maple_line().passes, Pass(number=2, access="street", flow="against flow", start_ft=70.0, sign=-1)),
    )
    assert take_off(repair("clean", 40, 60), house(two), tables).value("clean_ft") == 30


def test_the_pecan_main_lined_reopens_its_three_side_drains(tables: Tables) -> None:
    found = take_off(repair("reline", 0, 27), pecan_house(pecan_line()), tables)
    assert found.value("reinstatements") == 3
    assert found.value("descale_ft") == 27


@pytest.mark.parametrize(("seen", "counted"), [(5.0, 5.0), (1.0, 2.0)])
def test_out_of_round_counts_as_seen_but_never_less_than_the_firms(tables: Tables, seen: float, counted: float) -> None:
    line = replace(maple_line(), findings=(hole("oval", 20.0, percent=(0.0, seen)),))
    assert liner_of(Case.of(repair("reline", 10, 50), house(line), tables)).ovality_percent == counted


def test_a_place_that_asks_more_than_the_firms_wall_says_how_much(tables: Tables) -> None:
    thin = tables.with_settings({"liner_thickness_mm": "2.5"})
    found = take_off(repair("reline", 10, 50), house(maple_line()), thin).finds
    assert "wall 2.5 mm is thinner than 3.0 mm" in str(found[0].estimator)


@pytest.mark.parametrize(
    ("pipe", "kind", "scraped"), [("cast iron", "scale", 20), ("cast iron", "roots", 0), ("clay", "scale", 0)]
)
def test_cleaning_scrapes_iron_where_scale_was_seen(tables: Tables, pipe: str, kind: str, scraped: float) -> None:
    line = replace(maple_line(), pipe=pipe, findings=(hole(kind, 20.0, 30.0),))
    assert take_off(repair("clean", 15, 35), house(line), tables).value("descale_ft") == scraped


def test_the_cover_over_a_liner_is_the_depth_less_half_the_pipe(tables: Tables) -> None:
    ground = ground_over(Case.of(repair("reline", 10, 50), house(maple_line()), tables))
    assert ground.cover_ft == pytest.approx(3.4 - 2 / 12)
    wet = changed(maple_line(), at("water table", 30.0, depth_ft=2.4))
    over = ground_over(Case.of(repair("reline", 10, 50), house(wet), tables))
    assert over.water_over_crown_ft == pytest.approx(1.0 - 2 / 12)
    assert over.water_over_invert_ft == pytest.approx(1.0 + 2 / 12)


def test_a_short_liner_in_rough_iron_takes_five_percent_more_resin(tables: Tables) -> None:
    found = take_off(repair("sectional liner", 10, 14), pecan_house(pecan_line()), tables)
    assert found.value("resin_gal") == pytest.approx(math.pi * (4 - WALL) * WALL * 12 * 4 / 231 * 0.87 * 1.15)

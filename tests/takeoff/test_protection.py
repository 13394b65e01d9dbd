"""How the sides of a dig are held: by depth with the locator's error, soil type and room; every limit at its edge."""

from dataclasses import replace

import pytest

from estimator.model.job import Job, Site
from estimator.model.line import Line
from estimator.model.work import Takeoff
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from estimator.works.earth import Depth, sloped_pit_cf
from estimator.works.protection import Box, Hole, benched, boxed, least, sloped, ways
from estimator.works.room import Footing, Room
from tests.takeoff.houses import at, changed, house, maple_line, repair
from tests.takeoff.houses import hole as hole_in

OPEN = Room(None, None, ())
BOX = Box(width_ft=4.0, length_ft=8.0)


def hole(safety_ft: float, depth_ft: float = 6.0, length_ft: float = 12.0) -> Hole:
    return Hole(
        length_ft=length_ft,
        width_ft=2.4,
        shored_width_ft=3.4,
        depths=(Depth(0, depth_ft), Depth(length_ft, depth_ft)),
        safety_ft=safety_ft,
    )


def names(
    safety_ft: float, soil: str = "B", caving: bool | None = None, room: Room = OPEN, cohesive: bool = True
) -> list[str]:
    return [w.name for w in ways(hole(safety_ft), soil, caving, room, BOX, 5.0, cohesive=cohesive)]  # type: ignore[arg-type]


@pytest.mark.parametrize(("safety_ft", "expected"), [(4.99, ["vertical"]), (5.0, ["sloped", "benched", "boxed"])])
def test_from_five_feet_on_the_sides_are_held(safety_ft: float, expected: list[str]) -> None:
    assert names(safety_ft) == expected


def test_a_sign_of_caving_asks_for_it_at_any_depth() -> None:
    assert "vertical" not in names(2.0, caving=True)


def test_type_c_is_sloped_or_boxed_but_never_benched() -> None:
    assert names(6.0, "C") == ["sloped", "boxed"]


def test_stable_rock_stands_upright_however_deep() -> None:
    assert names(12.0, "rock") == ["vertical"]


@pytest.mark.parametrize(("clear_ft", "fits"), [(14.4, True), (14.39, False)], ids=["just fits", "a hair too narrow"])
def test_a_slope_is_offered_only_where_its_top_fits(clear_ft: float, fits: bool) -> None:
    top = 2.4 + 2 * 1.0 * 6.0
    assert top == 14.4
    assert ("sloped" in names(6.0, room=Room(clear_ft, None, ()))) is fits


@pytest.mark.parametrize(("away_ft", "fits"), [(7.2, True), (7.19, False)])
def test_an_edge_on_one_side_is_measured_from_the_pipe(away_ft: float, fits: bool) -> None:
    assert ("sloped" in names(6.0, room=Room(None, away_ft, ()))) is fits
    assert ("sloped" in names(6.0, room=Room(None, None, (Footing(away_ft, 1.5),)))) is fits


def test_the_way_with_the_least_earth_is_taken_unless_the_firm_asks_for_another() -> None:
    allowed = ways(hole(6.0), "B", None, OPEN, BOX, 5.0, cohesive=True)
    assert least(allowed).name == "boxed"
    assert least(allowed, "sloped").name == "sloped"
    assert least(allowed, "vertical").name == "boxed"


def test_a_box_makes_the_pit_at_least_as_large_as_itself() -> None:
    short = boxed(hole(6.0, length_ft=5.0), BOX)
    assert (short.width_ft, short.length_ft) == (4.0, 8.0)
    assert short.bank_cf == pytest.approx(4.0 * 8.0 * 6.0)


def test_between_shores_people_need_a_wider_bottom() -> None:
    wide = replace(hole(6.0), shored_width_ft=5.0)
    assert boxed(wide, BOX).width_ft == 5.0


def test_benches_have_the_slopes_outline_and_five_percent_more_earth() -> None:
    assert benched(hole(6.0), "B", 5.0).bank_cf == pytest.approx(1.05 * sloped(hole(6.0), "B").bank_cf)


def test_a_sloped_dig_is_sloped_on_all_four_sides() -> None:
    assert sloped(hole(6.0), "C").bank_cf == pytest.approx(sloped_pit_cf(12.0, 2.4, 6.0, 1.5))


# ── from the notes ────────────────────────────────────────────────────────────────────────────

KNOWN = Site(competent_person="R. Vale", caving_signs=False)


def yard(depth_ft: float, tables: Tables, *, site: Site = KNOWN, line: Line | None = None, **facts: object) -> Takeoff:
    base = line or maple_line()
    marks = tuple(replace(m, depth_ft=depth_ft) if m.word == "depth" else m for m in base.marks)
    job: Job = house(replace(base, marks=marks), site=site, **facts)
    return take_off(repair("yard spot", 36, 45), job, tables)


UNDER_PIPE = 0.1875 + 0.33


@pytest.mark.parametrize(
    ("bottom_ft", "boxes"),
    [(4.49, 0), (4.5, 2)],
    ids=["4.99 with the locator's error", "5.00 with the locator's error"],
)
def test_the_locators_error_counts_toward_the_five_foot_line(tables: Tables, bottom_ft: float, boxes: float) -> None:
    found = yard(bottom_ft - UNDER_PIPE, tables)
    assert found.value("safety_depth_ft") == pytest.approx(bottom_ft + 0.5)
    assert found.value("boxes") == boxes


def test_a_deep_pipe_has_the_larger_error_of_a_share_of_its_depth(tables: Tables) -> None:
    assert yard(8.0, tables).value("safety_depth_ft") == pytest.approx(8.0 + UNDER_PIPE + 0.8)


def test_a_pothole_takes_the_locators_error_away_and_the_pothole_too(tables: Tables) -> None:
    seen = changed(maple_line(), at("pothole", 40.0, depth_ft=3.4, to="centre"))
    found = take_off(repair("yard spot", 36, 45), house(seen), tables)
    assert found.value("safety_depth_ft") == pytest.approx(3.4 + UNDER_PIPE)
    assert found.value("potholes") == 0


@pytest.mark.parametrize(("bottom_ft", "ladders"), [(3.49, 0), (3.5, 1)])
def test_a_ladder_comes_from_four_feet_on_with_the_locators_error(
    tables: Tables, bottom_ft: float, ladders: float
) -> None:
    assert yard(bottom_ft - UNDER_PIPE, tables).value("ladders") == ladders


def test_safety_reads_the_depth_before_it_is_rounded_up(tables: Tables) -> None:
    """A bottom of 4.46 ft is dug 4.5 ft deep, but with 0.5 ft of error it is 4.96 ft: no box yet."""
    found = yard(4.46 - UNDER_PIPE, tables)
    assert found.value("dig_depth_ft") == 4.5
    assert found.value("boxes") == 0


def test_beyond_twenty_feet_an_engineer_designs_the_protection(tables: Tables) -> None:
    assert yard(20.0 / 1.1 - UNDER_PIPE, tables).value("engineer_letters") == 0
    assert yard(20.0 - UNDER_PIPE, tables).value("engineer_letters") == 1


def test_firm_clay_over_a_leaking_joint_is_type_c_even_when_classified(tables: Tables) -> None:
    slope = dict(inputs(yard(6.0, tables.with_settings({"protection_wanted": "sloped"})), "dig_top_width_ft"))
    assert slope["soil type"] == "C"


def test_firm_clay_over_a_tight_pipe_is_type_b_once_classified(tables: Tables) -> None:
    tight = replace(maple_line(), findings=())
    wanted = tables.with_settings({"protection_wanted": "sloped"})
    assert dict(inputs(yard(6.0, wanted, line=tight), "dig_top_width_ft"))["soil type"] == "B"
    assert dict(inputs(yard(6.0, wanted, line=tight, site=Site()), "dig_top_width_ft"))["soil type"] == "C"


def test_hard_clay_over_a_tight_pipe_is_never_type_a(tables: Tables) -> None:
    tight = replace(maple_line(), findings=())
    found = yard(6.0, tables.with_settings({"protection_wanted": "sloped"}), line=tight, soil="hard clay")
    assert dict(inputs(found, "dig_top_width_ft"))["soil type"] == "B"
    assert "hard_clay" in found.facts


def test_soil_nobody_named_is_type_c_and_said_so(tables: Tables) -> None:
    tight = replace(maple_line(), findings=())
    found = yard(6.0, tables.with_settings({"protection_wanted": "sloped"}), line=tight, soil=None)
    assert "soil_unknown" in found.facts
    assert dict(inputs(found, "dig_top_width_ft"))["soil type"] == "C"
    assert any("the soil type is not given" in str(a) for a in found.assumptions)


@pytest.mark.parametrize(("water_ft", "wet"), [(4.4, True), (4.5, False)])
def test_water_above_the_bottom_takes_a_pump(tables: Tables, water_ft: float, wet: bool) -> None:
    found = yard(3.4, tables, site=replace(KNOWN, water_table_ft=water_ft))
    assert (found.value("dewater_days") > 0) is wet
    assert ("wet" in found.facts) is wet


def inputs(found: Takeoff, name: str) -> list[tuple[str, float | str]]:
    quantity = found.quantity(name)
    assert quantity is not None
    return [(i.name, i.value) for i in quantity.inputs]


@pytest.mark.parametrize(
    ("away_ft", "letters"), [(4.1176, 0), (4.1174, 1)], ids=["just outside the 45 degree line", "just inside"]
)
def test_a_dig_inside_a_footings_line_takes_an_engineers_letter(tables: Tables, away_ft: float, letters: float) -> None:
    """Bottom 4.4175 ft with the error, footing 1.5 ft deep: 2.9175 ft below it; the dig's edge is 1.2 ft from the pipe."""
    beside = changed(maple_line(), at("footing", 40.0, lengths=(("away", away_ft), ("deep", 1.5))))
    found = take_off(repair("yard spot", 36, 45), house(beside), tables)
    assert found.value("engineer_letters") == letters
    assert ("engineer" in found.facts) is bool(letters)


@pytest.mark.parametrize(
    ("potholes", "error"),
    [((40.0,), 0.0), ((36.9,), 0.0), ((35.9,), 0.5), ((), 0.5)],
    ids=["middle", "10 ft from the far end", "a step farther", "none"],
)
def test_a_pothole_speaks_for_ten_feet_each_way(tables: Tables, potholes: tuple[float, ...], error: float) -> None:
    line = changed(maple_line(), *(at("pothole", ft, depth_ft=3.4, to="centre") for ft in potholes))
    wide = repair("yard spot", 37.9, 45.9) if potholes else repair("yard spot", 36, 45)
    found = take_off(wide, house(line), tables)
    assert found.value("safety_depth_ft") == pytest.approx(3.4 + UNDER_PIPE + error)


@pytest.mark.parametrize(
    ("kind", "signs", "soil_type"), [("sag", (), "B"), ("sag", ("void",), "C"), ("leak", (), "C"), ("grease", (), "B")]
)
def test_only_what_lets_water_out_makes_the_soil_type_c(
    tables: Tables, kind: str, signs: tuple[str, ...], soil_type: str
) -> None:
    line = replace(maple_line(), findings=(hole_in(kind, 40.0, signs=signs),))
    found = yard(6.0, tables.with_settings({"protection_wanted": "sloped"}), line=line)
    assert dict(inputs(found, "dig_top_width_ft"))["soil type"] == soil_type


def test_a_leak_elsewhere_on_the_line_leaves_this_soil_alone(tables: Tables) -> None:
    line = replace(maple_line(), findings=(hole_in("leak", 20.0),))
    found = yard(6.0, tables.with_settings({"protection_wanted": "sloped"}), line=line)
    assert dict(inputs(found, "dig_top_width_ft"))["soil type"] == "B"


@pytest.mark.parametrize(("over_ft", "slow"), [(0.0, False), (0.001, True)])
def test_digging_counts_as_deep_only_past_four_feet(tables: Tables, over_ft: float, slow: bool) -> None:
    line = changed(maple_line(), at("pothole", 40.0, depth_ft=3.5 - UNDER_PIPE + 0.5 + over_ft, to="centre"))
    marks = tuple(m for m in line.marks if m.word != "depth")
    found = take_off(repair("yard spot", 38, 42), house(replace(line, marks=marks)), tables)
    assert ("depth_over_4" in found.facts) is slow


def test_a_slope_needs_the_room_of_its_deepest_place() -> None:
    uneven = replace(hole(6.0), depths=(Depth(0, 4.0), Depth(12, 8.0)))
    assert sloped(uneven, "B").top_width_ft == pytest.approx(2.4 + 2 * 8.0)
    assert not Room(18.0, None, ()).fits(sloped(uneven, "B").top_width_ft)


def test_a_named_person_who_has_not_looked_for_caving_has_classified_nothing(tables: Tables) -> None:
    tight = replace(maple_line(), findings=())
    found = yard(
        6.0, tables.with_settings({"protection_wanted": "sloped"}), line=tight, site=Site(competent_person="R. Vale")
    )
    assert dict(inputs(found, "dig_top_width_ft"))["soil type"] == "C"


def test_a_soil_the_tables_do_not_have_counts_as_unknown_and_type_c(tables: Tables) -> None:
    tight = replace(maple_line(), findings=())
    found = yard(6.0, tables.with_settings({"protection_wanted": "sloped"}), line=tight, soil="green cheese")
    assert "soil_unknown" in found.facts
    assert dict(inputs(found, "dig_top_width_ft"))["soil type"] == "C"


@pytest.mark.parametrize(("site_ft", "mark_ft"), [(9.0, 3.0), (3.0, 9.0)])
def test_of_two_words_about_ground_water_the_shallower_counts(tables: Tables, site_ft: float, mark_ft: float) -> None:
    line = changed(maple_line(), at("water table", 40.0, depth_ft=mark_ft))
    found = yard(3.4, tables, line=line, site=replace(KNOWN, water_table_ft=site_ft))
    assert "wet" in found.facts


def test_only_soil_that_holds_together_is_benched() -> None:
    """Subpart P App. B, figures for type B: cohesive soil only [memory]."""
    assert "benched" in names(6.0, "B")
    assert "benched" not in names(6.0, "B", cohesive=False)


def test_loam_is_sloped_where_the_firm_would_bench_clay(tables: Tables) -> None:
    """Type B both, the same outline; the benches' five percent are left out of the loam."""
    wanted, tight = tables.with_settings({"protection_wanted": "benched"}), replace(maple_line(), findings=())
    clay, loam = (yard(6.0, wanted, line=tight, soil=soil) for soil in ("firm clay", "loam"))
    sloped = yard(6.0, tables.with_settings({"protection_wanted": "sloped"}), line=tight)
    assert clay.value("dig_cf") == pytest.approx(sloped.value("dig_cf") * 1.05)
    assert loam.value("dig_cf") < clay.value("dig_cf")


def test_over_a_pipe_lies_backfill_and_never_stable_rock(tables: Tables) -> None:
    tight = replace(maple_line(), findings=())
    for caving, kind in ((False, "B"), (True, "C")):
        found = yard(6.0, tables, line=tight, soil="rock", site=replace(KNOWN, caving_signs=caving))
        assert dict(inputs(found, "dig_top_width_ft"))["soil type"] == kind


def test_over_rock_the_bed_is_six_inches(tables: Tables) -> None:
    """ASTM D2321: 4 in, over rock 6 in [read second-hand]. 3.4 + 0.1875 + 0.5 = 4.0875, up 4.1 ft."""
    found = yard(3.4, tables, soil="rock")
    assert found.value("dig_depth_ft") == 4.1
    assert dict(inputs(found, "pipe_zone_cf"))["bedding"] == 0.5


def test_fill_is_packed_by_hand_to_a_foot_over_the_pipe(tables: Tables) -> None:
    """IPC 306: tamped layers of 6 in to 12 in over the crown [read]."""
    assert any("packed by hand" in str(c) for c in yard(3.4, tables).cautions)

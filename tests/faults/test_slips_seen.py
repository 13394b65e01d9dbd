"""Seven slips that were put in by hand and that no test saw: each turns a test of this file red."""

from dataclasses import replace
from decimal import Decimal
from itertools import permutations

import pytest

from estimator.model.answers import interpolated
from estimator.model.judgement import Need
from estimator.model.line import Mark
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.model.work import JOB, Quantity, Repair, Scope, Takeoff
from estimator.pricing.minimum import minimum_adjustments
from estimator.quote.option import life
from estimator.quote.pipe_remaining import water_test
from estimator.scopes.extent import sound_pipe
from estimator.takeoff import take_off
from tests.fieldnotes.fieldnote_texts import line_of
from tests.made_up.stretch import demo_tables
from tests.takeoff.houses import house, maple_line, pecan_house, pecan_line, repair


def _takeoff(method: str, tests: float = 0.0) -> Takeoff:
    quantities = (Quantity(name="tests", value=tests, unit="each"),)
    return Takeoff(repair=replace(repair(method, 0, 10), id=method), quantities=quantities, facts=frozenset())


def test_each_method_is_credited_with_its_share_of_the_job_alone() -> None:
    """Least charges 2,500 and 6,500; the job's 1,000 are shared 1 to 3: 2,250 and 6,750 are reached [computed]."""
    tables = demo_tables()
    rows = [
        replace(tables.method("yard spot"), min_charge=Decimal(2500)),
        replace(tables.method("tunnel"), min_charge=Decimal(6500)),
    ]
    tables = replace(tables, rows={**tables.rows, "methods": tuple(rows)})
    prices = {("yard spot", "dig"): Decimal(2000), ("tunnel", "dig"): Decimal(6000), (JOB, "mobilize"): Decimal(1000)}
    added, _ = minimum_adjustments(prices, [_takeoff("yard spot"), _takeoff("tunnel"), _takeoff(JOB)], tables)
    assert added == {("yard spot", "dig"): Decimal(250)}


def test_the_second_pit_is_shored_as_the_first_is() -> None:
    line = pecan_line()
    deep = replace(line, marks=tuple(replace(m, depth_ft=4.6) if m.word == "invert" else m for m in line.marks))
    tables = demo_tables()
    once = tables.with_settings({"second_pit_over_ft": "60"})
    one, two = (take_off(repair("tunnel", -2, 42), pecan_house(deep), t) for t in (once, tables))
    assert (one.value("pits"), two.value("pits")) == (1, 2)
    assert two.value("shores_sf") == 2 * one.value("shores_sf") > 0


@pytest.mark.parametrize("order", list(permutations(range(2))))
@pytest.mark.parametrize("point_ft", [2.0, 5.0])
def test_a_depth_at_one_place_counts_there_before_one_over_a_range(point_ft: float, order: tuple[int, ...]) -> None:
    marks = (
        Mark(word="depth", stretch=Stretch(10, 20), depth_ft=3.0),
        Mark(word="depth", stretch=Stretch(15, 15), depth_ft=point_ft),
    )
    found = interpolated(tuple(marks[i] for i in order), lambda m: m.depth_ft or 0.0, 15.0)
    assert (found.value, found.how) == (point_ft, "read")


def test_the_worst_percent_of_a_stretch_counts_and_not_the_last() -> None:
    log = "pass front cleanout, with flow, riser 2 ft\n0 yard lawn\n22 sag starts 60%\n24 sag still 30%\n26 sag ends 20%\n40 end city main\n"
    (sag,) = line_of(log).findings
    assert sag.percent == (60, 60)


def test_the_part_that_wears_out_first_says_how_long_it_lasts() -> None:
    dig, lining = (demo_tables().method(name) for name in ("yard spot", "reline"))
    short = replace(lining, life_low=10, life_high=30)
    long = replace(dig, life_low=50, life_high=100)
    assert life((long, short)) == life((short, long)) == (10, 30)


def _left(grade: str = "seen") -> Need:
    return Need(
        id="n", line="main", stretch=Stretch(30, 31), kinds=("crack",), findings=(), severity=3, urgency=3,
        grade=grade, must=True,  # type: ignore[arg-type]
    )  # fmt: skip


@pytest.mark.parametrize(("leaves", "promise"), [((), "yes"), ((_left(),), "only this part")])
def test_a_test_of_all_is_promised_only_where_nothing_is_left(leaves: tuple[Need, ...], promise: str) -> None:
    tested: tuple[Repair, ...] = (repair("trench", 0, 10),)
    scope = Scope(repairs=tested, needs=(), leaves=leaves)
    assert water_test(scope, (_takeoff("trench", tests=1.0),), 0.0)[0] == promise


@pytest.mark.parametrize("grade", ["inferred", "suspected"])
def test_what_nobody_saw_is_dug_for_with_room_on_both_sides(grade: str) -> None:
    """The locator's tolerance and pad_suspected_ft more at each end than where it was seen."""
    tables, profile = demo_tables(), Profile(house(maple_line()).lines[0])
    seen, not_seen = (
        sound_pipe(Stretch(30, 31), (_left(g),), profile, tables, profile.extent).stretch for g in ("seen", grade)
    )
    depth = profile.depth_to_centre_ft(30.5).value or 0.0
    off = max(
        tables.number("locator_tolerance_percent") / 100 * depth, tables.number("locator_tolerance_min_ft")
    ) + tables.number("pad_suspected_ft")
    assert seen.from_ft - not_seen.from_ft == pytest.approx(off)
    assert not_seen.to_ft - seen.to_ft == pytest.approx(off)

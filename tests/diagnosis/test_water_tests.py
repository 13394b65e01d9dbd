"""Water tests as evidence. Rates are plain arithmetic [computed]; the practice of slab tests is common practice."""

from datetime import date

import pytest

from estimator.diagnosis import diagnose
from estimator.diagnosis.leak_rate import gallons_a_day, leak_rate, open_area_sqin
from estimator.diagnosis.tests_read import pairs, read_test
from estimator.model.job import WaterTest
from estimator.model.judgement import Diagnosis
from estimator.model.stretch import Stretch
from tests.diagnosis.making import job, line, mark
from tests.made_up.stretch import demo_tables


def a_test(**more: object) -> WaterTest:
    made: dict[str, object] = {
        "section": "whole house",
        "open_risers_in": (4.0,),
        "readings": ((0, 0.0), (10, 1.0), (30, 3.0)),
    }
    return WaterTest(**{**made, **more})  # type: ignore[arg-type]


def found(test: WaterTest, *findings: str, **house: object) -> Diagnosis:
    return diagnose(job(line(*findings, zone="slab", pipe="PVC"), water_tests=(test,), house=house), demo_tables())


def rules(diagnosis: Diagnosis) -> set[str]:
    return {e.rule for e in diagnosis.evidence}


def test_all_open_risers_fall_together() -> None:
    # two 4 in closet bends and a 4 in cleanout, a 2 in shower, a 1 1/2 in tub: 42.6 sq in; 1 1/2 in in 20 min is 20 gal/day
    area = open_area_sqin((4, 4, 4, 2, 1.5))
    assert round(area, 1) == 42.6
    assert round(gallons_a_day(1.5, 20, area)) == 20


def test_the_rate_counts_from_when_the_air_is_out() -> None:
    # 2 in over the last 20 min in one 4 in riser: 2 x 12.566 / 231 x 72 = 7.83 gal/day
    assert leak_rate(a_test(), 10) == pytest.approx(7.83, abs=0.01)


def test_without_risers_or_with_one_reading_there_is_no_rate() -> None:
    assert leak_rate(a_test(open_risers_in=()), 10) is None
    assert leak_rate(a_test(readings=((0, 0.0),)), 10) is None


def test_a_rate_needs_time_to_pass() -> None:
    assert leak_rate(a_test(readings=((10, 0.0), (10, 1.0))), 10) is None
    with pytest.raises(ValueError, match="some minutes"):
        gallons_a_day(1.0, 0, 12.57)


@pytest.mark.parametrize("minutes, doubts", [(20, 0), (19, 1)])
def test_a_short_test_is_doubtful(minutes: int, doubts: int) -> None:
    test = a_test(readings=((0, 0.0), (minutes, 3.0)))
    assert len(read_test(test, job(line()), demo_tables()).doubts) == doubts


@pytest.mark.parametrize(
    "more, outcome",
    [
        ({}, "failed"),
        ({"readings": ((0, 0.0), (10, 1.0), (20, 1.0))}, "passed"),  # fell only while air worked out
        ({"readings": ((0, 0.0), (10, 1.0), (19, 1.0))}, "inconclusive"),  # not long enough
        ({"readings": ((0, 0.0), (10, 1.0), (20, 1.1))}, "failed"),
        ({"sealed": False}, "inconclusive"),
        ({"sealed": False, "result": "passed"}, "inconclusive"),
        ({"result": "could not be sealed"}, "inconclusive"),
        ({"readings": (), "result": "failed"}, "failed"),
        ({"readings": (), "result": "passed"}, "passed"),
        ({"rose_at": "hall tub"}, "inconclusive"),  # the level evened out: no fail
    ],
)
def test_what_a_test_proves(more: dict[str, object], outcome: str) -> None:
    assert read_test(a_test(**more), job(line()), demo_tables()).outcome == outcome


def test_a_failed_test_with_a_clean_camera_needs_an_isolation_and_no_repair() -> None:
    diagnosis = found(a_test())
    assert "test-fails-camera-clean" in rules(diagnosis)
    assert [(n.kinds, n.grade, n.must) for n in diagnosis.needs] == [(("leak", "failed test"), "suspected", True)]


def test_with_an_opening_seen_the_opening_is_the_need() -> None:
    diagnosis = found(a_test(), "20 gap washing")
    assert "test-fails-camera-clean" not in rules(diagnosis)
    assert [n.kinds for n in diagnosis.needs] == [("gap",)]


def test_an_opening_only_suspected_does_not_explain_a_failed_test() -> None:
    assert "test-fails-camera-clean" in rules(found(a_test(), "20 hole 3in suspected"))


def test_a_section_that_would_not_seal_is_no_pass_and_asks_for_another_test() -> None:
    diagnosis = found(a_test(sealed=False))
    assert "section-would-not-seal" in rules(diagnosis)
    assert diagnosis.needs == ()
    assert any("cut in a test tee" in str(q.about) for q in diagnosis.questions)


def test_a_level_that_holds_points_at_a_height_and_says_nothing_of_what_lies_above() -> None:
    held = next(e for e in found(a_test(held_at_in=9.0)).evidence if e.rule == "level-drops-and-holds")
    assert "0.75 ft below slab top" in str(held.meaning)
    assert "above it nothing is known" in str(held.meaning)


@pytest.mark.parametrize("drop_in, empties", [(23.9, False), (24.0, True)])
def test_a_system_that_empties_may_be_a_plug_that_leaked(drop_in: float, empties: bool) -> None:
    diagnosis = found(a_test(readings=((0, 0.0), (10, 5.0), (20, drop_in))))
    assert ("whole-system-empties" in rules(diagnosis)) is empties


def test_water_that_rose_elsewhere_is_no_leak() -> None:
    assert "water-rises-elsewhere" in rules(found(a_test(rose_at="hall tub")))


def test_several_sections_that_fail_are_a_system_that_failed() -> None:
    def isolated(section: str) -> WaterTest:
        return a_test(section=section, kind="isolated", covers=("main",))

    one = job(line(zone="slab"), water_tests=(isolated("main"),))
    two = job(line(zone="slab"), water_tests=(isolated("main"), isolated("hall bath")))
    assert "several-sections-fail" not in rules(diagnose(one, demo_tables()))
    assert "several-sections-fail" in rules(diagnose(two, demo_tables()))


def test_a_pass_never_cancels_what_was_seen() -> None:
    diagnosis = found(a_test(readings=((0, 0.0), (30, 0.0))), "20 gap washing")
    assert "pass-cancels-nothing-seen" in rules(diagnosis)
    assert [n.must for n in diagnosis.needs] == [True]


def test_with_two_exits_one_plug_is_not_the_whole_house() -> None:
    test = a_test()
    assert "two-building-exits" in rules(found(test, exits=2))
    assert "two-building-exits" not in rules(found(test, exits=1))
    doubts = read_test(test, job(line(), house={"exits": 2}), demo_tables()).doubts
    assert [str(d) for d in doubts] == ["2 drains leave the house, and one test plug closes only one of them"]


def test_a_cleanout_in_a_dip_makes_a_test_doubtful() -> None:
    wet = job(line("18-22 sag 40%", marks=(mark("cleanout", 20.0),)))
    dry = job(line("18-22 sag 40%", marks=(mark("cleanout", 30.0),)))
    assert "cleanout-under-water" in rules(diagnose(wet, demo_tables()))
    assert "cleanout-under-water" not in rules(diagnose(dry, demo_tables()))


def test_two_tests_of_a_section_are_put_side_by_side_in_the_order_they_were_made() -> None:
    after = a_test(when="after lift", date=date(2026, 12, 10))
    before = a_test(when="before lift", date=date(2026, 11, 1), readings=((0, 0.0), (30, 0.0)))
    (pair,) = pairs(job(line(), water_tests=(after, before)), demo_tables())
    assert str(pair.says) == "whole house passed before and fails now. It opened in between."


def test_two_tests_that_failed_are_compared_by_their_rates() -> None:
    before, after = a_test(when="before lift"), a_test(when="after lift", readings=((0, 0.0), (10, 1.0), (30, 5.0)))
    (pair,) = pairs(job(line(), water_tests=(before, after)), demo_tables())
    assert pair.change_gallons_a_day == pytest.approx(7.83, abs=0.01)
    assert str(pair.says) == "whole house failed both times: 8 gallons per day before, 16 after."


def test_a_test_that_proves_nothing_cannot_be_compared() -> None:
    before, after = a_test(when="before lift", sealed=False), a_test(when="after lift")
    (pair,) = pairs(job(line(), water_tests=(before, after)), demo_tables())
    assert "cannot be compared" in str(pair.says)


def test_what_was_not_in_the_test_is_said_even_when_it_passed() -> None:
    passed = a_test(readings=((0, 0.0), (30, 0.0)), not_in_test=("the laundry",))
    said = next(e for e in found(passed).evidence if e.rule == "test-leaves-open")
    assert str(said.meaning) == "The test of whole house leaves open: not in the test: the laundry."
    assert "test-leaves-open" not in rules(found(a_test(readings=((0, 0.0), (30, 0.0)))))


@pytest.mark.parametrize("pipe, sealed, doubts", [("cast iron", None, 1), ("cast iron", True, 0), ("PVC", None, 0)])
def test_in_rough_iron_somebody_must_have_seen_the_plug_seal(pipe: str, sealed: bool | None, doubts: int) -> None:
    assert len(read_test(a_test(sealed=sealed), job(line(pipe=pipe)), demo_tables()).doubts) == doubts


@pytest.mark.parametrize("sign, doubts", [("two-way", 1), ("capped", 0)])
def test_a_plug_may_not_pass_a_two_way_cleanout(sign: str, doubts: int) -> None:
    house = job(line(marks=(mark("cleanout", 0.0, signs=(sign,)),)))
    assert len(read_test(a_test(plug="front cleanout"), house, demo_tables()).doubts) == doubts


def test_an_opening_out_in_the_yard_explains_no_leak_under_the_floor() -> None:
    marks = (mark("slab", 30.0, holds=True),)
    outside = job(line("10 roots 40%", marks=marks), water_tests=(a_test(),))
    inside = job(line("40 roots 40%", marks=marks), water_tests=(a_test(),))
    assert "test-fails-camera-clean" in rules(diagnose(outside, demo_tables()))
    assert "test-fails-camera-clean" not in rules(diagnose(inside, demo_tables()))


def test_the_leak_is_looked_for_under_the_floor_and_once() -> None:
    yard = line(zone="yard", name="yard")
    house = job(yard, line(zone="slab", name="main"), line(zone="slab", name="kitchen"), water_tests=(a_test(),))
    hidden = [n for n in diagnose(house, demo_tables()).needs if "failed test" in n.kinds]
    assert [n.line for n in hidden] == ["main"]


def test_the_rate_is_that_of_the_fall_and_not_of_the_hold_after_it() -> None:
    # 3 in between minute 15 and 30 in one 4 in riser: 3 x 12.566 / 231 x 96 = 15.67 gal/day, whether or not it held afterwards
    fell = a_test(readings=((0, 0.0), (15, 5.0), (30, 8.0)))
    held = a_test(readings=((0, 0.0), (15, 5.0), (30, 8.0), (45, 8.0), (60, 8.0)))
    assert leak_rate(held, 10) == leak_rate(fell, 10) == pytest.approx(15.67, abs=0.01)
    assert leak_rate(a_test(readings=((0, 0.0), (10, 1.0), (20, 1.0), (30, 1.0))), 10) == 0


def test_a_part_that_failed_bears_the_leak_alone_and_a_hole_elsewhere_explains_nothing() -> None:
    whole = a_test(section="main", kind="isolated", covers=("main",), result="failed")
    part = a_test(section="main 2", kind="isolated", covers=("main",), result="failed", part=Stretch(20, 35))
    here = job(line("25 hole 3in", zone="slab"), water_tests=(whole, part))
    apart = job(line("50 hole 3in", zone="slab"), water_tests=(whole, part))
    hidden = [n for n in diagnose(apart, demo_tables()).needs if "failed test" in n.kinds]
    assert [n.stretch for n in hidden] == [Stretch(20, 35)]
    assert not [n for n in diagnose(here, demo_tables()).needs if "failed test" in n.kinds]


def test_a_part_that_held_proves_nothing_of_the_rest() -> None:
    whole = a_test(section="under slab", covers=("main",), result="failed")
    part = a_test(section="main 2", kind="isolated", covers=("main",), result="passed", part=Stretch(20, 35))
    house = job(line("50 crack", zone="slab"), water_tests=(whole, part))
    assert "test-fails-camera-clean" not in rules(diagnose(house, demo_tables()))
    clean = diagnose(job(line(zone="slab"), water_tests=(whole, part)), demo_tables())
    assert [n.stretch for n in clean.needs if "failed test" in n.kinds] == [Stretch(0, 60)]

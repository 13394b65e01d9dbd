"""What must be put right: merged where things touch, split where they do not, named for good. Common practice."""

import pytest

from estimator.diagnosis import diagnose
from estimator.model.job import WaterTest
from estimator.model.judgement import Need
from estimator.model.stretch import Stretch
from tests.diagnosis.making import job, line, mark
from tests.made_up.stretch import demo_tables


def needs(*findings: str, **more: object) -> tuple[Need, ...]:
    to_job = {k: more.pop(k) for k in ("house", "water_tests", "signs", "foundation") if k in more}
    return diagnose(job(line(*findings, **more), **to_job), demo_tables()).needs  # type: ignore[arg-type]


def test_things_at_one_joint_are_one_need_and_roots_bring_an_opening() -> None:
    (one,) = needs("39 roots 30%", "39 offset 20%")
    assert (one.id, one.kinds, one.severity, one.must) == ("main@39", ("roots", "offset", "opening"), 3, True)


def test_things_that_do_not_touch_are_needs_of_their_own() -> None:
    assert [n.id for n in needs("39 roots 30%", "41.5-43 crack open")] == ["main@39", "main@41.5"]


def test_a_hole_in_a_groove_belongs_to_the_groove() -> None:
    (one,) = needs("8-44 channel sharp", "20-29 channel gone", "22 hole 3in", pipe="cast iron")
    assert (one.stretch, one.severity) == (Stretch(8, 44), 3)


def test_dirt_and_dips_are_needs_of_their_own() -> None:
    assert [n.kinds for n in needs("0-30 scale 20%", "10-14 sag 40%", "12 crack open", pipe="cast iron")] == [
        ("scale",),
        ("sag",),
        ("crack",),
    ]


def test_a_dip_with_roots_and_an_offset_close_by_is_one_settled_place() -> None:
    (one,) = needs("20-24 sag 30%", "14 roots 20%", "34 offset 20%")  # 6 and 10 ft away
    assert one.stretch == Stretch(14, 34)
    apart = needs("20-24 sag 30%", "14 roots 20%", "34.1 offset 20%")
    assert len(apart) == 3


def test_mud_and_insects_are_no_repair_by_themselves() -> None:
    assert needs("20 mud", "30 insects") == ()


def test_two_needs_at_one_station_have_two_names() -> None:
    ids = [n.id for n in needs("20-24 sag 40%", "20 crack open")]
    assert sorted(ids) == ["main@20", "main@20 sag"]


def test_the_order_of_findings_changes_nothing() -> None:
    some = ("39 roots 30%", "20-24 sag 40%", "41.5-43 crack open")
    assert needs(*some) == needs(*reversed(some))


@pytest.mark.parametrize("percent, must", [(25, False), (26, True)])
def test_a_repair_is_a_must_from_level_three(percent: int, must: bool) -> None:
    assert [n.must for n in needs(f"20 roots {percent}%")] == [must]


@pytest.mark.parametrize("percent, must", [(24, False), (25, True)])
def test_scale_that_hides_the_pipe_must_come_off(percent: int, must: bool) -> None:
    assert [n.must for n in needs(f"0-22 scale {percent}%", pipe="cast iron")] == [must]


def test_what_closes_the_pipe_unseen_is_only_suspected() -> None:
    assert [n.grade for n in needs("30 blocked hard")] == ["suspected"]
    assert [n.grade for n in needs("30 blocked soft")] == ["seen"]
    assert [n.grade for n in needs("30 collapse no flow")] == ["suspected"]
    assert [n.grade for n in needs("30 collapse still flows")] == ["seen"]


def test_a_need_is_as_sure_as_its_worst_finding() -> None:
    assert [n.grade for n in needs("30 hole 3in suspected", "30 crack hairline")] == ["suspected"]


@pytest.mark.parametrize(
    "findings, pipe, whole",
    [
        (("10 crack", "20 crack", "30 crack"), "clay", "option"),  # three places
        (("10 crack", "20 crack"), "PVC", "no"),
        (("10-33 crack",), "PVC", "option"),  # 23 ft and a foot at each end: 41 % of 60 [computed]
        (("10-32 crack",), "PVC", "option"),  # 40 % exactly
        (("10-31.9 crack",), "PVC", "no"),  # 39.8 %
        (("10-40 channel gone",), "cast iron", "only"),  # half of 60 ft
        (("10-39.9 channel gone",), "cast iron", "option"),
        (("20 blister",), "fiber", "only"),
        (("20 crack hairline",), "fiber", "only"),
        (("0-60 reverse fall",), "PVC", "only"),
        (("20-30 scale 40%",), "cast iron", "no"),
    ],
)
def test_when_the_whole_run_is_an_option_and_when_the_only_answer(
    findings: tuple[str, ...], pipe: str, whole: str
) -> None:
    assert {n.whole_line for n in needs(*findings, pipe=pipe)} == {whole}


@pytest.mark.parametrize("with_roots, whole", [(9, "option"), (10, "only")])
def test_clay_with_roots_at_half_of_its_joints_is_at_its_end(with_roots: int, whole: str) -> None:
    roots = [f"{3 * n} roots 30%" for n in range(1, with_roots + 1)]  # 60 ft in 3 ft pipes: 20 joints [computed]
    assert {n.whole_line for n in needs(*roots)} == {whole}


def test_joints_that_were_counted_count_instead_of_the_lay_length() -> None:
    marks = tuple(mark("joint", at) for at in (10.0, 20.0, 30.0, 40.0))
    assert {n.whole_line for n in needs("10 roots 30%", "20 roots 30%", marks=marks)} == {"only"}


def test_roots_at_one_joint_say_nothing_of_the_others() -> None:
    marks = (mark("joint", 10.0), mark("joint", 20.0))
    assert {n.whole_line for n in needs("10 roots 30%", marks=marks)} == {"no"}


def test_where_nothing_was_filmed_no_joint_was_in_view() -> None:
    assert {n.whole_line for n in needs("10 roots 30%", "50 roots 30%", passes=())} == {"no"}


def test_a_run_is_one_pipe_not_the_whole_line() -> None:
    """Cracked iron before rooted clay: the roots say nothing of the iron."""
    both = needs("5 crack", "30 roots 30%", "40 roots 30%", "50 roots 30%", pipe="cast iron", marks=(mark("pipe", 24.0, choice="clay", holds=True),))  # fmt: skip
    assert [n.whole_line for n in both] == ["no", "option", "option", "option"]


def test_several_failed_sections_make_the_whole_run_under_the_slab_an_option() -> None:
    def failed(section: str) -> WaterTest:
        return WaterTest(section=section, kind="isolated", covers=("main",), result="failed", sealed=True)

    one, two = (failed("main"),), (failed("main"), failed("hall bath"))
    assert [n.whole_line for n in needs("20 gap washing", zone="slab", pipe="PVC", water_tests=one)] == ["no"]
    assert [n.whole_line for n in needs("20 gap washing", zone="slab", pipe="PVC", water_tests=two)] == ["option"]
    assert [n.whole_line for n in needs("20 gap washing", zone="yard", pipe="PVC", water_tests=two)] == ["no"]


def test_water_that_never_ends_is_no_dip_to_repair() -> None:
    """Something further down holds it back: it is cleared and filmed again, and no dip is priced (common practice)."""
    assert needs("30-50 sag 60%, never ends") == ()


FAILED = (WaterTest(section="whole house", kind="whole", result="failed", sealed=True),)


def test_an_opening_that_explains_a_failed_test_must_be_put_right() -> None:
    (one,) = needs("20 crack open", zone="slab", water_tests=FAILED)
    assert (one.severity, one.must) == (3, True)
    (tight,) = needs("20 crack open", zone="slab")
    assert (tight.severity, tight.must) == (2, False)


def test_beside_something_worse_a_small_opening_may_stay() -> None:
    crack, hole = needs("20 crack open", "40 hole 3in", zone="slab", water_tests=FAILED)
    assert (crack.must, hole.must) == (False, True)


def test_a_hairline_explains_no_failed_test_so_the_leak_is_looked_for() -> None:
    assert "failed test" in {
        kind for n in needs("20 crack hairline", zone="slab", water_tests=FAILED) for kind in n.kinds
    }


def test_an_opening_out_in_the_yard_explains_no_test_of_the_drains_under_the_floor() -> None:
    house_side = (mark("slab", 30.0, 60.0, holds=True),)
    found = needs("20 crack open", marks=house_side, water_tests=FAILED)
    assert {n.must for n in found if "crack" in n.kinds} == {False}

"""What the return visit should settle, and what stops a fixed price meanwhile; the order of work round a lift."""

import pytest

from estimator.diagnosis import diagnose
from estimator.diagnosis.lift_sequence import lift_sequence
from estimator.model.job import EdgeBeam, Foundation, Job, Site, WaterTest
from tests.diagnosis.making import job, line, mark
from tests.made_up.stretch import demo_tables


def asked(one: Job) -> list[str]:
    return [str(q.about) for q in diagnose(one, demo_tables()).questions]


def about(one: Job, words: str) -> bool:
    return any(words in text for text in asked(one))


def test_a_deep_dip_without_levels_asks_for_levels() -> None:
    assert about(job(line("20-24 sag 40%")), "Take the level")
    shallow = job(line("20-22 sag 10%"))
    assert not about(shallow, "Take the level")


def test_with_levels_at_both_ends_nothing_is_asked() -> None:
    levels = tuple(mark("level", at, depth_ft=2.0 + at / 100, surface="slab") for at in (10.0, 40.0))
    assert not about(job(line("20-24 sag 40%", marks=levels)), "Take the level")


def test_a_locators_depth_is_no_level() -> None:
    depths = tuple(mark("loc", at, depth_ft=2.5, surface="lawn", to="centre") for at in (10.0, 40.0))
    assert about(job(line("20-24 sag 40%", marks=depths)), "Take the level")


def test_a_branch_not_proven_is_asked_about() -> None:
    assert about(job(line(marks=(mark("branch", 20.0, size_in=3.0, live="live", proven=False),))), "side drain")
    assert not about(job(line(marks=(mark("branch", 20.0, size_in=3.0, live="live", proven=True),))), "side drain")


def test_what_was_not_filmed_is_asked_about() -> None:
    assert about(job(line(length_ft=80.0)), "not filmed")
    assert not about(job(line(length_ft=60.0)), "not filmed")


def test_a_slab_asks_what_runs_in_it_and_an_unknown_one_for_tendons() -> None:
    known = {"water_lines": "overhead", "in_slab": "nothing"}
    assert about(job(line()), "Where do water, gas, power")
    assert not about(job(line(), house=known), "Where do water, gas, power")
    assert about(job(line(), house={"floor": "slab, tendons unknown"}), "tendons")
    assert about(job(line(), house={"built": 1965}), "tendons")  # a plain slab of those years is no proof
    assert not about(job(line(), house={"built": 1964}), "tendons")
    assert not about(job(line(), house={"built": 1990, "tendons": "none, engineer's drawing"}), "tendons")
    assert not about(job(line(), house={"floor": "crawl space"}), "tendons")


def test_silence_about_the_edge_beam_is_asked_about_and_a_word_ends_the_question() -> None:
    words = "beam along the slab's edge"
    assert about(job(line(zone="slab")), words)
    assert not about(job(line(zone="yard")), words)
    assert not about(job(line(zone="slab"), house={"edge_beam": EdgeBeam(0.0, 0.0)}), words)


def test_water_that_never_ends_stops_a_fixed_price() -> None:
    questions = diagnose(job(line("20-60 sag 30% never ends")), demo_tables()).questions
    assert any(q.not_fixed for q in questions)


def test_a_question_is_asked_once() -> None:
    texts = asked(job(line("20 mud", "20 mud")))
    assert len(texts) == len(set(texts))


def test_round_a_lift_only_what_feeds_the_soil_comes_first() -> None:
    house = job(line("20 gap washing", "40-44 sag 40%", zone="slab"), foundation=Foundation(work="planned"))
    needs = diagnose(house, demo_tables()).needs
    steps = lift_sequence(house, needs)
    assert [s.needs for s in steps if s.needs] == [("main@20",), ("main@40",)]
    words = [str(s.text) for s in steps]
    assert words[0].startswith("We water-test the drains")
    assert words.index("The foundation company lifts the house.") < words.index(str(steps[4].text))


def test_after_a_lift_a_test_comes_first_and_without_one_there_is_no_sequence() -> None:
    done = job(line("20 gap"), foundation=Foundation(work="done"))
    assert "again" in str(lift_sequence(done, ())[0].text)
    assert lift_sequence(job(line("20 gap")), ()) == ()


def test_a_line_with_another_s_pipe_in_it_is_asked_only_whose_it_is() -> None:
    bore = job(
        line("20-24 sag 40%", "30 utility", marks=(mark("branch", 20.0, size_in=3.0, live="live", proven=False),))
    )
    lines = [str(q.about) for q in diagnose(bore, demo_tables()).questions if q.line]
    assert len(lines) == 1 and lines[0].startswith("Whose line is it?")


def test_trouble_in_the_yard_alone_asks_nothing_about_the_slab() -> None:
    assert about(job(line("20 hole 2in", zone="slab")), "Where do water, gas, power")
    assert not about(job(line("20 hole 2in", zone="yard")), "Where do water, gas, power")


def test_where_no_depth_was_read_it_is_asked_for_once_a_line() -> None:
    deep = (mark("depth", 20.0, depth_ft=2.0, surface="lawn"),)
    words = "how deep it lies"
    assert sum(words in text for text in asked(job(line("20 hole 2in", "40 hole 2in", zone="yard")))) == 1
    assert not about(job(line("20 hole 2in", zone="yard", marks=deep)), words)
    assert not about(job(line("20 hole 2in", zone="crawl")), words)


def test_a_name_for_the_dig_is_asked_for_from_four_feet_on() -> None:
    """Centre of a 4 in pipe, half a pipe, 0.33 ft of bedding and half a foot of locator's error: 3.01 ft down comes to 4.01 ft [computed]."""
    words = "Who is the competent person"

    def at(depth_ft: float, **site: str) -> Job:
        depths = (mark("depth", 20.0, depth_ft=depth_ft, surface="lawn", to="centre"),)
        return job(line("20 hole 2in", zone="yard", marks=depths), site=Site(**site))

    assert about(at(3.01), words) and not about(at(2.99), words)
    assert not about(at(3.01, competent_person="Teo Marlow"), words)
    assert about(job(line("20 hole 2in", zone="slab")), words)


def test_what_closes_the_pipe_was_seen_and_is_not_asked_about_as_if_it_were_a_guess() -> None:
    assert not about(job(line("20 collapse no flow")), "only suspected")
    assert about(job(line("20 crack suspected")), "only suspected")


@pytest.mark.parametrize(
    "test, asked_for",
    [
        ({"when": "after lift", "result": "failed", "sealed": True}, False),
        ({"when": "before lift", "result": "failed", "sealed": True}, True),
        ({"when": "after lift", "sealed": False}, True),
    ],
)
def test_a_whole_test_after_the_lift_is_not_asked_for_again(test: dict, asked_for: bool) -> None:
    pulled = line("20 gap 2in soil seen", zone="slab", pipe="PVC")
    one = job(
        pulled,
        foundation=Foundation(work="done"),
        water_tests=(WaterTest(section="whole house", kind="whole", **test),),
    )
    assert about(one, "Water-test the whole system") == asked_for

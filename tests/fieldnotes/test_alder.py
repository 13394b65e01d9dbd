"""Alder: a raw log of four camera runs with three reel zeros. The shifts come out of the numbers; nobody typed them.

Values beside the asserts are worked by hand from the readings [computed]: the reel at the slab edge is 5.3, the riser of the
cleanout 28 in, of the toilet 22 in.
"""

import pytest
from fieldnote_texts import JOBS

from estimator.fieldnotes import read_job
from estimator.fieldnotes.agreement import agreement
from estimator.fieldnotes.echo import echo
from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.profile import Profile


@pytest.fixture(scope="module")
def job() -> Job:
    reading = read_job(JOBS / "alder" / "job.toml")
    assert reading.job is not None, "\n".join(map(str, reading.problems))
    return reading.job


@pytest.fixture(scope="module")
def line(job: Job) -> Line:
    return job.line("main")


def test_the_line_takes_its_zero_from_the_slab_edge_and_grows_inwards(line: Line) -> None:
    assert line.zero == "slab edge"
    assert line.downstream == -1
    assert line.passes[0].start_ft == pytest.approx(28 / 12 - 5.3, abs=1e-5)


def test_the_reel_of_pass_two_slipped_by_six_tenths(line: Line) -> None:
    second = line.passes[1]
    assert second.shift_ft == pytest.approx(-0.6)
    assert [round(more, 3) for _, more in second.ties] == [0.6, 0.6, 0.6]


def test_pass_three_counts_back_from_where_pass_two_ended(line: Line) -> None:
    third = line.passes[2]
    assert third.placed_by == "name"
    assert third.start_ft == pytest.approx(46.9 - 5.3)  # 47.5 on the slipped reel is 46.9 on the first
    assert third.station(15.9) + 5.3 == pytest.approx(32.8, abs=0.05)  # the hub
    assert third.station(29.6) + 5.3 == pytest.approx(19.1, abs=0.05)  # the hole


def test_the_hole_lies_14_and_a_half_feet_in_by_the_reel_and_13_8_by_pass_three(line: Line) -> None:
    hole = next(f for f in line.findings if f.kind == "hole" and f.history)
    assert hole.stretch.from_ft == pytest.approx(14.5)
    assert line.passes[2].station(29.6) == pytest.approx(13.8, abs=0.05)


def test_the_hole_grew_and_its_first_sight_is_kept(line: Line) -> None:
    hole = next(f for f in line.findings if f.kind == "hole" and f.history)
    assert (hole.size_in, hole.after_cleaning, hole.photo) == (3.0, True, None)
    assert [(h.size_in, h.after_cleaning, h.photo) for h in hole.history] == [(2.0, False, 3)]
    assert hole.signs == ("soil seen",)
    assert hole.clock == (5, 7)


def test_the_three_passes_in_the_house_agree_within_seven_tenths(line: Line) -> None:
    found = agreement(line)
    assert found is not None
    assert found[0] == (1, 2, 3)
    assert found[1] == pytest.approx(0.667, abs=0.001)


def test_seen_to_41_6_inside_the_slab_edge_and_71_7_from_cleanout_to_main(line: Line) -> None:
    profile = Profile(line)
    assert profile.filmed[0].to_ft == pytest.approx(41.6)
    last = line.passes[3].seen
    assert last is not None
    assert last.length_ft == pytest.approx(71.7, abs=0.05)
    assert profile.not_inspected == ()


def test_the_block_was_passed_and_loose_scale_went_but_the_groove_stays_in_doubt(line: Line) -> None:
    assert [f.kind for f in line.superseded] == ["scale", "scale", "blocked"]
    groove = next(f for f in line.findings if f.kind == "channel" and "gone" not in f.signs)
    assert groove.grade == "suspected"
    gone = next(f for f in line.findings if "gone" in f.signs)
    assert gone.grade == "seen"


def test_two_sides_of_one_cleanout_lie_on_two_sides_of_the_zero(line: Line) -> None:
    profile = Profile(line)
    assert profile.zone(6.2).value == "slab"
    assert profile.zone(-2).value == "yard"
    assert profile.zone(-50).value == "drive"
    assert profile.zone(-70).value == "yard"
    assert profile.pipe(-5).value == "cast iron"
    assert profile.pipe(-20).value == "clay"


def test_locates_keep_their_tapes_and_flags(line: Line) -> None:
    flag_a = next(m for m in line.marks if m.flag == "A")
    assert flag_a.depth_ft == pytest.approx(31 / 12)
    assert flag_a.surface == "tile"
    assert [(round(t.length_ft * 12), t.to) for t in flag_a.ties] == [(112, "east wall"), (170, "front wall")]


def test_the_account_says_what_a_person_must_know(job: Job) -> None:
    text = "\n".join(echo(job))
    assert "passes 1, 2, 3 agree within 0.7 ft" in text
    assert "seen to 41.6 ft inside the slab edge" in text
    assert "pass 4 saw 71.7 ft from the front cleanout" in text
    assert "hole at 14.5 is at 13.8 by pass 3: any mark there is ± 0.7 ft" in text
    assert "its zero slipped +0.6 ft" in text
    assert (  # 28'1" - 14'2" = 13.92 ft by tape; 28.0 - 14.5 = 13.5 ft by the reel: it reads at least 0.4 ft short
        "by tape from the front wall flag A (at 14.5) and flag B (at 28.0) lie 13.9 ft apart or more, "
        "by the reel 13.5: any mark there is ± 0.4 ft" in text
    )


def test_its_questions_are_for_the_return_visit(job: Job) -> None:
    problems = read_job(JOBS / "alder" / "job.toml").problems
    assert {p.level.value for p in problems} == {"question"}
    assert [p.code for p in problems].count("log/branch-not-proven") == 2

"""The demo's notes are a house of some interest, read without a problem; every name in them is invented."""

from pathlib import Path

import pytest

from estimator import demo
from estimator.fieldnotes import read_job
from estimator.model.profile import Profile

FOLDER = Path(demo.__file__).parent


@pytest.fixture(scope="module", name="job")
def _job():
    return read_job(FOLDER / "job.toml").job


def test_the_notes_are_read_without_an_error():
    assert [str(p) for p in read_job(FOLDER / "job.toml").problems if p.level == "error"] == []


def test_every_file_of_the_demo_is_named_and_read():
    read = {name for name, _ in read_job(FOLDER / "job.toml").files}
    assert read == set(demo.FILES) == {p.name for p in FOLDER.iterdir() if p.suffix in (".toml", ".txt")}


def test_the_house_has_a_slab_a_yard_line_and_a_way_round(job):
    zones = {zone for line in job.lines for _, zone in Profile(line).zones(Profile(line).extent)}
    assert {"slab", "yard", "drive"} <= zones
    assert [way.replaces_line for way in job.reroutes] == ["kitchen"]
    assert (job.demo, job.house.lived_in, job.house.jurisdiction) == (True, True, "demo")


def test_there_are_several_kinds_of_findings_and_one_of_them_is_suspected(job):
    findings = [f for line in job.lines for f in line.findings]
    assert len({f.kind for f in findings}) >= 5
    assert [f.kind for f in findings if f.grade == "suspected"] == ["crack"]


def test_the_passes_of_the_main_agree_within_a_foot(job):
    """The second pass was zeroed 0.6 ft too far out: 15.0 for the branch that the first read at 14.4 [computed]."""
    runs = job.line("main").passes
    assert [run.when for run in runs][:2] == ["before cleaning", "after cleaning"]
    assert runs[1].shift_ft == pytest.approx(-0.6, abs=0.05)
    assert all(abs(off) < 1 for run in runs for _, off in run.ties)


def test_the_failed_test_under_the_slab_is_followed_by_tests_apart(job):
    assert [(t.kind, t.result) for t in job.water_tests] == [
        ("whole", "failed"),
        ("isolated", "passed"),
        ("isolated", "failed"),
        ("isolated", "failed"),
    ]


def test_depths_beams_and_branches_are_in_the_notes(job):
    profile = Profile(job.line("main"))
    assert len(profile.beams) == 2
    assert [branch.name for branch in profile.branches] == ["hall bath", "kitchen"]
    assert len(profile.marks("loc")) == 2
    fall = profile.fall_ft(0.0, 35.0)
    assert fall.value is not None
    assert fall.value / 35.0 * 12 > 1 / 8  # more than an eighth of an inch a foot [computed]

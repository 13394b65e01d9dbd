"""Maple and Pecan, the two worked examples: what their notes say is where the hand-worked page puts it [computed]."""

import pytest
from fieldnote_texts import JOBS

from estimator.fieldnotes import read_job
from estimator.model.job import Job
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch


def job_of(name: str) -> Job:
    reading = read_job(JOBS / name / "job.toml")
    assert reading.job is not None
    assert reading.problems == ()
    return reading.job


def test_maple_has_a_joint_every_three_feet_from_the_access() -> None:
    joints = [m.stretch.from_ft for m in job_of("maple").line("main").marks if m.word == "joint" and m.assumed]
    assert joints[:3] == [0.0, 3.0, 6.0]
    assert {36.0, 39.0, 42.0, 45.0} <= set(joints)
    assert joints[-1] == 60.0


def test_maple_readings_become_stations_by_taking_off_the_riser() -> None:
    findings = {f.kind: f for f in job_of("maple").line("main").findings}
    assert findings["roots"].stretch == Stretch(39, 39)
    assert findings["offset"].stretch == Stretch(39, 39)
    assert findings["crack"].stretch == Stretch(41.5, 43)
    assert findings["roots"].percent == (30.0, 30.0)


def test_maple_runs_in_the_yard_with_the_flow_and_one_depth() -> None:
    line = job_of("maple").line("main")
    profile = Profile(line)
    assert (line.zero, line.downstream) == ("access", 1)
    assert profile.zones(Stretch(0, 60)) == ((Stretch(0, 60), "yard"),)
    depth = profile.depth_to_centre_ft(40.5)
    assert (depth.value, depth.how) == (3.4, "read")
    assert profile.depth_to_centre_ft(20).how == "carried"
    assert profile.slab_edge_ft is None


def test_pecan_counts_from_the_slab_edge_inwards_though_it_was_filmed_outwards() -> None:
    line = job_of("pecan").line("main")
    assert (line.zero, line.downstream, line.passes[0].sign) == ("slab edge", -1, -1)
    assert [f.stretch for f in line.findings] == [Stretch(9, 25)]
    assert line.findings[0].signs == ("soil seen", "gone")


def test_pecan_beams_branches_and_invert() -> None:
    profile = Profile(job_of("pecan").line("main"))
    edge, inner = profile.beams
    assert edge.stretch == Stretch(0, 1)
    assert inner.stretch.from_ft == 15
    assert inner.stretch.length_ft == pytest.approx(10 / 12, abs=1e-6)
    assert edge.bottom_below_slab_ft == inner.bottom_below_slab_ft == 2.0
    assert [(b.station_ft, b.size_in, b.live, b.proven, b.away_ft) for b in profile.branches] == [
        (12, 3, "live", True, 0),
        (18, 2, "live", True, 0),
        (23, 2, "live", True, 0),
    ]
    assert profile.invert_below_slab_ft(0).value == 2.6
    assert profile.zone(10).value == "slab"
    assert profile.zone(-1).value == "yard"


def test_pecan_has_a_failed_billed_test_of_the_main_alone_and_a_pinned_tunnel() -> None:
    job = job_of("pecan")
    test = job.water_tests[0]
    assert (test.kind, test.result, test.billed, test.covers) == ("isolated", "failed", True, ("main",))
    assert test.readings == ((0.0, 0.0), (10.0, 3.0), (20.0, 6.0))
    pinned = job.options[0].repairs[0]
    assert (pinned.method, pinned.from_ft, pinned.to_ft, pinned.entry) == ("tunnel", 0, 27, "exit")

"""Every way that is not offered gets the reason that says most about the pipe; what goes without saying is not said."""

from dataclasses import replace

from estimator.diagnosis import diagnose
from estimator.model.work import Repair
from estimator.scopes.rules.why_not import why_not
from tests.diagnosis.making import job, line
from tests.made_up.stretch import demo_tables, reroute

WORN = job(line("8-44 channel gone, soil seen", pipe="cast iron", zone="slab"))
NEEDS = diagnose(WORN, demo_tables()).needs


def reasons(offered: tuple[Repair, ...] = ()) -> dict[str, str]:
    out: dict[str, str] = {}
    for verdict in why_not(WORN, NEEDS, offered, demo_tables()):
        out.setdefault(verdict.method, verdict.rule)
    return out


def test_spots_on_a_worn_out_run_are_refused_because_it_is_worn_out_not_because_they_are_long() -> None:
    assert reasons()["slab spot"] == reasons()["sectional liner"] == "no-spots-on-worn-out-pipe"


def test_a_yard_dig_under_a_house_goes_without_saying() -> None:
    assert "yard spot" not in reasons()
    assert "trench" not in reasons()


def test_a_way_that_is_offered_needs_no_reason() -> None:
    assert "burst" in reasons()
    burst = Repair(id="b", method="burst", line="main", stretch=NEEDS[0].stretch, answers=(NEEDS[0].id,))
    assert "burst" not in reasons((burst,))


def test_a_way_round_is_judged_over_all_that_it_replaces_and_not_over_the_bad_place_alone() -> None:
    """A toilet drains through the floor; that the same old line goes on below the bad place is no smaller pipe to run into."""
    wall = reroute(
        yard_ft=30, wall_ft=8, size_in=4.5, replaces_from_ft=0, replaces_to_ft=60, serves=(("toilet", 1),), penetrations=(("wall", 1),)
    )  # fmt: skip
    with_wall = replace(WORN, reroutes=(wall,))
    said = [
        v.rule
        for v in why_not(with_wall, diagnose(with_wall, demo_tables()).needs, (), demo_tables())
        if v.method == "reroute"
    ]
    assert said[0] == "wall-way-serves-what-drains-above-the-floor"
    assert "size-never-shrinks" not in said

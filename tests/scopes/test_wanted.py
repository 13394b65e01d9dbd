"""Options by hand are never priced on nothing: no such line, no length, no way round in the notes."""

from dataclasses import replace
from pathlib import Path

import pytest

from estimator.fieldnotes import read_job
from estimator.model.job import Job, Leg, Reroute
from estimator.model.problem import CannotGoOn
from estimator.model.wanted import WantedOption, WantedRepair
from estimator.pipeline import run

JOBS = Path(__file__).parents[1] / "jobs"


def job(name: str) -> Job:
    found = read_job(JOBS / name / "job.toml").job
    assert found is not None
    return found


def with_option(house: Job, do: str, **wanted: object) -> Job:
    repair = WantedRepair(**{"line": "main", **wanted})
    return replace(house, options=(WantedOption(do=do, name="Mine", repairs=(repair,)),))


@pytest.mark.parametrize("do", ["pin", "add"])
@pytest.mark.parametrize(
    ("name", "wanted", "why"),
    [
        ("maple", {"method": "trench", "line": "attic", "from_ft": 0, "to_ft": 9}, "no such line"),
        ("maple", {"method": "trench", "from_ft": 9, "to_ft": 9}, "no length"),
        ("clean-line", {"method": "tunnel"}, "no length"),
        ("maple", {"method": "reroute"}, "no way round"),
        ("maple", {"method": "reroute", "from_ft": 0, "to_ft": 20}, "no way round"),
    ],
)
def test_an_option_on_nothing_is_refused(tables, do: str, name: str, wanted: dict[str, object], why: str) -> None:
    with pytest.raises(CannotGoOn) as stop:
        run(with_option(job(name), do, **wanted), tables, job(name).day)
    (problem,) = stop.value.problems
    assert problem.code == "scopes/nothing-there"
    assert why in str(problem)


def test_a_way_round_in_the_notes_is_measured_over_what_it_replaces(tables) -> None:
    house = job("j05-alderwood")
    (way,) = house.reroutes
    pinned = run(with_option(house, "pin", method="reroute", line=way.replaces_line), tables, house.day).quote.options[
        0
    ]
    assert {r.reroute for r in pinned.scope.repairs} == {way.name}
    assert sum(t.value("reroute_ft") for t in pinned.takeoffs) > 0


def test_a_way_round_without_legs_is_none(tables) -> None:
    house = replace(job("maple"), reroutes=(Reroute(name="east", replaces_line="main"),))
    with pytest.raises(CannotGoOn):
        run(with_option(house, "pin", method="reroute"), tables, house.day)
    seen = replace(
        house, reroutes=(Reroute(name="east", replaces_line="main", legs=(Leg(zone="yard", length_ft=40),)),)
    )
    assert run(with_option(seen, "pin", method="reroute"), tables, house.day).quote.options


def test_a_look_needs_no_length(tables) -> None:
    wanted = with_option(job("maple"), "add", method="look and see", from_ft=39, to_ft=39)
    assert run(wanted, tables, wanted.day).quote.options

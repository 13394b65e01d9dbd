"""For every need every way of repair: offered or not, with a reason for the estimator and one for the homeowner."""

from pathlib import Path

import pytest

from estimator.diagnosis import diagnose
from estimator.fieldnotes import read_job
from estimator.model.judgement import Effect
from estimator.pipeline.costing import costing, place_of
from estimator.scopes.candidates import repairs
from estimator.scopes.choose import choose
from estimator.scopes.each_way import NeedWays, each_way
from estimator.works.methods import names
from tests.made_up.stretch import demo_tables

JOBS = Path(__file__).parents[1] / "jobs"
HOUSES = ("maple", "pecan", "alder", "hidden-leak", "j02-walnut", "j09-sycamore", "j10-chestnut", "gas-in-the-drain")


def ways(house: str) -> tuple[NeedWays, ...]:
    job, tables = read_job(JOBS / house / "job.toml").job, demo_tables()
    assert job is not None
    diagnosis = diagnose(job, tables)
    offers = repairs(job, diagnosis, tables)
    verdicts = choose(job, diagnosis, offers, costing(job, tables, place_of(job, tables)), tables).verdicts
    return each_way(job, diagnosis.needs, offers.repairs, verdicts, tables)


@pytest.mark.parametrize("house", HOUSES)
def test_every_need_has_every_way_once_and_none_is_refused_without_a_reason(house: str) -> None:
    for one in ways(house):
        assert [w.method for w in one.ways] == [m for m in names() if m != "abandon"]
        for way in one.ways:
            assert way.offered or way.verdict is not None
            assert way.verdict is None or (str(way.verdict.homeowner) and str(way.verdict.estimator))
            assert way.offered or way.verdict.effect in (Effect.BLOCKS, Effect.DOES_NOT_FIX, Effect.UNTIL_APPROVED, Effect.REQUIRES_FIRST)  # fmt: skip


def test_the_hand_worked_house_may_be_tunnelled_and_not_lined_before_a_dig() -> None:
    (one,) = [w for w in ways("pecan") if w.need.must]
    there = {w.method: w for w in one.ways}
    assert there["tunnel"].offered
    assert there["trench"].verdict.rule == "place-fits-the-method"


def test_nothing_is_offered_for_a_drain_with_a_gas_line_through_it() -> None:
    assert not any(w.offered for one in ways("gas-in-the-drain") for w in one.ways)


def test_only_the_isolation_test_answers_a_hidden_leak() -> None:
    (one,) = ways("hidden-leak")
    assert [w.method for w in one.ways if w.offered] == ["isolation test"]

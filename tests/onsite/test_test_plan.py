"""The order of plug tests: the least there is, and it ends at the leak wherever that lies."""

import random
from functools import cache
from math import log2
from pathlib import Path

import pytest

from estimator.cli.way import look
from estimator.onsite.plug_results import Result, TooManyResults, followed
from estimator.onsite.test_plan import TestPlan, best_order, test_plan
from estimator.onsite.test_sheet import test_sheet

JOBS = Path(__file__).parents[1] / "jobs"


def brute(weights: tuple[float, ...]) -> float:
    """Every tree of cuts there is, one by one."""

    @cache
    def least(low: int, high: int) -> float:
        if high - low == 1:
            return 0.0
        return sum(weights[low:high]) + min(least(low, c) + least(c, high) for c in range(low + 1, high))

    return least(0, len(weights))


def test_no_order_takes_fewer_tests() -> None:
    draw = random.Random()
    for _ in range(200):
        weights = tuple(draw.uniform(0.1, 50) for _ in range(draw.randint(1, 8)))
        assert best_order(weights)[0] == pytest.approx(brute(weights))


def test_the_mean_lies_between_shannons_bound_and_two_more() -> None:
    """Source: Shannon's noiseless coding bound; Gilbert and Moore (1959) for alphabetic codes: at most two more (from memory)."""
    draw = random.Random()
    for _ in range(200):
        weights = [draw.uniform(0.1, 50) for _ in range(draw.randint(2, 12))]
        bits = -sum(w / sum(weights) * log2(w / sum(weights)) for w in weights)
        mean = best_order(weights)[0] / sum(weights)
        assert bits - 1e-9 <= mean <= bits + 2


def plan_of(name: str) -> TestPlan:
    looked = look(JOBS / name / "job.toml", None)
    assert looked.job and looked.diagnosis and looked.tables
    plan = test_plan(looked.job, looked.diagnosis, looked.tables)
    assert plan is not None
    return plan


@pytest.mark.parametrize("name", ["hidden-leak", "hidden-leak-near-not-sealed", "juniper", "alder", "j01-near-tendons"])
def test_every_leak_is_found_by_following_the_steps(name: str) -> None:
    plan = plan_of(name)
    steps = {s.number: s for s in plan.steps}
    for leak in (s.name for s in plan.sections if s.known != "tight") if steps else ():
        at: int | tuple[str, ...] = 1
        made = 0
        while isinstance(at, int):
            step, made = steps[at], made + 1
            at = step.if_drops if leak in step.tests else step.if_holds
        assert leak in at
        assert made <= plan.most


@pytest.mark.parametrize("name", ["hidden-leak", "juniper", "alder"])
def test_typing_results_back_leads_to_the_leak_and_never_back_to_a_test_made(name: str) -> None:
    plan = plan_of(name)
    for leak in (s.name for s in plan.sections if s.known != "tight") if plan.steps else ():
        results: list[Result] = []
        while (so_far := followed(plan, results)).next is not None:
            assert so_far.next.number not in {step.number for step, _ in so_far.made}
            assert so_far.left[0] == so_far.next
            results.append("drop" if leak in so_far.next.tests else "hold")
        assert leak in so_far.where
        assert len(so_far.made) == len(results) <= plan.most
        with pytest.raises(TooManyResults, match="no test is left"):
            followed(plan, [*results, "hold"])


def test_a_drop_in_the_readings_counts_where_no_result_was_written() -> None:
    """The house was filled and fell 3 in in 30 minutes: the first test is no longer that of the whole drain."""
    plan = plan_of("hidden-leak")
    assert len(plan.steps[0].tests) < len(plan.sections)


def test_the_sheet_says_what_comes_next_and_how_long_a_test_takes() -> None:
    """17 gal at 5 gal a minute, 10 minutes of air and 20 of reading: 33.4, up to 35 minutes (arithmetic)."""
    looked = look(JOBS / "hidden-leak" / "job.toml", None)
    assert looked.job and looked.diagnosis and looked.tables
    fresh = test_sheet(looked.job, looked.diagnosis, looked.tables)
    assert any("about 35 minutes" in str(line) for block in fresh.blocks for line in block.lines)
    then = test_sheet(looked.job, looked.diagnosis, looked.tables, ["hold"])
    assert "Next: test 2" in str(then.answer)
    assert "main 2" in str(test_sheet(looked.job, looked.diagnosis, looked.tables, ["drop"]).answer)


def test_a_branch_that_held_is_never_suspected() -> None:
    plan = plan_of("j01-hickory")
    tight = {s.name for s in plan.sections if s.known == "tight"}
    assert tight == {"hall bath", "kitchen", "master bath", "laundry"}
    ends = [end for s in plan.steps for end in (s.if_drops, s.if_holds) if not isinstance(end, int)]
    assert not tight & {name for end in ends for name in end}

"""The order of plug tests: the least there is, and it ends at the leak wherever that lies."""

import random
from functools import cache
from math import log2
from pathlib import Path

import pytest

from estimator.cli.way import look
from estimator.onsite.test_plan import TestPlan, best_order, test_plan

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


def test_a_branch_that_held_is_never_suspected() -> None:
    plan = plan_of("j01-hickory")
    tight = {s.name for s in plan.sections if s.known == "tight"}
    assert tight == {"hall bath", "kitchen", "master bath", "laundry"}
    ends = [end for s in plan.steps for end in (s.if_drops, s.if_holds) if not isinstance(end, int)]
    assert not tight & {name for end in ends for name in end}

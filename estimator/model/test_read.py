"""A water test read as evidence: passed, failed or inconclusive, and the reasons why it may prove less than it seems."""

from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.job import WaterTest
from estimator.model.say import Say

Outcome = Literal["passed", "failed", "inconclusive"]


class TestRead(Frozen):
    """One test. `gallons_a_day` is its leak at test level; `doubts` are why it proves less than it seems."""

    __test__ = False
    test: WaterTest
    outcome: Outcome
    gallons_a_day: float | None
    doubts: tuple[Say, ...] = ()

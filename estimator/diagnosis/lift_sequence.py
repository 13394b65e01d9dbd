"""A job with foundation work and its needs in; the order of tests, repairs and lift out, step by step.

Common practice: test before; repair first only what feeds the soil or would break in the lift; lift; test after; then the
rest. Warranty begins after. What is sold is done in one go before the lift, and the papers say so.
"""

from collections.abc import Sequence

from estimator.diagnosis.case import SOAKS
from estimator.model.job import Job
from estimator.model.judgement import LiftStep, Need
from estimator.model.say import Say


def lift_sequence(job: Job, needs: Sequence[Need]) -> tuple[LiftStep, ...]:
    """The steps in order; none where no foundation work is planned or done."""
    if job.foundation.work == "none":
        return ()
    after = LiftStep(Say.of("We water-test them again."))
    if job.foundation.work == "done":
        rest = LiftStep(Say.of("We repair what the test after the lift shows."), tuple(n.id for n in needs), "repairs")
        return (after, rest)
    first = tuple(n.id for n in needs if SOAKS & set(n.kinds))
    later = tuple(n.id for n in needs if n.id not in first)
    return (
        LiftStep(Say.of("We water-test the drains under the house.")),
        LiftStep(Say.of("Foundation company: send us the pier locations."), what="piers"),
        LiftStep(Say.of("We first repair only what leaks into the soil or would break in the lift."), first, "repairs"),
        LiftStep(Say.of("The foundation company lifts the house."), what="lift"),
        after,
        LiftStep(Say.of("We make the other repairs."), later, "repairs"),
    )

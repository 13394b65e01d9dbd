"""A test plan and what its tests showed so far in; what was done, the next test, or where the leak is, out."""

from collections.abc import Sequence
from typing import Literal

from estimator.model.frozen import Frozen
from estimator.onsite.test_plan import Step, TestPlan

Result = Literal["drop", "hold"]
RESULTS: tuple[Result, ...] = ("drop", "hold")


class TooManyResults(ValueError):
    """More results than the plan has tests on that way."""


class Followed(Frozen):
    """Tests made with their results, the step that comes next (None: none), and the sections the leak must lie in once none does.

    `left` are the steps that may still come, the next one first.
    """

    made: tuple[tuple[Step, Result], ...]
    next: Step | None
    where: tuple[str, ...]
    left: tuple[Step, ...]


def followed(plans: Sequence[TestPlan], results: Sequence[Result]) -> tuple[Followed, ...]:
    """Return where the results lead, drain by drain, one for each test in the order made. Errors: TooManyResults for more results than tests."""
    out, waiting = [], list(results)
    for plan in plans:
        found = _followed(plan, waiting)
        waiting = waiting[len(found.made) :]
        out.append(found)
    if waiting:
        done = list(results)[: len(results) - len(waiting)]
        said = f"after --result {' --result '.join(done)}" if done else "here"
        raise TooManyResults(f"{said} no test is left.")
    return tuple(out)


def _followed(plan: TestPlan, results: Sequence[Result]) -> Followed:
    steps = {step.number: step for step in plan.steps}
    at: int | tuple[str, ...] = plan.steps[0].number if plan.steps else ()
    made: list[tuple[Step, Result]] = []
    for result in results:
        if not isinstance(at, int):
            break
        step = steps[at]
        made.append((step, result))
        at = step.if_drops if result == "drop" else step.if_holds
    if not isinstance(at, int):
        return Followed(tuple(made), None, at, ())
    left: list[Step] = []
    open_ends = [at]
    while open_ends:
        step = steps[open_ends.pop(0)]
        left.append(step)
        open_ends += [end for end in (step.if_drops, step.if_holds) if isinstance(end, int)]
    return Followed(tuple(made), steps[at], (), tuple(sorted(left, key=lambda step: step.number)))

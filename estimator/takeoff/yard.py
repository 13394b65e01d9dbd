"""Dig from the open air: a yard spot or a whole trench in; its quantities out."""

from estimator.takeoff.case import Case
from estimator.takeoff.dig import dig
from estimator.takeoff.pipe import new_pipe
from estimator.takeoff.restoration import put_back
from estimator.works.open_dig import hole_over


def yard_spot(case: Case) -> None:
    """One hole over a bad piece; the new piece is seen by the inspector with water running."""
    _open(case, "spot_days_open", tests=0)


def trench(case: Case) -> None:
    """A whole run dug up and laid anew; tested before it is covered."""
    _open(case, "trench_days_open", tests=1)


def _open(case: Case, days: str, tests: int) -> None:
    hole = hole_over(case)
    dug = dig(case, hole, case.number(days))
    new_pipe(case, tunnel=False, tests=tests)
    put_back(case, (dug.top, dug.way.top_width_ft))


def look(case: Case) -> None:
    """One hole to see what is wrong; the pipe stays as it is until that is known."""
    hole = hole_over(case)
    dug = dig(case, hole, case.number("spot_days_open"), new_pipe=False)
    put_back(case, (dug.top, dug.way.top_width_ft))

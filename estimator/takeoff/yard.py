"""Dig from the open air: a yard spot or a whole trench in; its quantities out."""

from estimator.takeoff.case import Case
from estimator.takeoff.dig import dig
from estimator.takeoff.pipe import new_pipe
from estimator.takeoff.restoration import put_back
from estimator.works.open_dig import hole_over
from estimator.works.plans import hole_to_the_lot


def yard_spot(case: Case) -> None:
    """One hole over a bad piece; the new piece is seen by the inspector with water running."""
    _open(case, "spot_days_open", tested=False)


def trench(case: Case) -> None:
    """A whole run dug up and laid anew; tested before it is covered."""
    _open(case, "trench_days_open", tested=True)


def _open(case: Case, days: str, *, tested: bool) -> None:
    hole = hole_over(case)
    dug = dig(case, hole, case.number(days))
    new_pipe(case, tunnel=False, tested=tested)
    put_back(case, (dug.top, dug.way.top_width_ft))


def hand_over(case: Case) -> None:
    """A piece up to the property line, with a cleanout there; what lies beyond is filmed for whoever repairs it."""
    dug = dig(case, hole_to_the_lot(case), case.number("spot_days_open"))
    new_pipe(case, tunnel=False, tested=False)
    case.paper.put("cleanouts", 1, "one at the property line, where the pipe is handed over")
    case.paper.put("films_before", 1, "what lies beyond the property line, filmed for whoever repairs it")
    put_back(case, (dug.top, dug.way.top_width_ft))
    case.paper.assume("the pipe beyond the property line is the city's to repair; ask the city in writing first")


def look(case: Case) -> None:
    """One hole to see what is wrong; the pipe stays as it is until that is known."""
    hole = hole_over(case)
    dug = dig(case, hole, case.number("spot_days_open"), new_pipe=False)
    put_back(case, (dug.top, dug.way.top_width_ft))

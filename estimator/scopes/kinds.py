"""A candidate in, what a homeowner would call it out: fix the bad spot, line it, replace that part, go around it."""

from estimator.model.work import Candidate
from estimator.works.methods import known

SPOT, LINED_SPOT = "spot", "lined spot"
SMALLEST = frozenset({"clean", "find out", LINED_SPOT})
SMALL = SMALLEST | {SPOT}


def kind_of(name: str) -> str:
    """A way's kind; a candidate that says its own (a short piece hung in the crawl space) keeps that."""
    record = known(name)
    return record.kind if record else name


def reach_of(name: str) -> str:
    """How a way comes to the pipe, which the house lives with: the floor opened, a tunnel below it, a way round, a lining."""
    record = known(name)
    return (record.reach if record else "") or name


def way(candidate: Candidate | None) -> str:
    """Its kind, with a spot lined from inside told apart from one that is opened.

    >>> from estimator.model.stretch import Stretch
    >>> way(Candidate(id="a", line="main", stretch=Stretch(0, 4), answers=frozenset("n"), cost=1, method="sectional liner"))
    'lined spot'
    """
    return "" if candidate is None else candidate.kind or kind_of(candidate.method)


def kind(candidate: Candidate | None) -> str:
    """One of the four (spot, line, replace, go around), or clean, or find out."""
    return SPOT if way(candidate) == LINED_SPOT else way(candidate)


def reach(candidate: Candidate | None) -> str:
    """How it comes to the pipe; a way that is alone in that is named by its method."""
    return "" if candidate is None else reach_of(candidate.method)


def method(candidate: Candidate | None) -> str:
    return candidate.method if candidate else ""

"""A candidate in, what a homeowner would call it out: fix the bad spot, line it, replace that part, go around it."""

from estimator.model.work import Candidate
from estimator.works.methods import RECORDS

SPOT, LINED_SPOT = "spot", "lined spot"
KINDS: dict[str, str] = {name: record.kind for name, record in RECORDS.items()}
"""Each way of repair and its kind; a candidate that says its own (a short piece hung in the crawl space) keeps that."""
REACHES: dict[str, str] = {name: record.reach for name, record in RECORDS.items() if record.reach}
"""How a repair comes to the pipe, which the house lives with: the floor opened, a tunnel below it, a way round, a lining."""
SMALLEST = frozenset({"clean", "find out", LINED_SPOT})
SMALL = SMALLEST | {SPOT}


def way(candidate: Candidate | None) -> str:
    """Its kind, with a spot lined from inside told apart from one that is opened.

    >>> from estimator.model.stretch import Stretch
    >>> way(Candidate(id="a", line="main", stretch=Stretch(0, 4), answers=frozenset("n"), cost=1, method="sectional liner"))
    'lined spot'
    """
    return "" if candidate is None else candidate.kind or KINDS.get(candidate.method, candidate.method)


def kind(candidate: Candidate | None) -> str:
    """One of the four (spot, line, replace, go around), or clean, or find out."""
    return SPOT if way(candidate) == LINED_SPOT else way(candidate)


def reach(candidate: Candidate | None) -> str:
    """How it comes to the pipe; a way that is alone in that is named by its method."""
    return "" if candidate is None else REACHES.get(candidate.method, candidate.method)


def method(candidate: Candidate | None) -> str:
    return candidate.method if candidate else ""

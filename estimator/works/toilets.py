"""A line and what is opened along it in; how many toilets are pulled to fill its new pipe for a water test, out."""

from collections.abc import Iterable

from estimator.model.opening import Opening
from estimator.works.case import Case

LEAST_TOILET_IN = 3.0
"""No toilet drains into smaller pipe (IPC table 709.1, UPC 702.1: water closet trap and drain 3 in, from memory)."""


def toilets_to_pull(case: Case, openings: Iterable[Opening]) -> int:
    """Return the firm's number for each test below a floor; none where one is off for the camera already.

    Pipe laid in a yard or hung in a crawl space is filled through a riser of its own (common practice), and no toilet can
    drain into a line of less than 3 in.
    """
    below_floor = any(o.cuts_floor or o.kind == "tunnel" for o in openings)
    off = any("toilet" in p.access.lower() for p in case.line.passes)
    return int(case.number("toilets_per_test")) if below_floor and not off and case.bore_in >= LEAST_TOILET_IN else 0

"""A line in; how many toilets are pulled to fill it for a water test, out."""

from estimator.works.case import Case

LEAST_TOILET_IN = 3.0
"""No toilet drains into smaller pipe (IPC table 709.1, UPC 702.1: water closet trap and drain 3 in, from memory)."""


def toilets_to_pull(case: Case) -> int:
    """Return the firm's number for each test; none on a line that no toilet can drain into."""
    return int(case.number("toilets_per_test")) if case.bore_in >= LEAST_TOILET_IN else 0

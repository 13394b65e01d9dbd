"""Sorted values and a percent in; the value below which that percent of them lie out."""

from collections.abc import Sequence


def percentile(ordered: Sequence[float], percent: float) -> float:
    """The value below which this percent of the sorted values lie, between neighbours in proportion.

    >>> percentile([0.0, 10.0, 20.0], 50), percentile([0.0, 10.0, 20.0], 75)
    (10.0, 15.0)
    """
    place = (len(ordered) - 1) * percent / 100
    below = int(place)
    above = min(below + 1, len(ordered) - 1)
    return ordered[below] + (ordered[above] - ordered[below]) * (place - below)

"""A place's trap arms as written in, the longest arm in ft for each trap size out."""

from collections.abc import Iterator, Sequence

from estimator.model.problem import Problem
from estimator.tables import cell_problems
from estimator.tables.check_view import View
from estimator.tables.rows import PlaceRow

Arms = dict[float, float]
"""The longest arm in ft, by the trap's size in inches."""


def trap_arms(written: Sequence[str]) -> Arms:
    """Each part is a trap's size in inches and its longest arm in feet.

    >>> trap_arms(("1.25 5", "1.5 6")), trap_arms(())
    ({1.25: 5.0, 1.5: 6.0}, {})

    Errors: ValueError for a part that is not two numbers above 0, or a size that stands there twice.
    """
    arms: Arms = {}
    for part in written:
        size_in, arm_ft = (float(word) for word in part.split())
        if not (0 < size_in < float("inf") and 0 < arm_ft < float("inf")) or size_in in arms:
            raise ValueError(part)
        arms[size_in] = arm_ft
    return arms


def arms_can_be_read(view: View) -> Iterator[Problem]:
    """Every part of every place's trap arms."""
    for row in view.tables.every(PlaceRow):
        for count, part in enumerate(row.trap_arms, start=1):
            try:
                trap_arms(row.trap_arms[:count])
            except ValueError:
                yield cell_problems.TRAP_ARM(view.at("places", row, "trap_arms"), text=part)
                break

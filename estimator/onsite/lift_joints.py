"""A line's points after a lift in; the joints that turned, each with its error, out.

Where the slab and the pipe rise alike, no joint under the house turns: the pipe is tilted as one piece. So what turns a joint is how
unevenly the pipe was left behind: from point to point its fall against the slab changes, and the joint between takes the difference.
Outside the slab edge the ground stayed, and the first length of pipe takes all that the edge rose.
"""

from collections.abc import Sequence
from math import hypot

from estimator.model.frozen import Frozen
from estimator.onsite.lift_points import Point
from estimator.onsite.lift_surface import Rise

LENGTH_FT = 5.0
"""A length of cast-iron soil pipe (ASTM A74, from memory); clay is often shorter and turns more."""

LEVELS, APART_FT = 3, 2.0
"""A joint turns between three levels; nearer to each other than this, their own errors hide it (judgment)."""


class Joint(Frozen):
    """The joint at or next to a point, and how far it turned, inches a foot. `outside`: the first one beyond the slab edge."""

    point: Point
    turn: Rise
    outside: bool


def joints_of(points: Sequence[Point], length_ft: float) -> tuple[Joint, ...]:
    """Return the joints whose turn can be told, with the flow; those under the slab need levels at three points in a row.

    `length_ft` is the length of the first pipe outside the slab edge.
    """
    out = []
    for point in points:
        if point.what == "slab edge":
            rose = point.pipe or point.slab
            out.append(Joint(point, Rise(rose.inches / length_ft, rose.sigma_in / length_ft), True))
    measured = [p for p in points if p.own]
    for one, middle, other in zip(measured, measured[1:], measured[2:], strict=False):
        out.append(Joint(middle, _turn(one, middle, other), False))
    return tuple(sorted(out, key=lambda j: points.index(j.point)))


def levels_to_read(read: Sequence[float], could: Sequence[float]) -> tuple[float, ...]:
    """Return the stations that make three levels with those read, each as far as may be from the others; fewer where no more can be.

    >>> levels_to_read([], [0, 3, 12, 30]), levels_to_read([0, 30], [0, 3, 12, 30]), levels_to_read([5], [5])
    ((0, 12, 30), (12,), ())
    """
    taken, added = list(read), []
    while len(taken) < LEVELS:
        left = [at for at in could if all(abs(at - other) >= APART_FT for other in taken)]
        if not left:
            break
        best = max(left, key=lambda at: min((abs(at - other) for other in taken), default=-at))
        taken.append(best)
        added.append(best)
    return tuple(sorted(added))


def _turn(one: Point, middle: Point, other: Point) -> Rise:
    """How much the fall against the slab changes at the middle one: readings of three places, each with its own error."""
    before, after = abs(middle.station_ft - one.station_ft), abs(other.station_ft - middle.station_ft)
    factors = (1 / before, -1 / before - 1 / after, 1 / after)
    pulls = (one.pull, middle.pull, other.pull)
    turn = sum(f * p.inches for f, p in zip(factors, pulls, strict=True))
    return Rise(turn, hypot(*(f * p.sigma_in for f, p in zip(factors, pulls, strict=True))))

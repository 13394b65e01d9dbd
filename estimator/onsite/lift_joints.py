"""A line's points after a lift in; the joints that turned, each with its error, out.

Where the slab and the pipe rise alike, no joint under the house turns: the pipe is tilted as one piece. So what turns a joint is how
unevenly the pipe was left behind: from point to point its fall against the slab changes, and the joint between takes the difference.
Outside the slab edge the ground stayed, and the first length of pipe takes all that the edge rose.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

from estimator.onsite.lift_points import Point
from estimator.onsite.lift_surface import Rise

LENGTH_FT = 5.0
"""A length of cast-iron soil pipe (ASTM A74, from memory); clay is often shorter and turns more."""


@dataclass(frozen=True, slots=True)
class Joint:
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


def _turn(one: Point, middle: Point, other: Point) -> Rise:
    """How much the fall against the slab changes at the middle one: readings of three places, each with its own error."""
    before, after = abs(middle.station_ft - one.station_ft), abs(other.station_ft - middle.station_ft)
    factors = (1 / before, -1 / before - 1 / after, 1 / after)
    pulls = (one.pull, middle.pull, other.pull)
    turn = sum(f * p.inches for f, p in zip(factors, pulls, strict=True))
    return Rise(turn, hypot(*(f * p.sigma_in for f, p in zip(factors, pulls, strict=True))))

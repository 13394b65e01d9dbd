"""A line and the floor's height over the ground in; how high ground, floor and pipe lie over the ground outside, ft, out.

A depth is counted from the surface it was taken from: 30 in below a floor that stands 12 in over the yard is 18 in of cover
under the yard.
"""

from collections.abc import Sequence
from itertools import pairwise

from estimator.model.answers import interpolated, taken_indoors
from estimator.model.line import Mark
from estimator.model.profile import Profile

RAISED = "slab"  # a basement floor lies lower than the yard, nobody wrote by how much: depths there count from it
Points = tuple[tuple[float, float], ...]


def surface(profile: Profile, floor_ft: float) -> Points:
    """(feet along the pipe, height) of ground and floor, with a step where the one meets the other."""
    zones = profile.zones(profile.extent)
    return tuple((x, _over(zone, floor_ft)) for part, zone in zones for x in (part.from_ft, part.to_ft))


def pipe(profile: Profile, floor_ft: float) -> Points:
    """(feet along the pipe, height) of its centre at both ends and at every reading; none where no depth was ever read."""
    whole = profile.extent
    marks = [m.stretch.middle_ft for m in profile.marks("depth", "loc", "pothole", "invert")]
    stations = sorted({whole.from_ft, whole.to_ft, *(m for m in marks if whole.holds(m))})
    heights = ((x, _centre(profile, x, floor_ft)) for x in stations)
    return tuple((x, y) for x, y in heights if y is not None)


def height_at(points: Points, at_ft: float) -> float:
    """On the straight line between the two points beside it; beyond the last one as high as that."""
    for (x0, y0), (x1, y1) in pairwise(points):
        if x0 <= at_ft <= x1:
            return y0 + (y1 - y0) * (at_ft - x0) / (x1 - x0)
    return points[0][1] if at_ft < points[0][0] else points[-1][1]


def _centre(profile: Profile, at_ft: float, floor_ft: float) -> float | None:
    answer = profile.depth_to_centre_ft(at_ft)
    if answer.value is None:
        return None
    return (_taken_from(profile, answer.marks, at_ft, floor_ft) or 0.0) - answer.value


def _taken_from(profile: Profile, readings: Sequence[Mark], at_ft: float, floor_ft: float) -> float | None:
    """How high the surface lies that the depth there is counted from."""

    def height(reading: Mark) -> float:
        zone = profile.zone(reading.stretch.middle_ft).value
        indoors = taken_indoors(reading)
        return 0.0 if indoors is False else floor_ft if indoors and zone != "basement" else _over(zone, floor_ft)

    return interpolated(tuple(readings), height, at_ft).value


def _over(zone: str | None, floor_ft: float) -> float:
    return floor_ft if zone == RAISED else 0.0

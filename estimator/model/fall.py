"""The fall over a stretch of pipe whose ends no level was read at, from levels so near that they speak for the ends."""

from estimator.model.profile import Profile
from estimator.model.say import Say

CLIMBS = Say.of(
    "Our level readings show that your drain climbs toward the sewer. New pipe between the same ends would not drain. We can set a firm price after we find a lower end."
)
"""What the homeowner of a line that runs uphill is told."""
LEVEL_REACH_FT = 3.0
"""A level read so near the end of a stretch speaks for that end. Common practice."""


def fall_over(profile: Profile, from_ft: float, to_ft: float) -> float | None:
    """Return how much the pipe's bottom drops with the flow from one station to the other, ft; None where levels do not say.

    A reading beyond which there is none, no more than LEVEL_REACH_FT inside the end, is carried on at the fall between the two.
    """
    low, high = _level_near(profile, from_ft), _level_near(profile, to_ft)
    if low == high:
        return None
    fall = profile.fall_ft(low, high).value
    return None if fall is None else fall * (to_ft - from_ft) / (high - low)


def level_stations(profile: Profile) -> tuple[float, ...]:
    """Return where the pipe's bottom was read, ft, in order."""
    return tuple(sorted({m.stretch.middle_ft for m in profile.levels}))


def _level_near(profile: Profile, at_ft: float) -> float:
    """The station itself, or the level nearest to it where it lies beyond all of them by no more than the reach."""
    read = level_stations(profile)
    if not read or read[0] <= at_ft <= read[-1]:
        return at_ft
    near = read[0] if at_ft < read[0] else read[-1]
    return near if abs(near - at_ft) <= LEVEL_REACH_FT else at_ft

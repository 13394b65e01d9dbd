"""A line and a stretch to clean in; the stretch that the tool passes out: from the nearest way in to the far end."""

from estimator.model.profile import Profile
from estimator.model.stretch import Stretch


def passed(profile: Profile, inside: Stretch) -> Stretch:
    """Return the shortest stretch from an access of the line that holds the one to clean; that alone on a line with no way in."""
    ways = [Stretch(min(at, inside.from_ft), max(at, inside.to_ft)) for at in profile.accesses()]
    return min(ways, key=lambda way: way.length_ft, default=inside)

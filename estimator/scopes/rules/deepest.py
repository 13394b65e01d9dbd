"""A line's profile and a stretch in; the deepest center of the pipe along it out."""

from estimator.model.profile import Profile
from estimator.model.stretch import Stretch


def deepest_ft(profile: Profile, stretch: Stretch) -> float | None:
    """Deepest center of the pipe below the surface; None where one part has none that was read in its own ground."""
    stations = {stretch.from_ft, stretch.to_ft}
    stations |= {
        m.stretch.middle_ft for m in profile.marks("depth", "loc", "pothole", "invert") if m.stretch.touches(stretch)
    }
    depths = [profile.depth_to_centre_ft(at).value for at in stations]
    for part, _ in profile.zones(stretch):
        known = profile.depth_to_centre_ft(part.middle_ft)
        if known.value is None or (known.how == "assumed" and _counts(part, stretch)):
            return None
    return max((d for d in depths if d is not None), default=None)


SHORT_PART_FT = 3.0
"""A part of another ground no longer than this, such as the pit outside a slab, is dug with the rest of the stretch."""


def _counts(part: Stretch, whole: Stretch) -> bool:
    return part.length_ft > min(SHORT_PART_FT, whole.length_ft / 2)

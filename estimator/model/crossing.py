"""A buried line that crosses or follows a drain in, how near the two are out: never the drain's depth for the other line's."""

from estimator.model.line import Line, Mark
from estimator.model.profile import Profile
from estimator.model.say import Feet, Say

NEAR: dict[str, Say] = {
    "above": Say.of("{far} above the drain"),
    "below": Say.of("{far} below the drain"),
    "away": Say.of("{far} beside the drain"),
    "": Say.of("{far} from the drain"),
}
"""How near it is, by the word beside the measure in the notes."""
UNMEASURED = Say.of("distance to the drain not measured")


def near_drain(mark: Mark) -> tuple[Say, ...]:
    """Return each distance noted, or that none is."""
    known = [(label, ft) for label, ft in mark.lengths if label in NEAR]
    return tuple(Say.of(NEAR[label].text, far=Feet(ft)) for label, ft in known) or (UNMEASURED,)


def own_depth(mark: Mark, line: Line) -> tuple[Say, ...]:
    """Return its own depth: as noted, else the drain's with the distance taken off or added from the pipe's wall; () unknown."""
    if mark.depth_ft is not None:
        return (Say.of("{depth} deep", depth=Feet(mark.depth_ft)),)
    center = Profile(line).depth_to_centre_ft(mark.stretch.from_ft).value
    above, below, half = mark.length("above"), mark.length("below"), line.size_in / 24
    if center is None or (above is None and below is None):
        return ()
    depth = center - half - above if above is not None else center + half + (below or 0.0)
    return (Say.of("about {depth} deep, not measured", depth=Feet(max(0.0, depth))),)

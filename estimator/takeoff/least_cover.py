"""New pipe in the place of the old one in; where it has less soil over it outdoors than its city requires, that is said.

A way round is dug as deep as the city asks (works/around.py). A pipe renewed where it lies is held by its two ends.
"""

from collections.abc import Iterator

from estimator.model.say import Feet
from estimator.model.stretch import Stretch
from estimator.model.works import Works
from estimator.takeoff.case import Case
from estimator.works.depth import INCHES_PER_FT, outside_ft
from estimator.works.reroute_works import BURIED


def say_least_cover(case: Case, works: Works) -> None:
    """Nothing where the city was not asked, where no depth was read, or where there is enough."""
    asked = None if case.place is None else case.place.least_cover_in
    if asked is None:
        return
    laid = [one.stretch for one in works.laid if one.line == case.line.name and not one.hung]
    pulled = [one.stretch for one in works.burst if one.line == case.line.name]
    least = min((cover for stretch in (*laid, *pulled) for cover in _covers(case, stretch)), default=None)
    if least is not None and least * INCHES_PER_FT < asked:
        case.paper.assume(
            "the new pipe lies where the old one did, at its shallowest with {cover} of soil over it; the city requires "
            "{least} inches, so we ask the inspector first",
            cover=Feet(round(max(0.0, least), 2)),
            least=f"{asked:g}",
        )


def _covers(case: Case, stretch: Stretch) -> Iterator[float]:
    """Soil over the pipe, ft, at both ends of every piece outdoors and wherever a depth was read in it."""
    read = {mark.stretch.from_ft for mark in case.profile.marks("depth", "loc", "pothole", "invert")}
    for piece, zone in case.profile.zones(stretch):
        if zone not in BURIED:
            continue
        for at in sorted({piece.from_ft, piece.to_ft, *(at for at in read if piece.holds(at))}):
            depth = case.profile.depth_to_centre_ft(at)
            if depth.value is not None and depth.how != "assumed":
                yield depth.value - outside_ft(case) / 2

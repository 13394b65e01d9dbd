"""An opening and its line in; both its ends on the ground with their corners from two walls, and what to allow, out."""

from math import hypot

from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.opening import Opening
from estimator.onsite.positions import Errors, FromPoint, FromWall, allowed_ft, from_point, from_walls
from estimator.onsite.walls import side_of

Corner = tuple[tuple[str, float], ...]
"""Distances from two walls, ft; below 0 outside the wall."""


class End(Frozen):
    """One end of an opening: its middle from walls and from the nearest point that can be seen, and its corners where two walls tell them."""

    station_ft: float
    walls: tuple[FromWall, ...]
    point: FromPoint | None
    corners: tuple[Corner, ...]

    def within_ft(self, confidence_percent: float) -> float | None:
        """Return what to allow on either side; None where nothing tells."""
        return allowed_ft(self.walls, self.point, confidence_percent)

    @property
    def point_is_surer(self) -> bool:
        """Whether the way along the pipe tells the place better than the walls do."""
        return (
            self.point is not None and self.point.sigma_ft < max((w.sigma_ft for w in self.walls), default=1e9) - 1e-9
        )


def width_ft(opening: Opening) -> float:
    """How wide it is marked: a tunnel at its bottom, else at the ground."""
    return opening.bottom_width_ft if opening.kind == "tunnel" else max(opening.top_width_ft, opening.bottom_width_ft)


def ends_of(opening: Opening, job: Job, errors: Errors) -> tuple[End, ...]:
    """Return both ends at the ground; nothing for an opening that follows no line."""
    if not opening.line:
        return ()
    line = job.line(opening.line)
    along = opening.along if opening.kind == "tunnel" else opening.at_top
    out = []
    for at in (along.from_ft, along.to_ft):
        walls = from_walls(line, at, errors)
        corners = _corners(walls, from_walls(line, at + 1.0, errors), opening)
        out.append(End(at, walls, from_point(line, at, errors), corners))
    return tuple(out)


def _corners(here: tuple[FromWall, ...], ahead: tuple[FromWall, ...], opening: Opening) -> tuple[Corner, ...]:
    """Half the width to each side of the middle, square to the way the pipe runs; nothing without two walls square to each other."""
    next_ft = {w.wall: w.ft for w in ahead}
    deep = next((w for w in here if side_of(w.wall) in ("front", "back") and w.wall in next_ft), None)
    wide = next((w for w in here if side_of(w.wall) in ("left", "right") and w.wall in next_ft), None)
    if deep is None or wide is None:
        return ()
    along = (next_ft[deep.wall] - deep.ft, next_ft[wide.wall] - wide.ft)
    long = hypot(*along)
    if long < 1e-6:
        return ()
    square, half = (-along[1] / long, along[0] / long), width_ft(opening) / 2
    return tuple(
        ((deep.wall, deep.ft + far * square[0]), (wide.wall, wide.ft + far * square[1]))
        for far in (opening.offset_ft - half, opening.offset_ft + half)
    )

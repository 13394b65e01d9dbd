"""A line's footage, bends and tapes in; where each station lies on the plan, and how that is known, out.

The pipe is laid out first as the camera went: straight, turning at each bend by its degrees. That path is then turned and moved
so that it fits the places that were taped to two walls as well as it can (least squares over turn and shift; Kabsch 1976, in the
plane), and what is left over is spread between them. Without two such places its direction is a guess, and is drawn as one.
"""

from collections.abc import Callable, Sequence
from itertools import pairwise
from math import atan2, cos, hypot, radians, sin
from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.line import Line, Mark
from estimator.model.profile import Profile

XY = tuple[float, float]
Known = Literal["taped", "from one tape", "guessed"]
USUAL_DEGREES = 45.0
"""A bend written without degrees (judgment)."""


class Track(Frozen):
    """A line on the plan, ft: its corners by station, the stations that are taped to two walls, and how its direction is known."""

    line: str
    corners: tuple[tuple[float, XY], ...]
    taped: tuple[float, ...]
    known: Known

    def at(self, station_ft: float) -> XY:
        """Return where a station lies; beyond both ends straight on."""
        low, high = self._pair(station_ft)
        (a, (x0, y0)), (b, (x1, y1)) = low, high
        share = (station_ft - a) / (b - a)
        return (x0 + share * (x1 - x0), y0 + share * (y1 - y0))

    def heading(self, station_ft: float) -> XY:
        """Return the direction in which stations grow there, as a vector of length 1."""
        (_, (x0, y0)), (_, (x1, y1)) = self._pair(station_ft)
        long = hypot(x1 - x0, y1 - y0) or 1.0
        return ((x1 - x0) / long, (y1 - y0) / long)

    def sure(self, station_ft: float) -> bool:
        """Whether a station lies between two taped places."""
        return self.known == "taped" and min(self.taped) <= station_ft <= max(self.taped)

    def _pair(self, station_ft: float) -> tuple[tuple[float, XY], tuple[float, XY]]:
        for pair in pairwise(self.corners):
            if station_ft <= pair[1][0]:
                return pair
        return self.corners[-2], self.corners[-1]


def walked(line: Line, start: XY, heading: XY, from_ft: float | None = None) -> Track:
    """Return the line as the camera went from its first station, or with that station at the start; its direction is a guess."""
    profile = Profile(line)
    extent = profile.extent
    low, high = extent.from_ft, max(extent.to_ft, extent.from_ft + 1.0)
    angle, at, x, y = atan2(heading[1], heading[0]), low, 0.0, 0.0
    corners: list[tuple[float, XY]] = [(low, (0.0, 0.0))]
    for mark in profile.marks("bend"):
        station = mark.stretch.from_ft
        if low < station < high and station > at and mark.side in ("left", "right"):
            x, y = x + (station - at) * cos(angle), y + (station - at) * sin(angle)
            corners.append((station, (x, y)))
            at, angle = station, angle + radians(_turn(mark, line))
    corners.append((high, (x + (high - at) * cos(angle), y + (high - at) * sin(angle))))
    track = Track(line.name, tuple(corners), (), "guessed")
    bx, by = track.at(low if from_ft is None else from_ft)
    return _moved(track, lambda p: (p[0] - bx + start[0], p[1] - by + start[1]))


def _turn(mark: Mark, line: Line) -> float:
    """Degrees to the left, seen the way stations grow; the log gives the side as the camera looked."""
    sign = next((p.sign for p in line.passes if p.number == mark.origin.pass_number), 1)
    left = 1 if mark.side == "left" else -1
    return left * sign * (mark.degrees or USUAL_DEGREES)


def fitted(track: Track, taped: Sequence[tuple[float, XY]]) -> Track:
    """Return the track turned and moved onto its taped places, and bent to pass through them. One place moves it alone."""
    if not taped:
        return track
    found = sorted(dict(taped).items())
    moved = _fit(track, found)
    stations = tuple(s for s, _ in found)
    known: Known = "taped" if len(found) > 1 else "from one tape"
    corners = sorted({s for s, _ in moved.corners} | set(stations))
    left = [(s, (x - moved.at(s)[0], y - moved.at(s)[1])) for s, (x, y) in found]
    return Track(track.line, tuple((s, _bent(moved.at(s), s, left)) for s in corners), stations, known)


def _fit(track: Track, taped: Sequence[tuple[float, XY]]) -> Track:
    """The best turn and shift: the angle of the sum of cross and dot products about both centers."""
    own = [track.at(s) for s, _ in taped]
    n = len(taped)
    cx, cy = sum(p[0] for p in own) / n, sum(p[1] for p in own) / n
    tx, ty = sum(p[0] for _, p in taped) / n, sum(p[1] for _, p in taped) / n
    dot = cross = 0.0
    for (x, y), (_, (u, v)) in zip(own, taped, strict=True):
        dot += (x - cx) * (u - tx) + (y - cy) * (v - ty)
        cross += (x - cx) * (v - ty) - (y - cy) * (u - tx)
    turn = atan2(cross, dot) if dot or cross else 0.0
    c, s = cos(turn), sin(turn)

    def placed(p: XY) -> XY:
        x, y = p[0] - cx, p[1] - cy
        return (tx + c * x - s * y, ty + s * x + c * y)

    return _moved(track, placed)


def _bent(point: XY, station_ft: float, left: Sequence[tuple[float, XY]]) -> XY:
    """The point with what is left over at the taped places, in proportion between two of them, as at the nearest beyond."""
    below = [one for one in left if one[0] <= station_ft]
    above = [one for one in left if one[0] >= station_ft]
    if not below or not above:
        dx, dy = (below[-1] if below else above[0])[1]
    else:
        (a, (x0, y0)), (b, (x1, y1)) = below[-1], above[0]
        share = (station_ft - a) / (b - a) if b > a else 0.0
        dx, dy = x0 + share * (x1 - x0), y0 + share * (y1 - y0)
    return (point[0] + dx, point[1] + dy)


def _moved(track: Track, place: Callable[[XY], XY]) -> Track:
    return Track(track.line, tuple((s, place(p)) for s, p in track.corners), track.taped, track.known)

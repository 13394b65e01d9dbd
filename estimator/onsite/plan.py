"""A job in, its drains and house on a plan out: coordinates in ft, and which parts nobody measured.

Lines are placed one after another: the one with the most taped places first, the others from where they join.
"""

from collections.abc import Mapping, Sequence
from math import hypot

from estimator.model.afterwards import LiftHeight
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.onsite.dead_reckoning import XY, Track, fitted, walked
from estimator.onsite.sections import lower_end
from estimator.onsite.walls import Walls, tapes_by_place, walls_of

UNKNOWN_PLACE: XY = (0.0, 0.0)
MARGIN_FT = 6.0
"""So far beyond the drain an outer wall is drawn that nobody measured (judgment; it is drawn as not measured)."""


class Outline(Frozen):
    """The house: its four sides, ft, and which of them were measured."""

    left: float
    right: float
    front: float
    back: float
    measured: frozenset[str]


class Plan(Frozen):
    """Tracks by line, in the order of the notes, and the house."""

    tracks: Mapping[str, Track]
    walls: Walls
    outline: Outline | None


def plan_of(job: Job, heights: Sequence[LiftHeight] = ()) -> Plan:
    """Return every line on the plan, and the house where a line runs under it. The front of the house is at the bottom."""
    walls = walls_of(job, heights)
    taped = {line.name: _taped(line, walls) for line in job.lines}
    waiting = sorted(job.lines, key=lambda line: -sum(None not in xy for _, xy in taped[line.name]))
    tracks: dict[str, Track] = {}
    while waiting:
        line = next((one for one in waiting if not tracks or _start(one, job, tracks)), waiting[0])
        waiting.remove(line)
        start, heading, at = _start(line, job, tracks) or _alone(line, len(tracks))
        guess = walked(line, start, heading, at)
        tracks[line.name] = _joined(_placed(line, taped[line.name], guess), line, tracks)
    ordered = {line.name: tracks[line.name] for line in job.lines}
    return Plan(ordered, walls, _outline(job, ordered, walls, heights))


def _taped(line: Line, walls: Walls) -> list[tuple[float, tuple[float | None, float | None]]]:
    """Taped places of a line with what is known of their coordinates."""
    found = ((at, walls.xy(tapes)) for at, tapes in tapes_by_place(line).items())
    return [(at, xy) for at, xy in found if xy != (None, None)]


def _placed(line: Line, taped: Sequence[tuple[float, tuple[float | None, float | None]]], guess: Track) -> Track:
    """The line fitted to its tapes: places taped to two walls where there are any, else those of one with the other as guessed."""
    both = [(at, (x, y)) for at, (x, y) in taped if x is not None and y is not None]
    if both:
        return fitted(guess, both)
    half = [(at, (guess.at(at)[0] if x is None else x, guess.at(at)[1] if y is None else y)) for at, (x, y) in taped]
    return fitted(guess, half[:1])


def _alone(line: Line, number: int) -> tuple[XY, XY, float]:
    """A line nobody tied to anything: from the slab edge straight in from the front, or beside the others."""
    edge = Profile(line).slab_edge_ft
    away = -1.0 if line.downstream > 0 else 1.0
    return (number * 15.0, 0.0), (0.0, away), Profile(line).extent.from_ft if edge is None else edge


def _start(line: Line, job: Job, tracks: Mapping[str, Track]) -> tuple[XY, XY, float] | None:
    """Where it joins a line that is placed, or where one that is placed joins it; None where neither is."""
    if line.joins is not None and line.joins.line in tracks:
        parent = tracks[line.joins.line]
        own_end = lower_end(line)
        side = _side(job.line(line.joins.line), line.joins.station_ft)
        up = _upstream(parent, job.line(line.joins.line), line.joins.station_ft)
        ahead = up if side == "" else _turned(up, "right" if side == "left" else "left")
        grows = ahead if line.downstream < 0 else (-ahead[0], -ahead[1])
        return parent.at(line.joins.station_ft), grows, own_end
    for other in job.lines:
        if other.joins is not None and other.joins.line == line.name and other.name in tracks:
            track, end = tracks[other.name], lower_end(other)
            up = _upstream(track, other, end)
            grows = up if line.downstream < 0 else (-up[0], -up[1])
            return track.at(end), grows, other.joins.station_ft
    return None


def _joined(track: Track, line: Line, tracks: Mapping[str, Track]) -> Track:
    """A line whose own tapes moved it off the line it joins is stretched back to the joint at its lower end."""
    if line.joins is None or line.joins.line not in tracks or not track.taped:
        return track
    at, end = tracks[line.joins.line].at(line.joins.station_ft), lower_end(line)
    inside = tuple(c for c in track.corners if abs(c[0] - end) > 1e-6)
    return Track(track.line, tuple(sorted([*inside, (end, at)])), track.taped, track.known)


def _upstream(track: Track, line: Line, station_ft: float) -> XY:
    dx, dy = track.heading(station_ft)
    return (-dx, -dy) if line.downstream > 0 else (dx, dy)


def _side(parent: Line, station_ft: float) -> str:
    """The side a branch joins on, looking with the flow; "" straight on or not noted."""
    near = [b for b in Profile(parent).branches if abs(b.station_ft - station_ft) < 1.0]
    side = near[0].side if near else None
    return side if side in ("left", "right") else ""


def _turned(way: XY, side: str) -> XY:
    return (-way[1], way[0]) if side == "left" else (way[1], -way[0])


def _outline(job: Job, tracks: Mapping[str, Track], walls: Walls, heights: Sequence[LiftHeight]) -> Outline | None:
    """Walls where they were measured, else a little beyond the drains under the slab and what was taped in the house."""
    inside = [track.at(at) for line in job.lines for track in [tracks[line.name]] for at in indoors(line)]
    corners = [corner(h, walls) for h in heights]
    points = [*inside, *(c for c in corners if c is not None)]
    if not points:
        return None
    xs, ys = [x for x, _ in points], [y for _, y in points]
    reach = {"left": min(xs), "right": max(xs), "front": min(ys), "back": max(ys)}
    known = {side: at for side in reach if (at := getattr(walls, side)) is not None}
    wide = [c for c in corners if c is not None]
    known |= _from_corners(wide, known)
    guessed = {side: at + (MARGIN_FT if side in ("right", "back") else -MARGIN_FT) for side, at in reach.items()}
    if "front" not in known and any(Profile(line).slab_edge_ft is not None for line in job.lines):
        guessed["front"] = reach["front"]
    at = guessed | known
    return Outline(at["left"], at["right"], at["front"], at["back"], frozenset(known))


def _from_corners(corners: Sequence[XY], known: Mapping[str, float]) -> dict[str, float]:
    """The sides on which corners of the house lie that were taped for a lift."""
    if len(corners) < 3:
        return {}
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    found = {"left": min(xs), "right": max(xs), "front": min(ys), "back": max(ys)}
    return {side: at for side, at in found.items() if side not in known}


def corner(height: LiftHeight, walls: Walls) -> XY | None:
    """Return where a lift height was read; None where its walls are not on the plan."""
    x, y = walls.xy(dict(height.from_walls))
    return None if x is None or y is None else (x, y)


def indoors(line: Line) -> list[float]:
    """Return both ends of every part of a line under the house."""
    profile = Profile(line)
    parts = [part for part, zone in profile.zones(profile.extent) if zone in ("slab", "crawl", "basement")]
    return [end for part in parts for end in (part.from_ft, part.to_ft)]


def distance_ft(one: XY, other: XY) -> float:
    return hypot(one[0] - other[0], one[1] - other[1])

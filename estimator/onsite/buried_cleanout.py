"""A line's sightings, locates and tapes in; the spot to probe for a cleanout that is buried, with what to allow, out."""

from collections.abc import Sequence
from itertools import pairwise
from math import hypot

from estimator.model.frozen import Frozen
from estimator.model.line import Line, Mark, plain_wall
from estimator.model.profile import Profile
from estimator.onsite.positions import Errors, FromWall, from_walls
from estimator.onsite.sightings import SAME_FT, Fitting, fittings_of
from estimator.tables.tables import Tables

HEAD_FT = 0.75
"""A locate no farther than this from a sighting was taken with the camera standing in the fitting."""
PAIR_FT = 3.0
"""Two wyes that point up so near to each other are what a two-way cleanout looks like from below (common practice)."""


class Spot(Frozen):
    """Where to probe: along the line and from walls, each with its standard error; depth of the pipe's top below the surface there.

    `located` counts locates taken at the fitting itself; without one the place comes from footage alone.
    """

    line: str
    fitting: Fitting
    walls: tuple[FromWall, ...]
    located: int
    pipe_top_ft: float | None
    surface: str
    suspected: bool


def buried_cleanouts(line: Line, tables: Tables) -> tuple[Spot, ...]:
    """Return a spot for each buried cleanout noted, and for each pair of wyes pointing up that may be one."""
    errors, reading = Errors.of(tables), tables.number("reel_reading_error_ft")
    fittings = fittings_of(line, reading, errors.counter)
    noted = [f for f in fittings if f.word == "cleanout" and "buried" in f.signs]
    return tuple(
        [_spot(line, f, errors, reading, False) for f in noted]
        + [_spot(line, f, errors, reading, True) for f in _pairs(fittings)]
    )


def _pairs(fittings: Sequence[Fitting]) -> list[Fitting]:
    up = [f for f in fittings if f.word == "branch" and "up" in f.signs and not f.name]
    return [a for a, b in pairwise(up) if b.station_ft - a.station_ft <= PAIR_FT]


def _spot(line: Line, fitting: Fitting, errors: Errors, reading_ft: float, suspected: bool) -> Spot:
    profile, at = Profile(line), fitting.station_ft
    locates = _locates_at(line, fitting)
    walls = _from_locates(locates, errors, reading_ft) if locates else _from_footage(line, fitting, errors)
    depth = profile.depth_to_centre_ft(at).value
    top = None if depth is None else max(0.0, depth - profile.bore_in(at).value / 24)
    zone = profile.zone(at).value or ""
    return Spot(line.name, fitting, walls, len(locates), top, zone, suspected)


def _locates_at(line: Line, fitting: Fitting) -> list[Mark]:
    """Locates taped to a wall while the camera stood in the fitting: same run, same reading."""
    return [
        m
        for m in line.marks
        if m.word in ("loc", "pothole")
        and m.ties
        and abs(m.stretch.middle_ft - fitting.station_ft) < SAME_FT
        and any(
            s.run == m.origin.pass_number and abs((m.origin.reading_ft or 0.0) - s.reading_ft) <= HEAD_FT
            for s in fitting.sightings
        )
    ]


def _from_locates(locates: Sequence[Mark], errors: Errors, reading_ft: float) -> tuple[FromWall, ...]:
    """The mean of what each locate was taped to a wall: footage has no part in it, but for where in the fitting the head stood."""
    own = hypot(errors.spot_ft, errors.tape_ft, reading_ft)
    taped: dict[str, list[float]] = {}
    for mark in locates:
        for tie in mark.ties:
            taped.setdefault(plain_wall(tie.to), []).append(tie.length_ft)
    return tuple(
        FromWall(wall, sum(found) / len(found), own / len(found) ** 0.5, 0.0) for wall, found in sorted(taped.items())
    )


def _from_footage(line: Line, fitting: Fitting, errors: Errors) -> tuple[FromWall, ...]:
    """Between taped places along the line; what the station is off counts as the distance changes along the line."""
    out = []
    ahead = {w.wall: w.ft for w in from_walls(line, fitting.station_ft + 1.0, errors)}
    for wall in from_walls(line, fitting.station_ft, errors):
        grows = ahead[wall.wall] - wall.ft if wall.wall in ahead else 1.0
        sigma = hypot(wall.sigma_ft, min(abs(grows), 1.0) * fitting.sigma_ft)
        out.append(FromWall(wall.wall, wall.ft, sigma, wall.away_ft))
    return tuple(out)

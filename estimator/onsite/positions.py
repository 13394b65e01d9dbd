"""A line's tapes to walls in; where any station lies on the ground, as distances from those walls with their errors, out.

Between two places that were taped to one wall the distance runs in a straight line. The error grows with the way to the
nearest taped place: the cable counter is off by its share, and nobody says that the pipe runs straight.
"""

from collections.abc import Sequence
from math import hypot
from statistics import NormalDist

from estimator.model.answers import INDOOR_ZONES
from estimator.model.frozen import Frozen
from estimator.model.line import Line, Mark, Tie, plain_wall
from estimator.model.profile import Profile
from estimator.model.say import Say
from estimator.onsite.ways_in import named_ways
from estimator.tables.tables import Tables


class Errors(Frozen):
    """Standard errors: of a locate on the ground and a tape, ft; of the counter and of an unseen bow, shares of the way."""

    spot_ft: float
    tape_ft: float
    counter: float
    bow: float

    @classmethod
    def of(cls, tables: Tables) -> "Errors":
        """Return the firm's own. Errors: KeyError where the settings lack one."""
        return cls(
            spot_ft=tables.number("locate_spot_error_ft"),
            tape_ft=tables.number("tape_error_ft"),
            counter=tables.number("counter_error_percent") / 100,
            bow=tables.number("bow_error_percent") / 100,
        )


class FromWall(Frozen):
    """A distance from one wall, ft, and its standard error; `away_ft` is how far along the pipe the nearest tape lies."""

    wall: str
    ft: float
    sigma_ft: float
    away_ft: float

    def within_ft(self, confidence_percent: float) -> float:
        """Return what must be allowed on either side so that the true place lies within as often as that.

        >>> round(FromWall("front wall", 12, 0.5, 0).within_ft(80), 2)  # 1.28 standard errors
        0.64
        """
        return within_ft(self.sigma_ft, confidence_percent)


def within_ft(sigma_ft: float, confidence_percent: float) -> float:
    """Return what must be allowed on either side of a value so that the true one lies within as often as that."""
    return NormalDist().inv_cdf(0.5 + confidence_percent / 200) * sigma_ft


def from_walls(line: Line, station_ft: float, errors: Errors) -> tuple[FromWall, ...]:
    """Return the distances of a station from every wall that two places of the line, or this very place, were taped to."""
    taped: dict[str, list[tuple[float, float]]] = {}
    for mark, tie, length_ft in tapes_of(line):
        taped.setdefault(plain_wall(tie.to), []).append((mark.stretch.middle_ft, length_ft))
    found = (_from_wall(wall, sorted(places), station_ft, errors) for wall, places in sorted(taped.items()))
    return tuple(one for one in found if one is not None)


def _from_wall(wall: str, places: list[tuple[float, float]], station_ft: float, errors: Errors) -> FromWall | None:
    near = min(places, key=lambda place: abs(place[0] - station_ft))
    away = abs(near[0] - station_ft)
    own = hypot(errors.spot_ft, errors.tape_ft)
    if away < HERE_FT:
        return FromWall(wall, near[1], own, away)
    if len({station for station, _ in places}) < 2:
        return None
    below = [p for p in places if p[0] <= station_ft]
    above = [p for p in places if p[0] > station_ft]
    low, high = (
        (below[-1], above[0]) if below and above else (places[-2], places[-1]) if below else (places[0], places[1])
    )
    share = (station_ft - low[0]) / (high[0] - low[0])
    ends = own * hypot(1 - share, share)
    return FromWall(wall, low[1] + share * (high[1] - low[1]), hypot(ends, (errors.counter + errors.bow) * away), away)


HERE_FT = 0.05


class FromPoint(Frozen):
    """A distance along the pipe from a point that can be seen on site, ft, and its standard error; `upstream` of it or not."""

    point: Say
    ft: float
    sigma_ft: float
    upstream: bool

    def within_ft(self, confidence_percent: float) -> float:
        """Return what must be allowed on either side so that the true place lies within as often as that."""
        return within_ft(self.sigma_ft, confidence_percent)


def from_point(line: Line, station_ft: float, errors: Errors) -> FromPoint | None:
    """Return the way to a station from the nearest way in, slab edge or place that was located and taped; None without any."""
    points: dict[float, Say] = {at: Say.of("the {way_in}", way_in=name) for at, name in named_ways(line).items()}
    if (edge := Profile(line).slab_edge_ft) is not None:
        points.setdefault(edge, Say.of("the slab edge"))
    for mark, *_ in tapes_of(line):
        named = Say.of("flag {flag}", flag=mark.flag) if mark.flag else Say.of("the taped point")
        points.setdefault(mark.stretch.middle_ft, named)
    if not points:
        return None
    at = min(points, key=lambda point: abs(point - station_ft))
    away = abs(station_ft - at)
    sigma = hypot(errors.spot_ft, errors.tape_ft, (errors.counter + errors.bow) * away)
    return FromPoint(points[at], away, sigma, (station_ft - at) * line.downstream < 0)


BESIDE_FT = 1.5
"""A tape so little longer than the way along the pipe from the slab edge was still taken square to the wall (judgment)."""


def tapes_of(line: Line) -> list[tuple[Mark, Tie, float]]:
    """Return every tape of the line with its length, below 0 where it was taken outside the wall it runs to.

    A place outdoors lies outside a wall if the pipe from the slab edge to there is long enough for the tape; a longer tape runs
    to another wall, along which the place lies.
    """
    profile = Profile(line)
    edge = profile.slab_edge_ft
    out = []
    for mark in line.marks:
        at = mark.stretch.middle_ft
        outdoors = bool(mark.ties) and edge is not None and profile.zone(at).value not in (*INDOOR_ZONES, "crawl", None)
        for tie in mark.ties:
            outside = outdoors and tie.length_ft <= abs(at - (edge or 0.0)) + BESIDE_FT
            out.append((mark, tie, -tie.length_ft if outside else tie.length_ft))
    return out


def allowed_ft(walls: Sequence[FromWall], point: FromPoint | None, confidence_percent: float) -> float | None:
    """Return what to allow at a station, by the surer of tapes and the way along the pipe; None where neither tells."""
    sure = [max(w.within_ft(confidence_percent) for w in walls)] if walls else []
    if point is not None:
        sure.append(point.within_ft(confidence_percent))
    return min(sure, default=None)

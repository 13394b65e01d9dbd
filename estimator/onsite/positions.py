"""A line's tapes to walls in; where any station lies on the ground, as distances from those walls with their errors, out.

Between two places that were taped to one wall the distance runs in a straight line. The error grows with the way to the
nearest taped place: the cable counter is off by its share, and nobody says that the pipe runs straight.
"""

from dataclasses import dataclass
from math import hypot
from statistics import NormalDist

from estimator.model.answers import INDOOR_ZONES
from estimator.model.line import Line, Mark, Tie, plain_wall
from estimator.model.profile import Profile
from estimator.tables.tables import Tables


@dataclass(frozen=True, slots=True)
class Errors:
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


@dataclass(frozen=True, slots=True)
class FromWall:
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
        return NormalDist().inv_cdf(0.5 + confidence_percent / 200) * self.sigma_ft


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

"""Lift heights at places taped to two walls in; how far the slab rose anywhere on that plan, with its error, out.

A slab is raised from its edges and bends little between: heights run evenly along its sides, as over a sheet held at its four
corners (bilinear). With fewer than four places the tilt is taken to be none, give or take what a house of the trade tilts.
"""

from collections.abc import Sequence

from estimator.model.afterwards import LiftHeight
from estimator.model.frozen import Frozen
from estimator.model.line import Line, plain_wall
from estimator.onsite.least_squares import Equation, Solution, solve
from estimator.onsite.positions import Errors, from_walls

TILT_IN_PER_FT, TWIST_IN_PER_SQ_FT = 0.1, 0.005
"""How far a slab's rise may change from place to place where nothing was read, standard errors (judgment): 3 in over 30 ft, and
a corner of a house 30 by 30 ft by 4 1/2 in off the plane of the other three."""


class Rise(Frozen):
    """How far the slab rose at one place, inches, and its standard error."""

    inches: float
    sigma_in: float


class Place(Frozen):
    """Distances from the two walls of the plan, ft, and the standard error of each."""

    x_ft: float
    y_ft: float
    sigma_ft: float = 0.0


class Surface(Frozen):
    """The slab after the lift: rise = c + ax + by + dxy over the distances from two walls."""

    walls: tuple[str, str]
    middle: tuple[float, float]
    solution: Solution

    def at(self, place: Place) -> Rise:
        """Return the rise at a place; what the place itself may be off counts with the tilt there."""
        parts = _parts(place.x_ft - self.middle[0], place.y_ft - self.middle[1])
        _, a, b, d = self.solution.values
        tilt_x = a + d * (place.y_ft - self.middle[1])
        tilt_y = b + d * (place.x_ft - self.middle[0])
        moved = (tilt_x**2 + tilt_y**2) ** 0.5 * place.sigma_ft
        return Rise(self.solution.at(parts), (self.solution.sigma(parts) ** 2 + moved**2) ** 0.5)

    def difference(self, one: Place, other: Place) -> Rise:
        """Return how much more the slab rose at the one place than at the other: errors they share fall out."""
        first = _parts(one.x_ft - self.middle[0], one.y_ft - self.middle[1])
        second = _parts(other.x_ft - self.middle[0], other.y_ft - self.middle[1])
        parts = [(n, a - b) for (n, a), (_, b) in zip(first, second, strict=True)]
        own = [self.at(p).sigma_in ** 2 - self.solution.sigma(q) ** 2 for p, q in ((one, first), (other, second))]
        return Rise(self.solution.at(parts), (self.solution.sigma(parts) ** 2 + sum(own)) ** 0.5)

    def place_of(self, line: Line, station_ft: float, errors: Errors) -> Place | None:
        """Return where a station of a line lies on the plan; None where it is not taped to both walls."""
        found = {wall.wall: wall for wall in from_walls(line, station_ft, errors)}
        if not all(wall in found for wall in self.walls):
            return None
        x, y = (found[wall] for wall in self.walls)
        return Place(x.ft, y.ft, max(x.sigma_ft, y.sigma_ft))


def surface_of(heights: Sequence[LiftHeight], sigma_in: float) -> Surface:
    """Return the surface through lift heights, each known to `sigma_in`. Errors: ValueError for none, or two places on different walls.

    >>> def raised(x, y, inches):
    ...     return LiftHeight(name="", from_walls=(("front", x), ("east", y)), raised_ft=inches / 12)
    >>> four = [raised(0, 0, 2.0), raised(30, 0, 1.0), raised(0, 40, 0.0), raised(30, 40, 1.0)]
    >>> round(surface_of(four, 0.1).at(Place(15, 20)).inches, 2)
    1.0
    """
    if not heights:
        raise ValueError("a lift has at least one height")
    walls = tuple(plain_wall(wall) for wall, _ in heights[0].from_walls)
    places = [{plain_wall(wall): ft for wall, ft in h.from_walls} for h in heights]
    if len(walls) != 2 or any(set(p) != set(walls) for p in places):
        raise ValueError("every place is taped to the same two walls")
    xs, ys = ([p[wall] for p in places] for wall in walls)
    middle = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    read = [
        Equation(tuple(_parts(x - middle[0], y - middle[1])), h.raised_ft * 12, sigma_in)
        for x, y, h in zip(xs, ys, heights, strict=True)
    ]
    even = [
        Equation(((n, 1.0),), 0.0, s) for n, s in ((1, TILT_IN_PER_FT), (2, TILT_IN_PER_FT), (3, TWIST_IN_PER_SQ_FT))
    ]
    return Surface((walls[0], walls[1]), middle, solve(4, [*read, *even]))


def _parts(x_ft: float, y_ft: float) -> list[tuple[int, float]]:
    return [(0, 1.0), (1, x_ft), (2, y_ft), (3, x_ft * y_ft)]

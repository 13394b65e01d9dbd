"""A job's tapes and lift heights in; the house's walls on a plan with the front at the bottom, and any tape as coordinates, out."""

from collections.abc import Mapping, Sequence

from estimator.model.afterwards import LiftHeight
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.line import Line, plain_wall
from estimator.onsite.positions import tapes_of

FRONT, BACK = ("front", "south"), ("back", "rear", "north")
RIGHT, LEFT = ("right", "east"), ("left", "west")
XY = tuple[float, float]


class Walls(Frozen):
    """Where the outer walls stand, ft; None where no tape or lift height tells. x grows to the right, y away from the front.

    `names` are the words by which each wall was taped.
    """

    front: float | None
    back: float | None
    left: float | None
    right: float | None
    names: tuple[tuple[str, str], ...]

    def xy(self, tapes: Mapping[str, float]) -> tuple[float | None, float | None]:
        """Return the coordinates of a place from its tapes (wall, ft into the house); None along an axis it was not taped in."""
        x = y = None
        for wall, ft in tapes.items():
            side = side_of(wall)
            at = getattr(self, side) if side else None
            if at is not None:
                value = at + ft if side in ("front", "left") else at - ft
                x, y = (value, y) if side in ("left", "right") else (x, value)
        return x, y


def tapes_by_place(line: Line) -> dict[float, dict[str, float]]:
    """Return the tapes of each taped station, by wall; below 0 outside the wall."""
    out: dict[float, dict[str, float]] = {}
    for mark, tie, ft in tapes_of(line):
        out.setdefault(mark.stretch.middle_ft, {})[tie.to] = ft
    return out


def side_of(wall: str) -> str:
    """Return front, back, left or right for a wall's name; "" for one inside the house or anything else.

    >>> side_of("the East wall"), side_of("rear wall"), side_of("hall wall"), side_of("drive edge")
    ('right', 'back', '', '')
    """
    words = plain_wall(wall).split()
    if "wall" not in words:
        return ""
    sides = (("front", FRONT), ("back", BACK), ("right", RIGHT), ("left", LEFT))
    return next((side for side, known in sides if any(word in known for word in words)), "")


def walls_of(job: Job, heights: Sequence[LiftHeight] = ()) -> Walls:
    """Return the walls. The front and one side make the zero; the others stand where one place was taped to both of a pair."""
    taped = [tapes for line in job.lines for tapes in tapes_by_place(line).values()]
    taped += [dict(h.from_walls) for h in heights]
    sides = [{side: ft for wall, ft in one.items() if (side := side_of(wall))} for one in taped]
    front, back = _pair(sides, "front", "back")
    right, left = _pair(sides, "right", "left")
    names = {side: plain_wall(wall) for one in taped for wall in one if (side := side_of(wall))}
    return Walls(
        front=front,
        back=None if back is None else back if front is not None else 0.0,
        right=right,
        left=None if left is None else -left if right is not None else 0.0,
        names=tuple(sorted(names.items())),
    )


def _pair(sides: Sequence[dict[str, float]], one: str, other: str) -> tuple[float | None, float | None]:
    """Where the first wall of a pair stands (0), and how far away the second; None where nothing tells."""
    both = [s[one] + s[other] for s in sides if one in s and other in s]
    firsts, seconds = any(one in s for s in sides), any(other in s for s in sides)
    if both:
        return 0.0, sum(both) / len(both)
    if firsts:
        return 0.0, None
    return None, 0.0 if seconds else None

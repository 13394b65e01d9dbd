"""A line and the repairs on it in; its length and its parts' as they stand on paper, rounded once, out.

Parts are rounded to the step of their line, and what stays old is what they leave of it: on paper, too, they make up the whole.
"""

from collections.abc import Iterable
from math import floor

from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch, missing
from estimator.wording.numbers import INCHES_IN_FT, SHOW_INCHES_BELOW_FT

LONG_LINE_STEP_FT, SHORT_LINE_STEP_FT = 0.5, 1 / INCHES_IN_FT


def on_paper(line: Line, length_ft: float) -> float:
    """To the half foot on a line so long that its own length is told so, to the inch on a short one; never nothing."""
    step = _step(line)
    return max(1, int(length_ft / step + 0.5)) * step


def to_the_step(line: Line, station_ft: float) -> float:
    """Return a station to the step in which the line's lengths are told, ft."""
    step = _step(line)
    return floor(station_ft / step + 0.5) * step


def _step(line: Line) -> float:
    long = Profile(line).extent.length_ft >= SHOW_INCHES_BELOW_FT
    return LONG_LINE_STEP_FT if long else SHORT_LINE_STEP_FT


def old_on_paper(line: Line, renewed: Iterable[Stretch]) -> float:
    """What the renewed stretches leave of the line; 0 where that is less than a step of its length."""
    whole, parts = Profile(line).extent, list(renewed)
    if not any(part.length_ft for part in missing(whole, parts)):
        return 0.0
    covered, before = 0.0, list[Stretch]()
    for part in parts:
        fresh = sum(piece.length_ft for piece in missing(part, before) if whole.touches(piece))
        covered += on_paper(line, fresh) if fresh else 0.0
        before.append(part)
        whole = whole.union(part)
    return max(0.0, on_paper(line, whole.length_ft) - covered)

"""How a line's stations and heights fall on the drawing: its scale, its colors, its View."""

from estimator.model.frozen import Frozen
from estimator.model.line import Line
from estimator.model.stretch import Stretch
from estimator.papers.heights import Points

WIDTH, LEFT, RIGHT = 660.0, 62.0, 14.0
MOST_SCALE = 26.0  # points a foot: a short line is not blown up further
LEAST_SECTION = 38.0  # points: a section lower than this is drawn with its heights enlarged
MOST_TIMES = 4
BAR, SMALL, TINY = 11.0, 10.5, 9.5
INK, QUIET, RED, AMBER = "#222B33", "#5B6770", "#B3261E", "#B7791F"
SOIL, CONCRETE, PIPE, GRASS = "#EFE7DA", "#B9BEC2", "#2F3E48", "#6B7A4B"
GUESSED_DEPTH_FT, USUAL_SLAB_FT = 3.0, 4 / 12
HARD = ("slab", "basement", "drive", "walk", "street")


class View(Frozen, dict=True):
    """How a line's stations and heights fall on the sheet."""

    line: Line
    known: Points
    ground: Points
    whole: Stretch
    scale: float
    times: int
    top: float
    highest_ft: float

    def x(self, at_ft: float) -> float:
        return LEFT + (at_ft - self.whole.from_ft) * self.scale

    def y(self, height_ft: float) -> float:
        return self.top + (self.highest_ft - height_ft) * self.scale * self.times

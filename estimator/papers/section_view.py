"""How a line's stations and heights fall on the drawing: its scale, its colors, its View."""

from estimator.model.frozen import Frozen, replace
from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.papers.heights import Points, height_at, pipe, surface
from estimator.papers.letter import Letter

WIDTH, LEFT, RIGHT = 660.0, 62.0, 14.0
MOST_SCALE = 26.0  # points a foot: a short line is not blown up further
LEAST_SECTION = 38.0  # points: a section lower than this is drawn with its heights enlarged
MOST_TIMES = 4
BAR, SMALL, TINY = 11.0, 10.5, 9.5
INK, QUIET, RED, AMBER = "#222B33", "#5B6770", "#B3261E", "#B7791F"
SOIL, CONCRETE, PIPE, GRASS = "#EFE7DA", "#B9BEC2", "#2F3E48", "#6B7A4B"
GUESSED_DEPTH_FT, USUAL_SLAB_FT, BELOW_FT = 3.0, 4 / 12, 0.7
HEAD = 52.0
"""Points above the section: the line's name, rooms, letters."""
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

    @property
    def lowest_ft(self) -> float:
        """The height of the drawing's lower edge: below the pipe, or below where it is guessed."""
        return min([height for _, height in self.known] or [self.highest_ft - GUESSED_DEPTH_FT]) - BELOW_FT

    @property
    def bottom(self) -> float:
        """Where the bars begin, below the axis."""
        return self.y(self.lowest_ft) + 16

    def pipe_ft(self, at_ft: float) -> float:
        """The height of the pipe there, as measured or guessed."""
        return height_at(self.known, at_ft) if self.known else self.highest_ft - GUESSED_DEPTH_FT


def extent(letter: Letter, line: Line) -> Stretch:
    """Return the stations to draw: the line, and every opening of an option for it."""
    whole = Profile(line).extent
    for option in letter.quote.options:
        for opening in option.works.openings:
            if opening.line == line.name:
                whole = whole.union(opening.at_top)
    return whole if whole.length_ft >= 1 else whole.padded(0.5, 0.5)


def view_of(letter: Letter, line: Line, whole: Stretch, scale: float, top: float) -> View:
    """Return the line's view below `top`: heights enlarged by a whole number where the section would be too low to read."""
    profile, floor_ft = Profile(line), letter.quote.job.house.slab_above_grade_ft or 0.0
    known = pipe(profile, floor_ft)
    ground = _to_the_ends(surface(profile, floor_ft) or ((whole.from_ft, 0.0), (whole.to_ft, 0.0)), whole)
    plain = View(line, known, ground, whole, scale, 1, top + HEAD, max(height for _, height in ground))
    high = (plain.highest_ft - plain.lowest_ft) * scale
    return replace(plain, times=next((t for t in range(1, MOST_TIMES) if high * t >= LEAST_SECTION), MOST_TIMES))


def _to_the_ends(ground: Points, whole: Stretch) -> Points:
    """The ground as far as the drawing goes, level beyond what was noted."""
    (first, low), (last, high) = ground[0], ground[-1]
    before: Points = ((whole.from_ft, low),) if whole.from_ft < first else ()
    after: Points = ((whole.to_ft, high),) if whole.to_ft > last else ()
    return (*before, *ground, *after)

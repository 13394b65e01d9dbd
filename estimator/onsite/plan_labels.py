"""Words and the places they belong to in; where each is written so that it covers nothing written before, out."""

from dataclasses import dataclass, field

from estimator.drawing.canvas import Canvas

Box = tuple[float, float, float, float]
XY = tuple[float, float]
Try = tuple[XY, tuple[int, int], Box]
"""A point, the step away from it, and the room the words would take there."""
SIZE = 9.0
STEPS = (
    *((across, down) for down in (-5, 6) for across in (7, -7)),
    *((0, down) for down in (-11, 12)),
    *(
        (across, down)
        for far in (1, 2, 3, 4, 5)
        for down in (-5 - 11 * far, 6 + 11 * far)
        for across in (7, -7, 0, 30, -30)
    ),
    *((across, down) for across in (30, -30, 60, -60) for down in (0, -11, 12)),
    *((across, down) for far in (2, 3, 4, 5) for across in (60, -60, 90, -90) for down in (-11 * far, 11 * far)),
)
"""Places tried around the point, in points of the screen: right of it first, then left, above and below, then farther off."""
FAR = 14
"""Words farther off than this get a thin line to their point."""
APART = 3.0
"""Points kept free between words side by side."""
WORDS_COUNT, OFF_COUNTS = 20.0, 100.0
"""So many times as bad as words over a line or a disc are words over words, and words off the sheet (judgment)."""


@dataclass(slots=True)
class Labels:
    """Writes on a part of a canvas and remembers what is taken, by words and by what is drawn."""

    canvas: Canvas
    within: Box
    written: list[Box] = field(default_factory=list)
    drawn: list[Box] = field(default_factory=list)

    def keep(self, box: Box) -> None:
        """Take room that words should not cover."""
        self.drawn.append(box)

    def write(self, at: XY | list[XY], words: str, color: str, size: float = SIZE, bold: bool = False) -> None:
        """Write beside a point, or the best of several, where there is room, else where it covers least; farther off with a thin line to it."""
        points = at if isinstance(at, list) else [at]
        wide = self.canvas.wide(words, size, bold)
        point, (across, down), box = self._best(
            [(point, step, _box(point, step, wide, size)) for step in STEPS for point in points]
        )
        left, top, right, bottom = box
        if max(abs(across), abs(down)) > FAR:
            end = (left if across > 0 else right if across < 0 else point[0], top if down > 0 else bottom)
            self.canvas.line([point, end], color, 0.6)
            self.keep_line(point, end)
        self.canvas.text((left, (top + bottom) / 2), words, size, color, bold, "lm")
        self.written.append((left - APART, top, right + APART, bottom))

    def _best(self, tries: list[Try]) -> Try:
        """The first place that covers nothing, else the one that covers least."""
        best, least = tries[0], float("inf")
        for one in tries:
            covered = self._covered(one[2])
            if covered < least:
                best, least = one, covered
            if not covered:
                break
        return best

    def keep_line(self, start: XY, end: XY) -> None:
        """Keep clear a line that is drawn."""
        pieces = max(1, int(max(abs(end[0] - start[0]), abs(end[1] - start[1])) / 2))
        for n in range(pieces):
            x, y = (a + (b - a) * n / pieces for a, b in zip(start, end, strict=True))
            self.keep((x - 1, y - 1, x + 1, y + 1))

    def _covered(self, box: Box) -> float:
        """Square points that are taken already, words counting most, or lie off the part that may be written on."""
        left, top, right, bottom = box
        west, north, east, south = self.within
        off = max(0.0, west - left) + max(0.0, right - east) + max(0.0, north - top) + max(0.0, bottom - south)
        words, lines = (
            sum(shared(box, o) for o in taken if o[0] < right and o[2] > left and o[1] < bottom and o[3] > top)
            for taken in (self.written, self.drawn)
        )
        return off * OFF_COUNTS + words * WORDS_COUNT + lines


def _box(point: XY, step: tuple[int, int], wide: float, size: float) -> Box:
    x, y = point[0] + step[0], point[1] + step[1]
    left = x if step[0] > 0 else x - wide if step[0] < 0 else x - wide / 2
    return (left, y - size / 2 - 1, left + wide, y + size / 2 + 1)


def shared(one: Box, other: Box) -> float:
    """Return the area two boxes share.

    >>> shared((0, 0, 4, 2), (3, 1, 9, 9)), shared((0, 0, 1, 1), (1, 0, 2, 1))
    (1, 0)
    """
    wide = min(one[2], other[2]) - max(one[0], other[0])
    high = min(one[3], other[3]) - max(one[1], other[1])
    return max(0, wide) * max(0, high)

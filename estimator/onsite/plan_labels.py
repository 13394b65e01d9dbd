"""Words and the places they belong to in; where each is written so that it covers nothing written before, out."""

from dataclasses import dataclass, field

from estimator.drawing.canvas import Canvas

Box = tuple[float, float, float, float]
SIZE = 9.0
STEPS = (
    *((across, down) for down in (-5, 6) for across in (7, -7)),
    *((0, down) for down in (-11, 12)),
    *((across, down) for far in (1, 2, 3) for down in (-5 - 11 * far, 6 + 11 * far) for across in (7, -7, 0)),
)
"""Places tried around the point, in points of the screen: right of it first, then left, above and below, then farther off."""
FAR = 14
"""Words farther off than this get a thin line to their point."""


@dataclass(slots=True)
class Labels:
    """Writes on a part of a canvas and remembers what is taken."""

    canvas: Canvas
    within: Box
    taken: list[Box] = field(default_factory=list)

    def keep(self, box: Box) -> None:
        """Take room that no words may cover."""
        self.taken.append(box)

    def write(self, at: tuple[float, float], words: str, color: str, size: float = SIZE, bold: bool = False) -> None:
        """Write beside a point where there is room, else where it covers least; farther off with a thin line to it."""
        wide = self.canvas.wide(words, size, bold)
        boxes = [self._box(at, step, wide, size) for step in STEPS]
        best = min(range(len(boxes)), key=lambda n: (self._covered(boxes[n]), n))
        left, top, right, bottom = boxes[best]
        if abs(STEPS[best][1]) > FAR:
            across, down = STEPS[best]
            end = (left if across > 0 else right if across < 0 else at[0], top if down > 0 else bottom)
            self.canvas.line([at, end], color, 0.6)
        self.canvas.text((left, (top + bottom) / 2), words, size, color, bold, "lm")
        self.taken.append(boxes[best])

    def _box(self, at: tuple[float, float], step: tuple[int, int], wide: float, size: float) -> Box:
        x, y = at[0] + step[0], at[1] + step[1]
        left = x if step[0] > 0 else x - wide if step[0] < 0 else x - wide / 2
        return (left, y - size / 2 - 1, left + wide, y + size / 2 + 1)

    def _covered(self, box: Box) -> float:
        """Square points that are taken already, or lie off the part that may be written on."""
        left, top, right, bottom = box
        west, north, east, south = self.within
        off = max(0.0, west - left) + max(0.0, right - east) + max(0.0, north - top) + max(0.0, bottom - south)
        return off * 100 + sum(
            max(0.0, min(right, r) - max(left, x)) * max(0.0, min(bottom, b) - max(top, t)) for x, t, r, b in self.taken
        )

"""A white sheet to draw on, in points of the screen; PNG bytes out, the same for the same drawing."""

import io
from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

from estimator.disk.cache import cached

if TYPE_CHECKING:
    from PIL.ImageFont import FreeTypeFont

FONTS = Path(__file__).parent / "fonts"
SHARP = 2
"""Dots a point in the picture: twice the screen, so that print is sharp."""
SMOOTH = 2
"""Dots drawn for a dot kept, which smooths slanted edges."""
DOTS = SHARP * SMOOTH
"""Dots drawn a point."""
COLORS = 64

Point = tuple[float, float]
Anchor = Literal["lt", "mt", "rt", "lm", "mm", "rm", "ls", "ms", "rs"]
"""Where a text is held: left, middle or right, and top, middle or its base line."""


Stroke = tuple[str, tuple[Point, ...], tuple[tuple[str, Any], ...]]
"""What the pen does, through which points in dots, and how."""


class Canvas:
    """Holds what is drawn until the picture is asked for; every length and place is in points of 1/96 inch."""

    def __init__(self, width: float, height: float) -> None:
        self.width, self.height = width, height
        self.strokes: list[Stroke] = []

    def line(self, points: Sequence[Point], color: str, width: float = 1.0, dash: float = 0.0) -> None:
        """A line through the points, in dashes of that length where one is given."""
        for stroke in _dashes(points, dash) if dash else [points]:
            self._stroke("line", stroke, fill=color, width=round(width * DOTS), joint="curve")

    def box(self, left: float, top: float, right: float, bottom: float, fill: str = "", edge: str = "") -> None:
        """A rectangle, filled, edged or both."""
        corners = [(left, top), (max(left, right), max(top, bottom))]
        self._stroke("rectangle", corners, fill=fill or None, outline=edge or None, width=DOTS)

    def shape(self, points: Sequence[Point], fill: str) -> None:
        """A filled polygon."""
        self._stroke("polygon", points, fill=fill)

    def hatched(self, left: float, top: float, right: float, bottom: float, color: str, step: float = 5.0) -> None:
        """A rectangle of slanted strokes with an edge, which reads the same in black and white."""
        height = bottom - top
        x = left - height
        while x < right:
            ends = [
                (max(x, left), bottom - max(0.0, left - x)),
                (min(x + height, right), bottom - min(height, right - x)),
            ]
            self.line(ends, color, 1.0)
            x += step
        self.box(left, top, right, bottom, edge=color)

    def disc(self, at: Point, radius: float, fill: str, edge: str = "") -> None:
        """A filled circle."""
        (x, y), r = at, radius
        self._stroke("ellipse", [(x - r, y - r), (x + r, y + r)], fill=fill, outline=edge or None, width=DOTS)

    def text(self, at: Point, words: str, size: float = 11.0, color: str = "#222B33", bold: bool = False, anchor: Anchor = "lt") -> None:  # fmt: skip
        """Words held at a point."""
        self._stroke("text", [at], text=words, fill=color, font=(bold, round(size * DOTS)), anchor=_pillow(anchor))

    def wide(self, words: str, size: float = 11.0, bold: bool = False) -> float:
        """Return how wide the words are drawn, points."""
        return text_wide(words, size, bold)

    def png(self) -> bytes:
        """Return the picture; nothing in it tells when or where it was made."""
        return _drawn(self.width, self.height, tuple(self.strokes))

    def _stroke(self, pen: str, points: Sequence[Point], **how: object) -> None:
        self.strokes.append((pen, tuple((x * DOTS, y * DOTS) for x, y in points), tuple(how.items())))


@lru_cache(maxsize=32)
def _drawn(width: float, height: float, strokes: tuple[Stroke, ...]) -> bytes:
    """The PNG; several papers of a quote show the same picture, and so do its later revisions: it is drawn once and kept."""
    import PIL

    asked = repr((PIL.__version__, width, height, strokes)).encode()
    return cached("picture", (asked,), lambda: _anew(width, height, strokes))


def _anew(width: float, height: float, strokes: tuple[Stroke, ...]) -> bytes:
    from PIL import Image, ImageDraw

    image = Image.new("RGB", (round(width * DOTS), round(height * DOTS)), "white")
    pen = ImageDraw.Draw(image)
    for name, points, how in strokes:
        named = dict(how)
        if name == "text":
            named["font"] = _font(*named["font"])
        getattr(pen, name)(points[0] if name == "text" else list(points), **named)
    small = image.reduce(SMOOTH).quantize(COLORS, method=Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE)
    out = io.BytesIO()
    small.save(out, "PNG", compress_level=4)
    return out.getvalue()


def text_wide(words: str, size: float = 11.0, bold: bool = False) -> float:
    """Return how wide words are drawn, points."""
    return float(_font(bold, round(size * DOTS)).getlength(words)) / DOTS


def _pillow(anchor: Anchor) -> str:
    return anchor[0] + {"t": "a", "m": "m", "s": "s"}[anchor[1]]


@lru_cache(maxsize=32)
def _font(bold: bool, dots: int) -> "FreeTypeFont":
    from PIL import ImageFont

    return ImageFont.truetype(
        FONTS / ("sans-bold.ttf" if bold else "sans.ttf"), dots, layout_engine=ImageFont.Layout.BASIC
    )


def _dashes(points: Sequence[Point], length: float) -> list[list[Point]]:
    """Every second piece of the line, each of that length."""
    out: list[list[Point]] = []
    for (x0, y0), (x1, y1) in pairwise(points):
        whole = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
        at = 0.0
        while at < whole:
            ends = (at / whole, min(1.0, (at + length) / whole))
            out.append([(x0 + (x1 - x0) * t, y0 + (y1 - y0) * t) for t in ends])
            at += 2 * length
    return out

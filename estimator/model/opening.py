"""One hole that is dug, cut or broken for a repair: where, how deep, how wide, what lies over it."""

from math import hypot
from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.say import Say
from estimator.model.stretch import Stretch

OpeningKind = Literal["pit", "trench", "tunnel", "floor opening", "dig in the crawl space", "hole through", "pothole"]
"""`hole through`: a wall, a roof; a floor that is cored or sawn is a `floor opening`. `pothole`: it only shows the pipe."""


OPEN_GROUND: tuple[OpeningKind, ...] = ("pit", "trench")
"""Openings dug from the open air: what stands or runs beside them meets them."""


class Span(Frozen):
    """A length of an opening in one zone: stations, the zone over it and what grows or lies there ("lawn", "bed" ...)."""

    stretch: Stretch
    zone: str
    surface: str = ""

    @property
    def length_ft(self) -> float:
        return self.stretch.length_ft


class Opening(Frozen, kw_only=True):
    """One hole that is dug, cut or broken for a repair. Feet.

    `along` are the stations it takes at its bottom, working room counted, `top` those at the ground; `offset_ft` how far
    its middle lies beside the pipe, `line` "" where it follows no line of the job (a way round). `depth_ft` is the bottom
    below the ground (below the floor's top for an opening in a floor, below the slab's top less the ground outside for a
    tunnel), never rounded; what a locator may be off is kept apart in `tolerance_ft`. `depth_known` is False where no
    depth was read. `people` work in it; `held_by` says what holds its sides ("" where they stand by themselves).
    `assumed`: nobody measured that it can lie there; `why_assumed` says it in words.
    """

    kind: OpeningKind
    line: str
    along: Stretch
    depth_ft: float
    name: Say
    tolerance_ft: float = 0.0
    bottom_width_ft: float = 0.0
    top_width_ft: float = 0.0
    top: Stretch | None = None
    offset_ft: float = 0.0
    spans: tuple[Span, ...] = ()
    people: bool = True
    held_by: str = ""
    wet: bool = False
    depth_known: bool = True
    assumed: bool = False
    why_assumed: Say | None = None
    days: float = 0.0

    @property
    def safety_ft(self) -> float:
        """The depth limits are compared with: the bottom, unrounded, and what the locator may be off."""
        return self.depth_ft + self.tolerance_ft

    @property
    def at_top(self) -> Stretch:
        return self.top or self.along

    @property
    def zones(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(s.zone for s in self.spans))

    @property
    def cuts_floor(self) -> bool:
        return self.kind == "floor opening"

    @property
    def is_excavation(self) -> bool:
        """Soil is taken out for work in it: no hole through a wall or a roof, and none that only shows the pipe."""
        return self.kind not in ("hole through", "pothole")

    @property
    def opens_ground(self) -> bool:
        """Dug from the open air."""
        return self.kind in OPEN_GROUND

    @property
    def top_sf(self) -> float:
        """What it takes at the surface, sq ft."""
        return self.at_top.length_ft * max(self.top_width_ft, self.bottom_width_ft)

    def distance_ft(self, place: Stretch, away_ft: float, *, at_top: bool = False) -> float:
        """Return how far a thing at these stations, so far off the line, lies from the opening's edge in plan, ft.

        From its bottom edge, or with `at_top` from its edge at the ground; 0 where the thing lies over it.

        >>> pit = Opening(kind="pit", line="main", along=Stretch(27, 34), depth_ft=4, name=Say.of("a pit"), bottom_width_ft=2)
        >>> pit.distance_ft(Stretch(32, 32), 3), pit.distance_ft(Stretch(37, 37), 5)
        (2.0, 5.0)
        """
        ends = self.at_top if at_top else self.along
        half = (max(self.top_width_ft, self.bottom_width_ft) if at_top else self.bottom_width_ft) / 2
        return hypot(ends.gap_ft(place), max(0.0, abs(away_ft - self.offset_ft) - half))

"""Works: what a repair does to the ground, the floor and the house. Computed once per repair, before any rule or quantity."""

from collections.abc import Iterable
from math import hypot
from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.say import Say
from estimator.model.stretch import Stretch, joined

OpeningKind = Literal["pit", "trench", "tunnel", "floor opening", "dig in the crawl space", "hole through"]
"""`hole through`: a wall, a roof; a floor that is cored or sawn is a `floor opening`."""

FLOORS = frozenset({"slab", "basement"})
CITY_GROUND = frozenset({"street"})
PAVED = frozenset({"drive", "walk", "street"})
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


class Laid(Frozen, kw_only=True):
    """New pipe: where, its size, inches, and the stations of side drains tied in again."""

    line: str
    stretch: Stretch
    size_in: float
    ties_ft: tuple[float, ...] = ()
    new_wye: bool = False  # it ends in a new wye cut into the line it joins
    hung: bool = False


class Lined(Frozen, kw_only=True):
    """Old pipe kept and lined; `pieces_ft` where it is done in short pieces."""

    line: str
    stretch: Stretch
    size_in: float
    pieces_ft: tuple[float, ...] = ()


class Burst(Frozen, kw_only=True):
    """Old pipe broken in place by one pull, and the size of the new pipe behind it, inches."""

    line: str
    stretch: Stretch
    size_in: float


class Left(Frozen, kw_only=True):
    """Old pipe left in the ground: in use as before, or closed ("capped", "filled")."""

    line: str
    stretch: Stretch
    how: Literal["in use", "capped", "filled"]


class WayIn(Frozen, kw_only=True):
    """How tools or people get to the pipe: a cleanout, a pulled toilet, a pit."""

    what: Literal["cleanout", "toilet", "pit", "roof vent"]
    line: str
    at_ft: float
    new: bool = False


class Works(Frozen, kw_only=True):
    """All that one repair does. Rules ask it, takeoff measures it, papers add it up."""

    line: str
    openings: tuple[Opening, ...] = ()
    laid: tuple[Laid, ...] = ()
    lined: tuple[Lined, ...] = ()
    burst: tuple[Burst, ...] = ()
    left: tuple[Left, ...] = ()
    ways_in: tuple[WayIn, ...] = ()
    toilets_pulled: int = 0
    cleans: tuple[Stretch, ...] = ()  # where the tool goes, from its way in to the far end
    tested: tuple[Stretch, ...] = ()  # old pipe plugged and filled section by section, to find a leak
    piece: bool = False  # a piece of a run is renewed by itself
    guesses: tuple[Say, ...] = ()  # what had to be assumed to plan it at all, such as a way in nobody measured
    assumptions: tuple[Say, ...] = ()

    # ── questions the rules ask ───────────────────────────────────────────────────────────────

    @property
    def floors(self) -> tuple[Opening, ...]:
        """Openings in a floor, assumed ones among them."""
        return tuple(o for o in self.openings if o.cuts_floor)

    @property
    def cuts_floor(self) -> bool:
        return bool(self.floors)

    @property
    def tunnels(self) -> tuple[Opening, ...]:
        return tuple(o for o in self.openings if o.kind == "tunnel")

    @property
    def below_floor(self) -> bool:
        """The ground under a floor is dug, from above or from beside."""
        return bool(self.floors or self.tunnels)

    @property
    def in_crawl_space(self) -> bool:
        """People work between the soil and the floor: pipe is hung there, or soil is dug to make room."""
        dug = any(o.kind == "dig in the crawl space" for o in self.openings)
        return dug or (not self.tunnels and any(pipe.hung for pipe in self.laid))

    @property
    def digs(self) -> tuple[Opening, ...]:
        """Openings in which somebody or a machine takes out soil."""
        return tuple(o for o in self.openings if o.kind != "hole through" and o.depth_ft > 0)

    @property
    def open_digs(self) -> tuple[Opening, ...]:
        """Dug from the open air."""
        return tuple(o for o in self.openings if o.opens_ground)

    @property
    def with_people(self) -> tuple[Opening, ...]:
        """Openings in which people work below the surface."""
        return tuple(o for o in self.digs if o.people)

    @property
    def assumed(self) -> tuple[Opening, ...]:
        return tuple(o for o in self.openings if o.assumed)

    @property
    def zones(self) -> tuple[str, ...]:
        """Every zone that is opened, dug or cut."""
        return tuple(dict.fromkeys(z for o in self.openings if o.kind != "tunnel" for z in o.zones))

    @property
    def deepest_ft(self) -> float | None:
        """The deepest bottom people go to, with what the locator may be off; None where nothing is dug."""
        return max((o.safety_ft for o in self.digs), default=None)

    @property
    def renewed(self) -> tuple[Stretch, ...]:
        """Where the repair's own line has new pipe or a lining afterwards."""
        pipes: tuple[Laid | Lined | Burst, ...] = (*self.laid, *self.lined, *self.burst)
        return joined(p.stretch for p in pipes if p.line == self.line)

    @property
    def goes_round(self) -> bool:
        """New pipe is laid where no pipe of the job lies."""
        return any(pipe.line != self.line for pipe in self.laid)

    @property
    def closes(self) -> bool:
        """Old pipe is put out of use and stays in the ground."""
        return any(part.how != "in use" for part in self.left)

    @property
    def new_pipe(self) -> tuple[Laid | Burst, ...]:
        return (*self.laid, *self.burst)

    # ── sums papers and the menu read ─────────────────────────────────────────────────────────

    @property
    def floor_sf(self) -> float:
        """Floor opened, assumed openings counted, sq ft."""
        return sum(o.top_sf for o in self.floors)

    @property
    def yard_sf(self) -> float:
        """Ground opened outside, as it lies open at the top, sq ft."""
        return sum(o.top_sf for o in self.open_digs)

    @property
    def old_pipe_left_ft(self) -> float:
        """Old pipe of the line still in use after the repair, ft."""
        return sum(p.stretch.length_ft for p in self.left if p.how == "in use")


def together(works: Iterable[Works]) -> Works:
    """Return the works of several repairs as one, for sums over an option; old pipe left is that of none alone."""
    many = tuple(works)
    return Works(
        line=many[0].line if many else "",
        openings=tuple(o for w in many for o in w.openings),
        laid=tuple(x for w in many for x in w.laid),
        lined=tuple(x for w in many for x in w.lined),
        burst=tuple(x for w in many for x in w.burst),
        left=tuple(x for w in many for x in w.left if x.how != "in use"),
        ways_in=tuple(x for w in many for x in w.ways_in),
        toilets_pulled=max((w.toilets_pulled for w in many), default=0),
        cleans=tuple(x for w in many for x in w.cleans),
        tested=tuple(x for w in many for x in w.tested),
        guesses=tuple(dict.fromkeys(g for w in many for g in w.guesses)),
        assumptions=tuple(dict.fromkeys(a for w in many for a in w.assumptions)),
    )

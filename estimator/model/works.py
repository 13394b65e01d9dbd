"""Works: what a repair does to the ground, the floor and the house. Computed once per repair, before any rule or quantity."""

from collections.abc import Iterable
from functools import cached_property
from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.line import Join
from estimator.model.opening import Opening
from estimator.model.say import Say
from estimator.model.stretch import Stretch, joined

FLOORS = frozenset({"slab", "basement"})
PAVED = frozenset({"drive", "walk", "street"})
SAME_PLACE_FT = 1.0
"""Where a side line joins and where its wye was seen are one place when they are no farther apart than this."""


class Laid(Frozen, kw_only=True):
    """New pipe: where, its size, inches, and the stations of side drains tied in again."""

    line: str
    stretch: Stretch
    size_in: float
    ties_ft: tuple[float, ...] = ()
    new_wye: bool = False  # it ends in a new wye in the line it joins
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


class Works(Frozen, kw_only=True, dict=True):
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

    @cached_property
    def floors(self) -> tuple[Opening, ...]:
        """Openings in a floor, assumed ones among them."""
        return tuple(o for o in self.openings if o.cuts_floor)

    @cached_property
    def cuts_floor(self) -> bool:
        return bool(self.floors)

    @cached_property
    def tunnels(self) -> tuple[Opening, ...]:
        return tuple(o for o in self.openings if o.kind == "tunnel")

    @cached_property
    def below_floor(self) -> bool:
        """The ground under a floor is dug, from above or from beside."""
        return bool(self.floors or self.tunnels)

    @cached_property
    def in_crawl_space(self) -> bool:
        """People work between the soil and the floor: pipe is hung there, or soil is dug to make room."""
        dug = any(o.kind == "dig in the crawl space" for o in self.openings)
        return dug or (not self.tunnels and any(pipe.hung for pipe in self.laid))

    @cached_property
    def digs(self) -> tuple[Opening, ...]:
        """Openings in which somebody or a machine takes out soil."""
        return tuple(o for o in self.openings if o.is_excavation and o.depth_ft > 0)

    @cached_property
    def open_digs(self) -> tuple[Opening, ...]:
        """Dug from the open air."""
        return tuple(o for o in self.openings if o.opens_ground)

    @cached_property
    def with_people(self) -> tuple[Opening, ...]:
        """Openings in which people work below the surface."""
        return tuple(o for o in self.digs if o.people)

    @cached_property
    def assumed(self) -> tuple[Opening, ...]:
        return tuple(o for o in self.openings if o.assumed)

    @cached_property
    def zones(self) -> tuple[str, ...]:
        """Every zone that is opened, dug or cut."""
        return tuple(dict.fromkeys(z for o in self.openings if o.kind != "tunnel" for z in o.zones))

    @cached_property
    def deepest_ft(self) -> float | None:
        """The deepest bottom people go to, with what the locator may be off; None where nothing is dug."""
        return max((o.safety_ft for o in self.digs), default=None)

    @cached_property
    def renewed(self) -> tuple[Stretch, ...]:
        """Where the repair's own line has new pipe or a lining afterwards."""
        pipes: tuple[Laid | Lined | Burst, ...] = (*self.laid, *self.lined, *self.burst)
        return joined(p.stretch for p in pipes if p.line == self.line)

    @cached_property
    def goes_round(self) -> bool:
        """New pipe is laid where no pipe of the job lies."""
        return any(pipe.line != self.line for pipe in self.laid)

    @cached_property
    def closes(self) -> bool:
        """Old pipe is put out of use and stays in the ground."""
        return any(part.how != "in use" for part in self.left)

    @cached_property
    def new_pipe(self) -> tuple[Laid | Burst, ...]:
        return (*self.laid, *self.burst)

    def ties_in(self, join: Join) -> bool:
        """Whether the line that joins there is tied in again with a wye of the new pipe."""
        ties = (at for pipe in self.laid if pipe.line == join.line for at in pipe.ties_ft)
        return any(abs(at - join.station_ft) <= SAME_PLACE_FT for at in ties)

    # ── sums papers and the menu read ─────────────────────────────────────────────────────────

    @cached_property
    def floor_sf(self) -> float:
        """Floor opened, assumed openings counted, sq ft."""
        return sum(o.top_sf for o in self.floors)

    @cached_property
    def yard_sf(self) -> float:
        """Ground opened outside, as it lies open at the top, sq ft."""
        return sum(o.top_sf for o in self.open_digs)

    @cached_property
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

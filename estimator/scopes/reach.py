"""A padded stretch in, the stretch it takes to get there by one way out: exits, remnants, pits, liner accesses."""

from estimator.model.profile import Profile
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch
from estimator.scopes.extent import NUDGE_FT, Extent
from estimator.tables.tables import Tables


def from_the_exit(extent: Extent, profile: Profile, tables: Tables) -> Extent:
    """A way in along the pipe from where it leaves the slab.

    A remnant of old pipe shorter than remnant_ft between the new pipe and the slab edge is replaced too, since the crew
    passes it anyway. New pipe that reaches the edge goes on outside_slab_ft to where it can be coupled in the
    open, with a cleanout there; to a cleanout already nearer than that. A side line has no slab edge: its old pipe ends at
    the junction and at its upper end, and no remnant is left to either.
    """
    edge = profile.slab_edge_ft
    if edge is None:
        return _to_its_ends(extent, profile, tables)
    out_ward = profile.line.downstream
    end = extent.stretch.to_ft if out_ward == 1 else extent.stretch.from_ft
    inside = (edge - end) * out_ward
    if inside >= tables.number("remnant_ft"):
        return extent
    why = Say.of("no {ft} of old pipe left between the new pipe and the slab edge", ft=Feet(inside))
    to_edge = extent.reach(edge, why) if inside > 0 else extent
    if inside < -NUDGE_FT:
        return to_edge
    out = _out_to_cleanout(edge, out_ward, profile, tables)
    return to_edge.reach(edge + out_ward * out, Say.of("{ft} outside the slab edge to a cleanout", ft=Feet(out)))


def _to_its_ends(extent: Extent, profile: Profile, tables: Tables) -> Extent:
    """A side line's remnants: shorter than remnant_ft to the junction or to its upper end, they are replaced too."""
    if profile.line.joins is None:
        return extent
    out, least, whole = extent, tables.number("remnant_ft"), profile.extent
    junction, upper = (whole.to_ft, whole.from_ft) if profile.line.downstream == 1 else (whole.from_ft, whole.to_ft)
    to_junction, to_upper = (extent.stretch.gap_ft(Stretch(end, end)) for end in (junction, upper))
    if NUDGE_FT < to_junction < least:
        why = Say.of(
            "no {ft} of old pipe left between the new pipe and the line it joins", ft=Feet(round(to_junction, 2))
        )
        out = out.reach(junction, why)
    if NUDGE_FT < to_upper < least:
        why = Say.of("no {ft} of old pipe left between the new pipe and the upper end", ft=Feet(round(to_upper, 2)))
        out = out.reach(upper, why)
    return out


def _out_to_cleanout(edge: float, out_ward: int, profile: Profile, tables: Tables) -> float:
    """How far outside the edge the new pipe ends."""
    out = tables.number("outside_slab_ft")
    there = [(m.stretch.from_ft - edge) * out_ward for m in profile.marks("cleanout")]
    return min((ft for ft in there if 0 < ft < out), default=out)


def no_remnants(extent: Extent, profile: Profile, tables: Tables, run: Stretch) -> Extent:
    """A trench leaves no old pipe shorter than remnant_ft between itself and a cleanout, the slab edge or the run's end."""
    stops = [m.stretch.from_ft for m in profile.marks("cleanout")]
    stops = [s for s in (*stops, run.from_ft, run.to_ft) if run.holds(s)]
    least = tables.number("remnant_ft")
    out = extent
    for stop in sorted(stops, key=lambda s: abs(s - extent.stretch.middle_ft)):
        gap = out.stretch.gap_ft(Stretch(stop, stop))
        if 0 < gap < least:
            out = out.reach(stop, Say.of("no {ft} of old pipe left to the next cleanout or end", ft=Feet(gap)))
    return out


def to_the_lot_line(extent: Extent, profile: Profile) -> Extent | None:
    """As far as the property line, where the pipe is handed over to whoever owns it beyond; None where it is not crossed."""
    lots = [m.stretch.middle_ft for m in profile.marks("property line")]
    crossed = [at for at in lots if extent.stretch.from_ft < at < extent.stretch.to_ft]
    if not crossed:
        return None
    why = Say.of("to the property line: beyond it the pipe is somebody else's to open")
    low, high = extent.stretch.from_ft, extent.stretch.to_ft
    mine = Stretch(low, min(crossed)) if profile.line.downstream == 1 else Stretch(max(crossed), high)
    return extent.to(mine, why)


def pits_in_the_clear(extent: Extent, profile: Profile, tables: Tables, run: Stretch) -> Extent:
    """Pits at both ends, moved outward past trees and utility crossings as far as the run goes."""
    out, pit = extent, tables.number("burst_pull_pit_length_ft")
    blocked = [m.stretch for m in profile.marks("tree", "crossing")]
    for way, limit in ((-1, run.from_ft), (1, run.to_ft)):
        end = out.stretch.from_ft if way < 0 else out.stretch.to_ft
        for _ in blocked:
            here = Stretch.between(end, end + way * pit)
            in_the_way = [s for s in blocked if s.touches(here)]
            if in_the_way:
                past = [s.from_ft if way < 0 else s.to_ft for s in in_the_way]
                end = (min(past) if way < 0 else max(past)) + way * NUDGE_FT
        end = max(end, limit) if way < 0 else min(end, limit)
        out = out.reach(end, Say.of("the pit is moved clear of a tree or a utility"))
    return out


def in_stock(length_ft: float, stock: list[float]) -> tuple[float, ...]:
    """As few stock lengths as cover it, the last one no longer than it must be.

    >>> in_stock(3.5, [2, 3, 4, 6]), in_stock(7.0, [2, 3, 4, 6]), in_stock(2.0, [2, 3])
    ((4,), (6, 2), (2,))
    """
    pieces: list[float] = []
    while length_ft - sum(pieces) > NUDGE_FT or not pieces:
        left = length_ft - sum(pieces)
        pieces.append(next((ft for ft in stock if ft >= left - NUDGE_FT), stock[-1]))
    return tuple(pieces)


def liner_accesses(profile: Profile, tables: Tables) -> tuple[float, ...]:
    """Stations a liner can go in at: cleanouts; where there is none, a new one outside the slab edge.

    A pulled toilet lets a camera in, not a liner.
    """
    at = [m.stretch.from_ft for m in profile.marks("cleanout")]
    at += [p.start_ft for p in profile.line.passes if "cleanout" in p.access.lower()]
    edge = profile.slab_edge_ft
    if not at and edge is not None:
        at = [edge + profile.line.downstream * tables.number("outside_slab_ft")]
    return tuple(sorted(set(at)))


def liner_shots(extent: Extent, profile: Profile, tables: Tables) -> tuple[Extent, ...]:
    """Blind from the nearest access below or above, and from access to access where both are there; none without one."""
    accesses = liner_accesses(profile, tables)
    below = max((a for a in accesses if a <= extent.stretch.from_ft), default=None)
    above = min((a for a in accesses if a >= extent.stretch.to_ft), default=None)
    blind = Say.of("lined from the access at {at}", at=Feet(below if below is not None else above or 0.0))
    shots = []
    if below is not None:
        shots.append(extent.reach(below, blind))
    if above is not None:
        shots.append(extent.reach(above, Say.of("lined from the access at {at}", at=Feet(above))))
    if below is not None and above is not None:
        both = Say.of("lined from access to access, {a} to {b}", a=Feet(below), b=Feet(above))
        shots.append(extent.to(Stretch(below, above), both))
    within = [a for a in accesses if extent.stretch.holds(a)]
    return tuple(shots) if shots else (extent,) if within else ()

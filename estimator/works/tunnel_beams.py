"""A tunnel's way in; the beams it passes under, measured along the tunnel, out, the beam at the slab's edge among them."""

from dataclasses import replace

from estimator.model.edge_beam import KnownEdge, edge_beam
from estimator.model.frozen import Frozen
from estimator.model.profile import Profile
from estimator.works.approach import Approach
from estimator.works.case import Case
from estimator.works.grade import Crossing, crossings
from estimator.works.slab_beams import edge_counted, say_inner_beams


class TunnelBeams(Frozen):
    """`over_ft` lie along the tunnel from its mouth; `edge` is what is known of the slab's edge, None where the tunnel begins inside."""

    over: tuple[Crossing, ...]
    edge: KnownEdge | None

    @property
    def edge_floor_ft(self) -> float:
        """Bottom of the deepest beam at the mouth, below the slab top; 0 without one."""
        return max((b.bottom_ft for b in self.over if b.from_ft <= 0), default=0.0)

    @property
    def unknown(self) -> bool:
        return self.edge is not None and self.edge.beam is None


def tunnel_beams(case: Case, way: Approach) -> TunnelBeams:
    """The edge beam runs round the house: whoever digs in under the slab passes it, wherever he begins.

    What the line's own log notes at its exit counts there and, from a wall, is taken for the wall too. Where nobody said
    anything a beam of the firm's usual size is counted with, and asked for.
    """
    noted = _noted(case, way)
    say_inner_beams(case, way.length_ft, noted)
    if not way.pits:
        return TunnelBeams(noted, None)
    edge = edge_beam(case.job, case.line, case.number("edge_beam_near_ft"))
    if way.entry == "exit" and edge.said_by == "the line's log" and not way.lead_ft:
        return TunnelBeams(noted, edge)
    at_mouth = edge_counted(case, edge, carried=way.entry == "wall" or edge.said_by == "another line's log")
    if not at_mouth.there:
        return TunnelBeams(noted, edge)
    here = Crossing(0.0, at_mouth.wide_ft, at_mouth.deep_ft, False)
    return TunnelBeams((here, *(b for b in noted if b.from_ft > 0)), edge)


def _noted(case: Case, way: Approach) -> tuple[Crossing, ...]:
    """Beams of the logs that lie over the tunnel, moved to where the tunnel meets them."""
    if way.entry == "wall":
        along = crossings(case, way.face_ft)
        moved = way.length_ft - way.face_ft  # the face is where the tunnel ends
        here = [b for b in along if b.to_ft > way.mouth_ft - way.room_ft]
        return tuple(replace(b, from_ft=b.from_ft + moved, to_ft=b.to_ft + moved) for b in here)
    own = crossings(case, way.face_ft)
    lead = way.lead_ft
    moved_own = tuple(replace(b, from_ft=b.from_ft + lead, to_ft=b.to_ft + lead) for b in own)
    return (*_along_the_other_line(case, lead), *moved_own)


def _along_the_other_line(case: Case, lead_ft: float) -> tuple[Crossing, ...]:
    """Beams over the line a side line joins, between the slab edge and the join."""
    join = case.line.joins
    if not lead_ft or join is None:
        return ()
    line = case.job.line(join.line)
    other = replace(case, line=line, profile=Profile(line))
    return crossings(other, lead_ft)

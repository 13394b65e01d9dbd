"""A job and a line in; what is known of the beam along the slab's edge, and who says so, out."""

from typing import Literal

from estimator.model.frozen import Frozen
from estimator.model.job import EdgeBeam, Job
from estimator.model.line import Line
from estimator.model.profile import Profile

SaidBy = Literal["the line's log", "the house", "another line's log", "nobody"]


class KnownEdge(Frozen):
    """`beam` is None where nobody said anything: silence is not "none"."""

    beam: EdgeBeam | None
    said_by: SaidBy


def edge_beam(job: Job, line: Line, near_ft: float) -> KnownEdge:
    """The beam this line's log notes within `near_ft` of the slab edge; else the house's; else another line's.

    An edge beam runs round the house, so what one log notes holds for the others.

    >>> from datetime import date
    >>> from estimator.model.job import Customer, House
    >>> main = Line(name="main", size_in=4, pipe="pvc")
    >>> def of(beam): return Job(number="1", day=date(2026, 1, 1), prepared_by="R", customer=Customer(name="", site=""),
    ...     house=House(floor="slab", jurisdiction="", edge_beam=beam), lines=(main,))
    >>> edge_beam(of(None), main, 2.0).said_by, edge_beam(of(EdgeBeam(0, 0)), main, 2.0).beam
    ('nobody', EdgeBeam(deep_ft=0, wide_ft=0))
    """
    own = _noted(line, near_ft)
    if own is not None:
        return KnownEdge(own, "the line's log")
    if job.house.edge_beam is not None:
        return KnownEdge(job.house.edge_beam, "the house")
    others = [seen for other in job.lines if other.name != line.name and (seen := _noted(other, near_ft)) is not None]
    if others:
        return KnownEdge(max(others, key=lambda b: b.deep_ft), "another line's log")
    return KnownEdge(None, "nobody")


def _noted(line: Line, near_ft: float) -> EdgeBeam | None:
    """The deepest beam that begins this near to where the line leaves the slab."""
    profile = Profile(line)
    edge = profile.slab_edge_ft
    if edge is None:
        return None
    near = [b for b in profile.beams if min(abs(b.stretch.from_ft - edge), abs(b.stretch.to_ft - edge)) <= near_ft]
    deepest = max(near, key=lambda b: b.bottom_below_slab_ft, default=None)
    return EdgeBeam(deepest.bottom_below_slab_ft, deepest.stretch.length_ft) if deepest else None

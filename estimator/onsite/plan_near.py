"""A plan in; the part of each line that lies at the house or was taped, for a plan with room for no more, out."""

from collections.abc import Mapping

from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.stretch import Stretch
from estimator.onsite.dead_reckoning import Track
from estimator.onsite.plan import Plan, indoors

BESIDE_FT = 10.0
"""So far beyond house and tapes a line is still drawn; the rest is told as a length."""


def near_the_house(plan: Plan, job: Job) -> Mapping[str, Stretch]:
    """Return which stations of each line to draw."""
    return {line.name: _near(line, plan.tracks[line.name]) for line in job.lines}


def _near(line: Line, track: Track) -> Stretch:
    whole = Stretch(track.corners[0][0], track.corners[-1][0])
    known = [*indoors(line), *track.taped]
    if not known:
        known = [whole.from_ft if line.downstream > 0 else whole.to_ft]
    kept = Stretch(max(min(known) - BESIDE_FT, whole.from_ft), min(max(known) + BESIDE_FT, whole.to_ft))
    return kept if whole.length_ft - kept.length_ft > BESIDE_FT / 2 else whole


def shortened(track: Track, kept: Stretch) -> Track:
    """Return the track of those stations alone."""
    inside = [c for c in track.corners if kept.from_ft < c[0] < kept.to_ft]
    ends = [(at, track.at(at)) for at in (kept.from_ft, kept.to_ft)]
    return Track(track.line, (ends[0], *inside, ends[1]), track.taped, track.known)

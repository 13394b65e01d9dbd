"""A line in; its ways in for a camera, the best first, and whether a camera may get stuck there, out."""

from estimator.model.answers import INDOOR_ZONES
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.line import Line
from estimator.model.obstructions import closures
from estimator.model.profile import Profile

CAMERA_BORE_IN = 3.0
"""Below this a standard camera head and its skid may go in and not come out (common practice)."""
TIGHT_DEGREES = 75.0
MOST_TIGHT_BENDS = 2
"""So many square bends on the way and the cable may not come back (common practice)."""


class WayIn(Frozen):
    """One way in: its name, station and size, how far a camera goes from there before the end or what closes the pipe, the square bends on that way."""

    line: str
    name: str
    station_ft: float
    size_in: float
    reach_ft: float
    square_bends: int

    @property
    def may_stick(self) -> bool:
        return self.size_in < CAMERA_BORE_IN or self.square_bends > MOST_TIGHT_BENDS


def ways_in(job: Job) -> tuple[WayIn, ...]:
    """Return every noted way in, line by line: those a camera comes out of again first, then the larger, then fewer bends."""
    found = [way for line in job.lines for way in _of(line)]
    order = {line.name: n for n, line in enumerate(job.lines)}
    return tuple(sorted(found, key=lambda w: (order[w.line], w.may_stick, -w.size_in, w.square_bends, -w.reach_ft)))


PLAIN, SAME_FT = ("cleanout", "access"), 1.0
"""Words that name no way in in particular; one so near to a named one is that one."""


def named_ways(line: Line) -> dict[float, str]:
    """Return every way in that can be seen, by station, with its name; one without a name by what it is."""
    profile = Profile(line)
    found = {
        m.stretch.from_ft: m.name or m.choice or m.word
        for m in profile.marks("cleanout", "access")
        if "buried" not in m.signs
    }
    for run in line.passes:
        if run.access:
            found = {at: name for at, name in found.items() if name not in PLAIN or abs(at - run.start_ft) > SAME_FT}
            found[run.start_ft] = run.access
    return found


def ways_and_ends(line: Line) -> dict[float, str]:
    """Return every way in that can be seen and every named end indoors, such as a toilet's, by station; where it joins a line is none."""
    profile = Profile(line)
    lower = profile.extent.to_ft if line.downstream > 0 else profile.extent.from_ft
    joint = lower if line.joins else None
    ends = {m.stretch.from_ft: m.choice for m in profile.marks("end") if m.choice and m.stretch.from_ft != joint}
    indoors = {at: name for at, name in ends.items() if profile.zone(at).value in INDOOR_ZONES}
    return indoors | named_ways(line)


def _of(line: Line) -> list[WayIn]:
    profile = Profile(line)
    named = {round(at, 1): name for at, name in named_ways(line).items()}
    shut = [f.stretch for f in closures(line)]
    out = []
    for at, name in named.items():
        low = max([profile.extent.from_ft, *(s.to_ft for s in shut if s.to_ft <= at)])
        high = min([profile.extent.to_ft, *(s.from_ft for s in shut if s.from_ft >= at)])
        far = high if high - at >= at - low else low
        bends = sum(
            1
            for m in profile.marks("bend")
            if min(at, far) <= m.stretch.from_ft <= max(at, far) and (m.degrees or 45.0) >= TIGHT_DEGREES
        )
        sizes = [
            size
            for part, size in profile.sizes(profile.extent)
            if part.to_ft >= min(at, far) and part.from_ft <= max(at, far)
        ]
        out.append(WayIn(line.name, name, at, min(sizes, default=line.size_in), abs(far - at), bends))
    return out

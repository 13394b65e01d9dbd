"""A job, a line and a stretch in; everything the rules may ask about it, gathered once, out."""

from collections.abc import Iterable

from estimator.model.edge_beam import edge_beam
from estimator.model.fall import fall_over
from estimator.model.frozen import replace
from estimator.model.job import Job, Reroute
from estimator.model.judgement import Need
from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.model.pump import pumped
from estimator.model.remembered import remembered_by
from estimator.model.stretch import Stretch
from estimator.model.works import Works
from estimator.scopes.rules.facts import StretchFacts
from estimator.tables.tables import Tables


def facts_of(
    job: Job,
    line: Line,
    stretch: Stretch,
    needs: Iterable[Need],
    tables: Tables,
    reroute: str = "",
    works: Works | None = None,
    method: str = "",
) -> StretchFacts:
    """The facts of one stretch. `needs` are those the repair is about; `reroute` names the way round, if one is meant."""
    here = _whatever_is_done(job, line, stretch, tuple(n for n in needs if n.line == line.name), tables, reroute)
    return replace(here, works=works or here.works, method=method)


@remembered_by(
    lambda job, line, stretch, needs, tables, reroute: (
        id(job),
        id(line),
        stretch,
        *map(id, needs),
        id(tables),
        reroute,
    )
)
def _whatever_is_done(
    job: Job, line: Line, stretch: Stretch, needs: tuple[Need, ...], tables: Tables, reroute: str
) -> StretchFacts:
    """What lies there, whatever works are planned over it: many ways are asked about each stretch."""
    profile = Profile(line)
    sizes = [size for _, size in profile.sizes(stretch)]
    here = tuple(m for m in line.marks if m.stretch.touches(stretch))
    return replace(
        _of_the_line(job, line, stretch, tables, reroute),
        findings=tuple(f for f in line.findings if f.stretch.touches(stretch)),
        unclear=tuple(u for u in line.unclear if u.stretch is None or u.stretch.touches(stretch)),
        needs=needs,
        marks=here,
        branches=tuple(b for b in profile.branches if stretch.holds(b.station_ft)),
        beams=tuple(b for b in profile.beams if b.stretch.touches(stretch)),
        zones=_each(zone for _, zone in profile.zones(stretch)),
        pipes=_each(pipe for _, pipe in profile.pipes(stretch)),
        sizes_in=tuple(sizes if line.downstream == 1 else reversed(sizes)),
        sizes_below_in=_sizes_below(job, profile, stretch),
        soils=_soils(job, profile, stretch),
        under=_each(m.choice for m in here if m.word == "under"),
        rooms=profile.rooms(stretch),
        filmed=profile.inspected(stretch),
        run_out_seen=profile.run_out_seen(stretch, tables.number("run_out_ft")),
        depth_ft=deepest_ft(profile, stretch),
        fall_ft=fall_over(profile, stretch.from_ft, stretch.to_ft),
    )


def _of_the_line(job: Job, line: Line, stretch: Stretch, tables: Tables, reroute: str) -> StretchFacts:
    """What holds for the whole line and the house, wherever the stretch lies."""
    profile = Profile(line)
    return StretchFacts(
        line=line.name,
        stretch=stretch,
        line_findings=line.findings,
        line_unclear=line.unclear,
        line_marks=line.marks,
        line_fall=profile.slope_ft_per_ft(),
        slab_edge_ft=profile.slab_edge_ft,
        cleanouts_ft=_cleanouts(profile),
        extent=profile.extent,
        downstream=line.downstream,
        is_branch=line.joins is not None,
        ends=line.ends,
        works=Works(line=line.name),
        marks_of=tuple((other.name, other.marks) for other in job.lines),
        house=replace(job.house, force_main=pumped(job)),
        site=job.site,
        wishes=job.wishes,
        foundation=job.foundation,
        tests=job.water_tests,
        reroutes=_reroutes(job, line, stretch, reroute),
        signs=job.signs,
        edge=edge_beam(job, line, tables.number("edge_beam_near_ft")),
        approvals=job.approvals,
        overrides=job.overrides,
    )


def _each(words: Iterable[str | None]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(w for w in words if w))


def _soils(job: Job, profile: Profile, stretch: Stretch) -> tuple[str, ...]:
    stations = [stretch.from_ft, stretch.middle_ft, stretch.to_ft]
    stations += [m.stretch.from_ft for m in profile.marks("soil") if m.stretch.touches(stretch)]
    return _each(profile.soil(at) or job.house.soil for at in stations)


def _sizes_below(job: Job, profile: Profile, stretch: Stretch) -> tuple[float, ...]:
    """The bores below the stretch on its line and the line that one runs into, the nearest first; none where the line leaves the lot."""
    line = profile.line
    down = line.downstream == 1
    end, last = (stretch.to_ft, profile.extent.to_ft) if down else (stretch.from_ft, profile.extent.from_ft)
    sizes = [bore for part, bore in profile.sizes(Stretch.between(end, last)) if part.length_ft > 0]
    into = next((one for one in job.lines if line.joins and one.name == line.joins.line), None)
    if into is not None and line.joins is not None:
        below = Profile(into)
        foot = below.extent.to_ft if into.downstream == 1 else below.extent.from_ft
        more = [bore for _, bore in below.sizes(Stretch.between(line.joins.station_ft, foot))]
        return (*sizes[:: line.downstream], *more[:: into.downstream])
    return tuple(sizes[:: line.downstream])


def _cleanouts(profile: Profile) -> tuple[float, ...]:
    at = [m.stretch.from_ft for m in profile.marks("cleanout")]
    at += [p.start_ft for p in profile.line.passes if "cleanout" in p.access.lower()]
    return tuple(sorted(set(at)))


def _reroutes(job: Job, line: Line, stretch: Stretch, name: str) -> tuple[Reroute, ...]:
    """Ways round this stretch: by name, else all that replace this line over the stretch."""

    def covers(way: Reroute) -> bool:
        low = way.replaces_from_ft if way.replaces_from_ft is not None else stretch.from_ft
        high = way.replaces_to_ft if way.replaces_to_ft is not None else stretch.to_ft
        return way.replaces_line == line.name and min(low, high) <= stretch.from_ft and stretch.to_ft <= max(low, high)

    return tuple(way for way in job.reroutes if (way.name == name if name else covers(way)))


def deepest_ft(profile: Profile, stretch: Stretch) -> float | None:
    """Deepest center of the pipe below the surface; None where one part has none that was read in its own ground."""
    stations = {stretch.from_ft, stretch.to_ft}
    stations |= {
        m.stretch.middle_ft for m in profile.marks("depth", "loc", "pothole", "invert") if m.stretch.touches(stretch)
    }
    depths = [profile.depth_to_centre_ft(at).value for at in stations]
    for part, _ in profile.zones(stretch):
        known = profile.depth_to_centre_ft(part.middle_ft)
        if known.value is None or (known.how == "assumed" and _counts(part, stretch)):
            return None
    return max((d for d in depths if d is not None), default=None)


SHORT_PART_FT = 3.0
"""A part of another ground no longer than this, such as the pit outside a slab, is dug with the rest of the stretch."""


def _counts(part: Stretch, whole: Stretch) -> bool:
    return part.length_ft > min(SHORT_PART_FT, whole.length_ft / 2)

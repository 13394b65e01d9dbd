"""A job, a line and a stretch in; everything the rules may ask about it, gathered once, out."""

from collections.abc import Iterable
from typing import Literal

from estimator.knowledge.pipe_family import family
from estimator.model.edge_beam import KnownEdge, edge_beam
from estimator.model.fall import fall_over
from estimator.model.frozen import Frozen, replace
from estimator.model.job import (
    SLAB_FLOORS,
    Approval,
    Foundation,
    House,
    Job,
    Override,
    Reroute,
    Sign,
    Site,
    WaterTest,
    Wishes,
)
from estimator.model.judgement import Need
from estimator.model.line import Finding, Line, Mark, Unclear
from estimator.model.profile import Beam, Branch, Profile
from estimator.model.pump import pumped
from estimator.model.remembered import remembered_by
from estimator.model.stretch import Stretch
from estimator.model.works import Opening, Works
from estimator.scopes.rules.deepest import deepest_ft
from estimator.tables.tables import Tables


class StretchFacts(Frozen, kw_only=True):
    """What is known of one stretch of one line. `method` is the way of repair being asked about.

    `findings`, `marks` and `needs` are those that touch the stretch; `line_*` those of the whole line. `sizes_in` are in the
    order of the flow. `edge` is what is known of the beam along the slab's edge. `depth_ft` is the deepest centre below the surface, None where no depth was read; `fall_ft` how
    much the bottom drops along the stretch, from levels only; `line_fall` the whole line's slope, ft per ft, likewise. `works` is what the repair would do there; `marks_of` are the
    marks of every line of the house, for what stands near an opening.
    """

    line: str
    stretch: Stretch
    method: str = ""
    findings: tuple[Finding, ...] = ()
    line_findings: tuple[Finding, ...] = ()
    unclear: tuple[Unclear, ...] = ()  # log lines asked back and not answered, that touch the stretch or name no place
    line_unclear: tuple[Unclear, ...] = ()
    needs: tuple[Need, ...] = ()
    marks: tuple[Mark, ...] = ()
    line_marks: tuple[Mark, ...] = ()
    branches: tuple[Branch, ...] = ()
    beams: tuple[Beam, ...] = ()
    zones: tuple[str, ...] = ()
    pipes: tuple[str, ...] = ()
    line_pipes: tuple[str, ...] = ()
    sizes_in: tuple[float, ...] = ()
    sizes_below_in: tuple[float, ...] = ()  # down the drain from its lower end, the nearest first
    soils: tuple[str, ...] = ()
    under: tuple[str, ...] = ()
    rooms: tuple[str, ...] = ()
    filmed: bool = True
    run_out_seen: bool = True  # sound pipe beyond both ends was filmed, or the line ends there
    depth_ft: float | None = None
    fall_ft: float | None = None
    line_fall: float | None = None
    slab_edge_ft: float | None = None
    cleanouts_ft: tuple[float, ...] = ()
    extent: Stretch = Stretch(0.0, 0.0)
    downstream: Literal[1, -1] = 1
    is_branch: bool = False
    ends: str = ""
    works: Works = Works(line="")
    marks_of: tuple[tuple[str, tuple[Mark, ...]], ...] = ()
    house: House = House(floor="slab", jurisdiction="")
    site: Site = Site()
    wishes: Wishes = Wishes()
    foundation: Foundation = Foundation()
    tests: tuple[WaterTest, ...] = ()
    reroutes: tuple[Reroute, ...] = ()
    signs: tuple[Sign, ...] = ()
    edge: KnownEdge = KnownEdge(None, "nobody")
    approvals: tuple[Approval, ...] = ()
    overrides: tuple[Override, ...] = ()

    # ── how deep people go ────────────────────────────────────────────────────────────────────

    @property
    def deepest(self) -> Opening | None:
        """The deepest opening people go down into; a tunnel's own floor counts by its pits, where they climb."""
        down = [o for o in self.works.with_people if o.kind != "tunnel"] or list(self.works.with_people)
        return max(down, key=lambda o: o.safety_ft, default=None)

    @property
    def safe_depth_ft(self) -> float | None:
        """Its bottom with the locator's tolerance, never rounded, ft; None where nobody goes down."""
        return None if self.deepest is None else self.deepest.safety_ft

    # ── what lies near an opening ─────────────────────────────────────────────────────────────

    def near(self, opening: Opening, *words: str, at_top: bool = False) -> tuple[tuple[Mark, float], ...]:
        """Marks of these words on the opening's own line, each with how far off its edge it lies in plan, ft.

        Nearest first. What was noted without a distance from the line stands on it.
        """
        marks = dict(self.marks_of).get(opening.line, self.line_marks if opening.line == self.line else ())
        found = ((m, opening.distance_ft(m.stretch, away_ft(m), at_top=at_top)) for m in marks if m.word in words)
        return tuple(sorted(found, key=lambda pair: pair[1]))

    # ── short questions ───────────────────────────────────────────────────────────────────────

    def of(self, *kinds: str) -> tuple[Finding, ...]:
        """Findings of these kinds in the stretch."""
        return tuple(f for f in self.findings if f.kind in kinds)

    def worst(self, *kinds: str) -> float | None:
        """The highest percent of these kinds of finding in the stretch; None where none gave a percent."""
        return max((percent_of(f, self.bore_in) for f in self.of(*kinds)), default=None)

    def has_sign(self, *signs: str) -> bool:
        return any(sign in f.signs for f in self.findings for sign in signs)

    def placed(self, *words: str) -> tuple[Mark, ...]:
        """Marks of these words in the stretch."""
        return tuple(m for m in self.marks if m.word in words)

    @property
    def bore_in(self) -> float:
        return min(self.sizes_in, default=0.0)

    @property
    def families(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(family(p) for p in self.pipes))

    @property
    def length_ft(self) -> float:
        return self.stretch.length_ft

    @property
    def on_slab(self) -> bool:
        """The house stands on a slab and the stretch, or a part of it, lies under it."""
        return "slab" in self.zones and self.house.floor in SLAB_FLOORS

    @property
    def on_slab_house(self) -> bool:
        """The house stands on a slab, whatever lies over the stretch."""
        return self.house.floor in SLAB_FLOORS

    @property
    def under_floor(self) -> bool:
        return bool({"slab", "basement"} & set(self.zones))

    @property
    def must(self) -> bool:
        return any(n.must for n in self.needs)

    @property
    def kinds(self) -> frozenset[str]:
        return frozenset(kind for n in self.needs for kind in n.kinds) | frozenset(f.kind for f in self.findings)


def away_ft(mark: Mark) -> float:
    """How far off the line a thing stands, ft; 0 where nobody said."""
    away = mark.length("away")
    return away if away is not None else mark.length() or 0.0


def percent_of(finding: Finding, bore_in: float) -> float:
    """The share of the bore a finding takes, percent; 0 where nobody said."""
    return finding.share_percent(bore_in) or 0.0


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
    return StretchFacts(
        line=line.name,
        stretch=stretch,
        findings=tuple(f for f in line.findings if f.stretch.touches(stretch)),
        line_findings=line.findings,
        unclear=tuple(u for u in line.unclear if u.stretch is None or u.stretch.touches(stretch)),
        line_unclear=line.unclear,
        needs=needs,
        marks=here,
        line_marks=line.marks,
        branches=tuple(b for b in profile.branches if stretch.holds(b.station_ft)),
        beams=tuple(b for b in profile.beams if b.stretch.touches(stretch)),
        zones=_each(zone for _, zone in profile.zones(stretch)),
        pipes=_each(pipe for _, pipe in profile.pipes(stretch)),
        line_pipes=_each(pipe for _, pipe in profile.pipes(profile.extent)),
        sizes_in=tuple(sizes if line.downstream == 1 else reversed(sizes)),
        sizes_below_in=_sizes_below(job, profile, stretch),
        soils=_soils(job, profile, stretch),
        under=_each(m.choice for m in here if m.word == "under"),
        rooms=profile.rooms(stretch),
        filmed=profile.inspected(stretch),
        run_out_seen=profile.run_out_seen(stretch, tables.number("run_out_ft")),
        depth_ft=deepest_ft(profile, stretch),
        line_fall=profile.slope_ft_per_ft(),
        fall_ft=fall_over(profile, stretch.from_ft, stretch.to_ft),
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

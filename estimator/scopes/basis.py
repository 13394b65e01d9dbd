"""Repairs on a job and the function that prices them in; what that price rests on, out: each fact, and how far it could move it.

Each end of a tolerance is a real takeoff and a real price, nothing rounded. What a dig is protected for already reaches to the
far end of the locator's tolerance, so at either end the depth is taken as found there and nothing is added to it again.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from estimator.model.basis import Basis, Fact, How
from estimator.model.deeper_line import found_at
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.opening import Opening
from estimator.model.profile import Profile
from estimator.model.say import Feet, Inches, Say
from estimator.model.work import Repair, Takeoff
from estimator.scopes.costing import Smooth
from estimator.scopes.rules import of_price
from estimator.tables.rows import Soil
from estimator.tables.tables import Tables
from estimator.works.case import UNKNOWN_SOIL

INCHES_PER_FT = 12.0
HOW_DEEP: dict[str, How] = {"read": "measured", "between": "measured", "carried": "assumed", "assumed": "assumed"}


class _Asked(Frozen):
    """What every question below reads: the scope, its takeoffs and what it costs as it stands."""

    repairs: tuple[Repair, ...]
    takeoffs: tuple[Takeoff, ...]
    job: Job
    tables: Tables
    smooth: Smooth
    price: float

    def moves(self, jobs: Iterable[Job]) -> tuple[float, float]:
        """By how much the price falls and rises at most on other jobs, dollars; 0 for none."""
        moved = [self.smooth(self.repairs, job, self.tables) - self.price for job in jobs]
        return max((0.0, *(-m for m in moved))), max((0.0, *moved))


def basis_of(repairs: Sequence[Repair], takeoffs: Sequence[Takeoff], job: Job, tables: Tables, smooth: Smooth) -> Basis:
    """Return what the price of these repairs rests on. Errors: those of takeoff and pricing."""
    dug = [t for t in takeoffs if t.works.openings or t.works.renewed]
    if not dug:
        return Basis(price=smooth(repairs, job, tables))
    asked = _Asked(tuple(repairs), tuple(dug), job, tables, smooth, smooth(repairs, job, tables))
    facts = (*_pipe(asked), *_depth(asked), *_ways_in(asked), *_joins(asked), *_soil(asked), *_slab(asked))
    return Basis(price=asked.price, facts=tuple(dict.fromkeys(facts)))


def _pipe(asked: _Asked) -> Iterator[Fact]:
    """The pipe inside the works and the run-out beyond them; levels where a dip is laid anew."""
    for takeoff in asked.takeoffs:
        works = takeoff.works
        if not works.renewed or not any(line.name == works.line for line in asked.job.lines):
            continue
        profile = Profile(asked.job.line(works.line))
        for part in works.renewed:
            seen = profile.inspected(part)
            yield Fact(
                subject="pipe", line=works.line, stretch=part, how="seen" if seen else "assumed",
                words=Say.of("the pipe that is worked on, {low} to {high}", low=Feet(round(part.from_ft, 2)), high=Feet(round(part.to_ft, 2))),
                settled_by="" if seen else "film",
            )  # fmt: skip
            beyond = profile.run_out_seen(part, asked.tables.number("run_out_ft"))
            yield Fact(
                subject="run-out", line=works.line, stretch=part, how="seen" if beyond else "assumed",
                words=Say.of("sound pipe beyond both ends"), settled_by="" if beyond else "film",
            )  # fmt: skip
            if any(f.kind == "sag" and f.stretch.touches(part) for f in profile.line.findings) and works.laid:
                level = profile.fall_ft(part.from_ft, part.to_ft).value is not None
                yield Fact(
                    subject="levels", line=works.line, stretch=part, how="measured" if level else "assumed",
                    words=Say.of("the levels that decide the slope"), settled_by="" if level else "level",
                )  # fmt: skip


def _depth(asked: _Asked) -> Iterator[Fact]:
    """How deep the pipe lies: every line that is dug, the locator's tolerance up and down on all of them at once."""
    digs = [o for t in asked.takeoffs for o in t.works.digs if o.line]
    if not digs:
        return
    off = {line: max(o.tolerance_ft for o in digs if o.line == line) for line in dict.fromkeys(o.line for o in digs)}
    falls, rises = asked.moves(_all_deeper(asked.job, off, way) for way in (-1, 1) if any(off.values()))
    deepest = max(digs, key=lambda o: o.safety_ft)
    how = _how_deep(digs, asked.job)
    yield Fact(
        subject="depth", line=deepest.line, stretch=deepest.along, how=how,
        words=Say.of("depth of the pipe at the deepest opening, within {off}", off=Inches(round(off[deepest.line] * INCHES_PER_FT, 1))),
        falls=falls, rises=rises, settled_by="locate" if how == "assumed" else _finder(digs) if rises else "",
    )  # fmt: skip


def _all_deeper(job: Job, off: dict[str, float], way: int) -> Job:
    for line, by_ft in off.items():
        job = found_at(job, line, way * by_ft)
    return job


def _how_deep(digs: Iterable[Opening], job: Job) -> How:
    """As the least sure of them: seen by eye, measured from above, or carried on from another place."""
    found: set[How] = set()
    for one in digs:
        known = Profile(job.line(one.line)).depth_to_centre_ft(one.along.middle_ft).how
        found.add("assumed" if not one.depth_known else "seen" if not one.tolerance_ft else HOW_DEEP[known])
    order: tuple[How, ...] = ("assumed", "measured", "seen")
    return next(how for how in order if how in found)


def _finder(digs: Iterable[Opening]) -> str:
    """The visit that takes the locator's tolerance away: a hole from above, or under a floor levels of the pipe's bottom."""
    return "pothole" if all(o.opens_ground for o in digs) else "level"


def _ways_in(asked: _Asked) -> Iterator[Fact]:
    for takeoff in asked.takeoffs:
        for one in takeoff.works.assumed:
            yield Fact(
                subject="access point", line=one.line or takeoff.works.line, stretch=one.along, how="assumed",
                words=Say.of("{opening}: nobody measured that it can lie there", opening=one.name), settled_by="measure",
            )  # fmt: skip


def _joins(asked: _Asked) -> Iterator[Fact]:
    """Where a branch joins, told or not, where the work reaches it or goes in by it."""
    for takeoff in asked.takeoffs:
        line = next((one for one in asked.job.lines if one.name == takeoff.works.line), None)
        wye = any(x.new_wye for x in takeoff.works.laid)
        if line is None or not (takeoff.works.tunnels or wye):
            continue
        known = line.joins is not None or (Profile(line).slab_edge_ft is not None and not wye)
        yield Fact(
            subject="join", line=line.name, stretch=takeoff.repair.stretch, how="told" if known else "assumed",
            words=Say.of("where the line joins another or leaves the house"), settled_by="" if known else "measure",
        )  # fmt: skip


def _soil(asked: _Asked) -> Iterator[Fact]:
    """The ground: as somebody named it; else every soil of the tables that the work can be done in.

    Rock is none of them: it has a unit price that is agreed beforehand.
    """
    places = [t for t in asked.takeoffs if t.works.digs]
    if not places:
        return
    here = places[0].repair
    named = Profile(asked.job.line(here.line)).soil(here.stretch.middle_ft) or asked.job.house.soil
    fact = Fact(
        subject="soil", line=here.line, stretch=here.stretch, how="told" if named else "assumed",
        words=Say.of("the ground: {soil}", soil=named or UNKNOWN_SOIL),
    )  # fmt: skip
    if named:
        yield fact
        return
    tunnel = any(t.works.tunnels for t in places)
    rows = [r for r in asked.tables.current("soils") if isinstance(r, Soil) and (r.can_tunnel or not tunnel)]
    soils = [r.soil for r in rows if r.osha_type != "rock" and "rock" not in r.soil]
    falls, rises = asked.moves(_in_soil(asked.job, soil) for soil in soils)
    yield replace(fact, falls=falls, rises=rises, settled_by="measure" if rises else "")


def _in_soil(job: Job, soil: str) -> Job:
    return replace(job, house=replace(job.house, soil=soil))


def _slab(asked: _Asked) -> Iterator[Fact]:
    """How thick the floor is that is opened: told, or the firm's number with what it may be off."""
    opened = [(t, o) for t in asked.takeoffs for o in t.works.floors]
    if not opened:
        return
    (takeoff, one), told = opened[0], asked.job.house.slab_thickness_ft
    thick, off = asked.tables.number("slab_thickness_ft"), asked.tables.number("slab_thickness_off_in") / INCHES_PER_FT
    falls, rises = asked.moves(_thick(asked.job, ft) for ft in (thick - off, thick + off) if told is None)
    yield Fact(
        subject="slab", line=takeoff.works.line, stretch=one.along, how="told" if told is not None else "assumed",
        words=Say.of("thickness of the floor: {inches}", inches=Inches(round((told or thick) * INCHES_PER_FT, 1))),
        falls=falls, rises=rises, settled_by="measure" if rises else "",
    )  # fmt: skip


def _thick(job: Job, slab_ft: float) -> Job:
    return replace(job, house=replace(job.house, slab_thickness_ft=slab_ft))


def on_its_basis(
    repairs: Sequence[Repair], takeoffs: tuple[Takeoff, ...], job: Job, tables: Tables, smooth: Smooth
) -> tuple[Basis, tuple[Takeoff, ...]]:
    """Return what their price rests on, and the takeoffs with what the rules say of that, on the line that moves it most."""
    basis = basis_of(repairs, takeoffs, job, tables, smooth)
    most = basis.moves_most
    if most is None:
        return basis, takeoffs
    here = next(t for t in takeoffs if t.repair.line == most.line and t.works.openings)
    said = of_price(basis, here.repair, here.works, job, tables)
    return basis, tuple(replace(t, finds=(*t.finds, *said)) if t is here else t for t in takeoffs)

"""An option on a job in, the unknowns that move its price most, out: sorted, each with the question that settles it; of a quote, for every option."""

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.line import Mark
from estimator.model.offer import Option, Quote
from estimator.model.profile import Profile
from estimator.model.say import Dollars, Feet, Say
from estimator.model.stretch import Stretch
from estimator.model.work import Repair, Scope, all_repairs
from estimator.pipeline.costing import smooth, with_job_settings
from estimator.quote.recommend import compared
from estimator.scopes.basis import basis_of
from estimator.studies.priced import with_floor
from estimator.tables.rows import Soil
from estimator.tables.tables import Tables
from estimator.takeoff import take_off
from estimator.works.methods import record_of, renews


class Unknown(Frozen, kw_only=True):
    """Something not known for sure: the smooth all-in price at its two ends in dollars, and what to find out."""

    what: Say
    low: Decimal
    high: Decimal
    question: Say

    @property
    def swing(self) -> Decimal:
        return self.high - self.low


def sensitivity(scope: Scope, job: Job, tables: Tables, otherwise: Scope | None = None) -> tuple[Unknown, ...]:
    """The unknowns of this scope, the greatest swing first; what moves nothing is left out.

    `otherwise` is what would have to be done instead where old iron does not hold its shape once the scale is out.
    Errors: those of takeoff and pricing.
    """
    found = [*_depths(scope, job, tables), *_soil(scope, job, tables), *_sound_pipe(scope, job, tables)]
    found += [*_floor(scope, job, tables), *_branches(scope, job, tables)]
    found += [*_shape(scope, otherwise, job, tables)] if otherwise is not None else []
    return tuple(sorted((u for u in found if u.swing > 0), key=lambda u: (-u.swing, str(u.what))))


def _unknown(what: Say, question: Say, *prices: float) -> Unknown:
    dollars = [Decimal(round(price)) for price in prices]
    return Unknown(what=what, low=min(dollars), high=max(dollars), question=question)


def _depths(scope: Scope, job: Job, tables: Tables) -> Iterator[Unknown]:
    """The pipe's depth by the locator's tolerance, which the dig's protection holds already."""
    takeoffs = [take_off(one, job, tables) for one in all_repairs(scope.repairs)]
    depth = next(
        (f for f in basis_of(scope.repairs, takeoffs, job, tables, smooth).facts if f.subject == "depth"), None
    )
    if depth is not None:
        price = with_floor(scope.repairs, job, tables)
        yield _unknown(
            Say.of("{line}: {what}", line=depth.line, what=depth.words),
            Say.of("Locate the {line} again, or uncover it at one place.", line=depth.line),
            price - depth.falls,
            price + depth.rises,
        )


def _soil(scope: Scope, job: Job, tables: Tables) -> Iterator[Unknown]:
    """The ground, over every soil of the firm's table that these ways can be dug in."""
    if not any(take_off(r, job, tables).works.digs for r in all_repairs(scope.repairs)):
        return
    tunnel = any(take_off(r, job, tables).works.tunnels for r in all_repairs(scope.repairs))
    soils = [row for row in tables.current("soils") if isinstance(row, Soil) and (row.can_tunnel or not tunnel)]
    jobs = [replace(job, house=replace(job.house, soil=row.soil)) for row in soils]
    yield _unknown(
        Say.of("what the ground is"),
        Say.of("Dig one hole by hand beside the line and see what the ground is."),
        with_floor(scope.repairs, job, tables),
        *(with_floor(scope.repairs, j, tables) for j in jobs),
    )


def _sound_pipe(scope: Scope, job: Job, tables: Tables) -> Iterator[Unknown]:
    """Old pipe may be sound only further on: the far end of each dig by one more pad."""
    pad = tables.number("pad_cast_iron_ft")
    longer = tuple(_longer(r, job, pad) if _laid_new(r) else r for r in scope.repairs)
    if longer != scope.repairs:
        yield _unknown(
            Say.of("how far it is to sound pipe, {pad} more", pad=Feet(pad)),
            Say.of("Film past both ends of the bad part and look at the joints there."),
            with_floor(scope.repairs, job, tables),
            with_floor(longer, job, tables),
        )


def _laid_new(repair: Repair) -> bool:
    """New pipe in place of old, as long as the bad part is."""
    record = record_of(repair.method)
    return record.renews and not record.lined and record.kind != "go around"


def _longer(repair: Repair, job: Job, by_ft: float) -> Repair:
    """On upstream, as far as the line is known."""
    line = job.line(repair.line)
    extent = Profile(line).extent.union(repair.stretch)
    longer = repair.stretch.padded(by_ft, 0) if line.downstream == 1 else repair.stretch.padded(0, by_ft)
    return replace(repair, stretch=longer.common(extent) or repair.stretch)


def _floor(scope: Scope, job: Job, tables: Tables) -> Iterator[Unknown]:
    """The floor covering, between the firm's least and most, where the homeowner's own price is not known."""
    if job.house.floor_price_sf:
        return
    ends = [Decimal(tables.text(key)) for key in ("floor_price_low", "floor_price_high")]
    jobs = [replace(job, house=replace(job.house, floor_price_sf=price)) for price in ends]
    yield _unknown(
        Say.of("what the floor costs to put back, {low} to {high} a square foot", low=Dollars(ends[0]), high=Dollars(ends[1])),
        Say.of("Ask what the floor is and what it cost; look for spare tiles."),
        *(with_floor(scope.repairs, j, tables) for j in jobs),
    )  # fmt: skip


def _branches(scope: Scope, job: Job, tables: Tables) -> Iterator[Unknown]:
    """Side drains nobody proved to be in use: joined again, or found dead."""
    for repair in all_repairs(scope.repairs):
        if not renews(repair.method):
            continue
        line = job.line(repair.line)
        unsure = [m for m in line.marks if m.word == "branch" and _unproven(m, repair.stretch)]
        if unsure:
            marks = tuple(replace(m, live="dead") if m in unsure else m for m in line.marks)
            lines = tuple(replace(one, marks=marks) if one.name == line.name else one for one in job.lines)
            yield _unknown(
                Say.of("{count} side drains not proven to be in use", count=len(unsure)),
                Say.of("Run water at each fixture while the camera watches."),
                with_floor(scope.repairs, job, tables),
                with_floor(scope.repairs, replace(job, lines=lines), tables),
            )


def _unproven(mark: Mark, stretch: Stretch) -> bool:
    return stretch.holds(mark.stretch.from_ft) and mark.live != "dead" and not (mark.live == "live" and mark.proven)


def _shape(scope: Scope, otherwise: Scope, job: Job, tables: Tables) -> Iterator[Unknown]:
    """Lining old iron or scaled pipe: it may not hold its shape once it is clean, and then the other way is needed."""
    lined = [r for r in all_repairs(scope.repairs) if record_of(r.method).lined and "iron" in _pipes(r, job)]
    if lined:
        yield _unknown(
            Say.of("whether the old pipe holds its shape once it is clean"),
            Say.of("Scrape one length to bare metal and film it again before anything is promised."),
            with_floor(scope.repairs, job, tables),
            with_floor(otherwise.repairs, job, tables),
        )


def _pipes(repair: Repair, job: Job) -> str:
    return " ".join(pipe for _, pipe in Profile(job.line(repair.line)).pipes(repair.stretch))


def unknowns(quote: Quote, tables: Tables) -> Iterator[tuple[Option, tuple[Unknown, ...]]]:
    """Each option with its unknowns. Where a lining may not hold, the cheapest option without one is what comes instead."""
    job: Job = quote.job
    own = with_job_settings(job, tables)
    instead = without_lining(quote)
    for option in compared(quote):
        yield option, sensitivity(option.scope, job, own, instead)


def without_lining(quote: Quote) -> Scope | None:
    """The scope of the cheapest option that lines nothing, or None."""
    open_ = [o for o in compared(quote) if not any(record_of(r.method).lined for r in o.scope.repairs)]
    return min(open_, key=lambda o: (o.price.total, o.letter)).scope if open_ else None

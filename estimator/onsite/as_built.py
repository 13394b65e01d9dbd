"""A sold option and what was noted of the finished work in; pipe as it lies against pipe as planned, and what the record still lacks, out."""

from collections.abc import Iterable

from estimator.model.afterwards import Afterwards, LaidPipe
from estimator.model.job import Job
from estimator.model.offer import Option
from estimator.model.say import Feet, Inches, Say
from estimator.model.stretch import Stretch, joined
from estimator.model.works import Burst, Laid, Lined
from estimator.onsite.sheet import Block, Words
from estimator.works.methods import known

SAME_FT = 0.5
"""Ends that differ less than this are as planned: a tape along a trench is no better (judgment)."""
NEAR_FT = 1.0


def planned(option: Option) -> dict[str, tuple[Stretch, ...]]:
    """Return where the option gives a line new pipe or lining, by line; ways round have no line and are not among them."""
    out: dict[str, list[Stretch]] = {}
    for takeoff in option.takeoffs:
        works = takeoff.works
        pipes: tuple[Laid | Lined | Burst, ...] = (*works.laid, *works.lined, *works.burst)
        for pipe in pipes:
            if pipe.line and pipe.stretch.length_ft > 0:
                out.setdefault(pipe.line, []).append(pipe.stretch)
    return {line: joined(parts) for line, parts in out.items()}


def work_laid(option: Option, after: Afterwards) -> Block:
    """Return what was laid, each beside the nearest planned stretch of its line."""
    heads = (Say.of("line"), Say.of("where it lies"), Say.of("pipe"), Say.of("against the plan"), Say.of("remark"))
    plan = planned(option)
    rows = tuple(_row(laid, plan.get(laid.line, ())) for laid in after.laid)
    return Block(heading=Say.of("As built"), heads=heads, rows=rows)


def _row(laid: LaidPipe, plan: tuple[Stretch, ...]) -> tuple[Words, ...]:
    where = Stretch.between(laid.from_ft, laid.to_ft)
    low, high = Feet(round(where.from_ft, 1)), Feet(round(where.to_ft, 1))
    pipe = Say.of("{size} {pipe}", size=Inches(round(laid.size_ft * 12, 2)), pipe=laid.pipe)
    return (
        Say.of("{line}", line=laid.line),
        Say.of("{low} to {high}", low=low, high=high),
        pipe,
        _against(where, plan),
        laid.note,
    )


def _against(where: Stretch, plan: tuple[Stretch, ...]) -> Say:
    near = [p for p in plan if p.touches(where)]
    if not near:
        return Say.of("not planned")
    wanted = min(near, key=lambda p: abs(p.from_ft - where.from_ft) + abs(p.to_ft - where.to_ft))
    if max(abs(wanted.from_ft - where.from_ft), abs(wanted.to_ft - where.to_ft)) <= SAME_FT:
        return Say.of("as planned")
    return Say.of("planned {low} to {high}", low=Feet(round(wanted.from_ft, 1)), high=Feet(round(wanted.to_ft, 1)))


def missing(option: Option, job: Job, after: Afterwards) -> tuple[Say, ...]:
    """Return what the record lacks to stand by itself: pipe, levels at both ends, a passed test, a picture, a passed inspection."""
    return tuple(_missing(option, job, after))


def _missing(option: Option, job: Job, after: Afterwards) -> Iterable[Say]:
    dug = {p.line for t in option.takeoffs for p in t.works.laid}
    for line, parts in planned(option).items():
        for part in parts:
            if not any(x.line == line and Stretch.between(x.from_ft, x.to_ft).touches(part) for x in after.laid):
                yield Say.of(
                    "What was laid on line {line}, {low} to {high}.",
                    line=line,
                    low=Feet(round(part.from_ft, 1)),
                    high=Feet(round(part.to_ft, 1)),
                )
            elif line in dug:
                yield from _levels_at_ends(line, part, after)
    if not any(t.result == "passed" for t in after.tests):
        yield Say.of("A passed water test of the finished work.")
    if job.foundation.work == "planned" and not any(t.after_lift and t.result == "passed" for t in after.tests):
        yield Say.of("A passed water test after the lift.")
    if not after.stills:
        yield Say.of("A picture of each tie-in.")
    inspected = any(t.value("inspections") for t in option.takeoffs)
    if inspected and not any(i.kind == "inspector" and i.result == "passed" for i in after.inspections):
        yield Say.of("The inspector's approval.")


def _levels_at_ends(line: str, part: Stretch, after: Afterwards) -> Iterable[Say]:
    laid = [Stretch.between(x.from_ft, x.to_ft) for x in after.laid if x.line == line]
    whole = min((x for x in laid if x.touches(part)), key=lambda x: abs(x.from_ft - part.from_ft))
    for end in (whole.from_ft, whole.to_ft):
        if not any(b.line == line and abs(b.at_ft - end) <= NEAR_FT for b in after.levels):
            yield Say.of("A level at the tie-in of line {line}, {at}.", line=line, at=Feet(round(end, 1)))


def way(method: str) -> Words:
    """Return a way of repair by its name in the tables, to be said in the reader's language."""
    record = known(method)
    return record.label if record else method

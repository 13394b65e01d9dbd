"""A sold option and what was typed after the work in; the record of the work as a sheet: as built, warranties, callbacks, what is missing, out."""

from collections.abc import Iterable, Sequence
from datetime import date
from decimal import Decimal
from itertools import zip_longest

from estimator.model.afterwards import OURS, Afterwards, BuiltLevel
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.offer import Option
from estimator.model.say import Dollars, Feet, FromTable, Inches, Say
from estimator.onsite.as_built import missing, way, work_laid
from estimator.onsite.failed_inspection import failed_block, failed_inspection
from estimator.onsite.height_readings import INCHES_PER_FT
from estimator.onsite.sheet import Block, SiteSheet, Words
from estimator.onsite.warranty import Warranty, last_day, looks_due
from estimator.tables.rows_for_paper import MethodRow
from estimator.tables.tables import Tables

NAME = "record"


class Sold(Frozen, kw_only=True):
    """The option as it was sold, its job, the tables of that day and those of today, and the day the work was noted as done."""

    option: Option
    job: Job
    tables_then: Tables
    tables: Tables
    done: date | None


def record_sheet(sold: Sold, after: Afterwards) -> SiteSheet:
    """Return the record of the work. Warranties begin on the day the work was done, after a planned lift with its passed water test."""
    begins = warranty_begins(sold, after)
    warranties = warranties_of(sold, begins)
    due = _due(sold, after, warranties, begins)
    failed = failed_inspection(sold.option, sold.tables)
    blocks = (
        Block(heading=Say.of("Still missing from this record"), lines=missing(sold.option, sold.job, after)),
        work_laid(sold.option, after),
        _levels(sold.job, after.levels),
        _tests(after),
        _stills(after),
        _inspections(after),
        _warranties(warranties, begins),
        Block(heading=Say.of("Next camera inspection"), lines=tuple(Say.of("On {day}.", day=day) for day in due)),
        _callbacks(after, warranties),
        failed_block(failed) if failed else Block(heading=Say.of("If the inspection fails")),
    )
    title = Say.of("Record of the work: option {letter}", letter=sold.option.letter)
    return SiteSheet(
        name=NAME, title=title, answer=_answer(sold, begins, due), blocks=tuple(b for b in blocks if not b.empty)
    )


def _answer(sold: Sold, begins: date | None, due: Sequence[date]) -> Say:
    if sold.done is None:
        return Say.of("The work is not noted as done. Type: estimator quote JOB --done --on DAY.")
    if begins is None:
        return Say.of("Done on {day}. The warranty begins with a passed water test after the lift.", day=sold.done)
    return Say.of("Done on {day}. Next camera inspection: {due}.", day=sold.done, due=due[0])


def warranty_begins(sold: Sold, after: Afterwards) -> date | None:
    """Return the first day of the warranties; None before the work is done, or before the test after a planned lift passed."""
    if sold.done is None or sold.job.foundation.work != "planned":
        return sold.done
    passed = [t.on for t in after.tests if t.after_lift and t.result == "passed"]
    return max(sold.done, min(passed)) if passed else None


def warranties_of(sold: Sold, begins: date | None) -> tuple[Warranty, ...]:
    """Return one warranty for each way of repair that was sold, in its words of that day."""
    methods = dict.fromkeys(t.repair.method for t in sold.option.takeoffs if t.repair.method != "job")
    rows = {row.method: row for row in sold.tables_then.current("methods") if isinstance(row, MethodRow)}
    return tuple(
        Warranty(
            name,
            rows[name].warranty_en,
            rows[name].warranty_es,
            begins,
            last_day(rows[name].warranty_en, begins) if begins else None,
        )
        for name in methods
        if name in rows
    )


def _due(sold: Sold, after: Afterwards, warranties: Sequence[Warranty], begins: date | None) -> tuple[date, ...]:
    if begins is None:
        return ()
    looked = [i.on for i in after.inspections if i.kind == "camera"]
    ends = [w.ends for w in warranties if w.ends]
    return looks_due(begins, looked, ends, int(sold.tables.number("reinspection_months")))


def _levels(job: Job, levels: Sequence[BuiltLevel]) -> Block:
    heads = (Say.of("line"), Say.of("station"), Say.of("bottom below slab top"), Say.of("slope to the next, per foot"))
    return Block(heading=Say.of("Levels as built"), heads=heads, rows=tuple(_level_rows(job, levels)))


def _level_rows(job: Job, levels: Sequence[BuiltLevel]) -> Iterable[tuple[Words, ...]]:
    """With the flow, line by line; the fall to the next level, and uphill in words."""
    for line in job.lines:
        mine = sorted((b for b in levels if b.line == line.name), key=lambda b: b.at_ft * line.downstream)
        for here, there in zip_longest(mine, mine[1:]):
            bottom = Say.of("{inches}", inches=Inches(round(here.bottom_ft * INCHES_PER_FT, 2)))
            name, at = Say.of("{line}", line=line.name), Say.of("{at}", at=Feet(round(here.at_ft, 1)))
            yield (name, at, bottom, _fall(here, there))


def _fall(here: BuiltLevel, there: BuiltLevel | None) -> Say:
    if there is None:
        return Say.of("end of the levels")
    way = abs(there.at_ft - here.at_ft)
    if way == 0:
        return Say.of("same place")
    slope = (there.bottom_ft - here.bottom_ft) / way * INCHES_PER_FT
    if slope < 0:
        return Say.of("REVERSED {slope}", slope=Inches(round(-slope, 3)))
    return Say.of("{inches}", inches=Inches(round(slope, 3)))


def _tests(after: Afterwards) -> Block:
    heads = (
        Say.of("day"),
        Say.of("what was tested"),
        Say.of("head"),
        Say.of("drop"),
        Say.of("result"),
        Say.of("witness"),
    )
    rows = tuple(
        (
            Say.of("{day}", day=t.on),
            Say.of("{what}, after the lift", what=t.what) if t.after_lift else t.what,
            Say.of("{at}", at=Feet(t.head_ft)) if t.head_ft is not None else Say.of("not noted"),
            _drop(t.drop_ft, t.minutes),
            RESULTS[t.result],
            t.witness,
        )
        for t in after.tests
    )
    return Block(heading=Say.of("Tests of the finished work"), heads=heads, rows=rows)


def _drop(drop_ft: float | None, minutes: float | None) -> Say:
    if drop_ft is None:
        return Say.of("not noted")
    inches = Say.of("{inches}", inches=Inches(round(drop_ft * INCHES_PER_FT, 2))) if drop_ft else Say.of("none")
    return Say.of("{drop}, {minutes} min", drop=inches, minutes=f"{minutes:g}") if minutes else inches


def _cover(warranty: Warranty | None, day: date) -> Say:
    """How a warranty stands on the day of a callback."""
    if warranty is None:
        return Say.of("none")
    if warranty.begins is None:
        return Say.of("not begun")
    if warranty.ends is None:
        return Say.of("no term stated")
    return Say.of("in force") if day <= warranty.ends else Say.of("ended")


RESULTS = {"passed": Say.of("passed"), "failed": Say.of("FAILED")}
VISITORS = {"inspector": Say.of("inspector"), "camera": Say.of("our camera")}
CAUSES = {
    "our work": Say.of("our work"),
    "our material": Say.of("our material"),
    "old pipe beyond": Say.of("old pipe beyond our work"),
    "ground movement": Say.of("ground movement"),
    "use": Say.of("use of the drain"),
    "no fault found": Say.of("no fault found"),
}


def _stills(after: Afterwards) -> Block:
    heads = (Say.of("picture"), Say.of("where"), Say.of("what it shows"))
    rows = tuple(
        (
            s.file,
            Say.of("{line}, {at}", line=s.line, at=Feet(round(s.at_ft, 1))) if s.at_ft is not None else s.line,
            s.shows,
        )
        for s in after.stills
    )
    return Block(heading=Say.of("Pictures of the finished work"), heads=heads, rows=rows)


def _inspections(after: Afterwards) -> Block:
    heads = (Say.of("day"), Say.of("who"), Say.of("result"), Say.of("why"))
    rows = tuple(
        (Say.of("{day}", day=i.on), VISITORS[i.kind], RESULTS[i.result], i.why)
        for i in sorted(after.inspections, key=lambda i: i.on)
    )
    return Block(heading=Say.of("Inspections"), heads=heads, rows=rows)


def _warranties(warranties: Sequence[Warranty], begins: date | None) -> Block:
    heads = (Say.of("method"), Say.of("warranty"), Say.of("begins"), Say.of("last day"))
    rows = tuple(
        (
            way(w.method),
            Say.of("{words}", words=FromTable(w.text_en, w.text_es)),
            Say.of("{day}", day=begins) if begins else Say.of("not yet"),
            Say.of("{day}", day=w.ends) if w.ends else Say.of("no term stated") if begins else Say.of("not yet"),
        )
        for w in warranties
    )
    return Block(heading=Say.of("Warranties"), heads=heads, rows=rows)


def _callbacks(after: Afterwards, warranties: Sequence[Warranty]) -> Block:
    heads = (
        Say.of("day"),
        Say.of("method"),
        Say.of("cause"),
        Say.of("cost"),
        Say.of("warranty"),
        Say.of("what"),
    )
    of = {w.method: w for w in warranties}
    rows = []
    for call in sorted(after.callbacks, key=lambda c: c.on):
        day = Say.of("{day}", day=call.on)
        rows.append(
            (
                day,
                way(call.method),
                CAUSES[call.cause],
                Say.of("{amount}", amount=Dollars(call.cost)),
                _cover(of.get(call.method), call.on),
                call.what,
            )
        )
    lines: tuple[Say, ...] = ()
    if rows:
        ours = sum((c.cost for c in after.callbacks if c.cause in OURS), Decimal(0))
        total = sum((c.cost for c in after.callbacks), Decimal(0))
        lines = (
            Say.of("Cost {total}; {ours} of that from our work or material.", total=Dollars(total), ours=Dollars(ours)),
        )
    return Block(heading=Say.of("Callbacks"), lines=lines, heads=heads, rows=tuple(rows))

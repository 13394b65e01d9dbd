"""A job and a stretch in, the ways to renew that same stretch side by side out: money by class, days, floors, what can go wrong."""

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from estimator.diagnosis import diagnose
from estimator.model.comparison import Column, Comparison
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis, Effect, Verdict
from estimator.model.profile import Profile
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch
from estimator.model.work import Repair
from estimator.scopes.before import DIG_FACTS
from estimator.scopes.candidates import Offers, repairs
from estimator.scopes.ground import runs_under
from estimator.scopes.judge import Judge, counts
from estimator.scopes.rules import may
from estimator.scopes.wanted import over_stretch
from estimator.studies.deciding import decides
from estimator.studies.priced import study
from estimator.tables.tables import Tables
from estimator.wording.plain import CLASSES, LINES, in_plain_words
from estimator.works.methods import RECORDS, Method, record_of

WORK: tuple[tuple[Say, tuple[str, ...]], ...] = (
    (Say.of("side drains joined again"), ("branches", "branches_tunnel", "reinstatements")),
    (Say.of("water tests"), ("tests",)),
)
"""What must be alike, beside the stretch itself, for two columns to be the same work."""


def compare(
    job: Job, tables: Tables, line: str = "", stretch: Stretch | None = None, methods: Sequence[str] = ()
) -> Comparison | None:
    """The same stretch by each way. Without a stretch: the one the search found for the dearest trouble.

    `methods` empty: those usual for what lies over the pipe. None where no stretch is dug for and none was given.
    Errors: KeyError for an unknown line.
    """
    diagnosis = diagnose(job, tables)
    offers = repairs(job, diagnosis, tables)
    where = (line, stretch) if line and stretch else _longest(offers, line)
    if where is None:
        return None
    line, stretch = where
    names = methods or _usual(job, line, stretch, offers)
    columns = [_column(m, line, stretch, offers, job, diagnosis, tables) for m in names]
    round_it = [r for r in offers.repairs if _goes_round(r, line, stretch)]
    columns += [_priced(r, job, diagnosis, tables) for r in round_it]
    if not round_it:
        columns += [Column(method=v.method, against=v) for v in offers.verdicts if _no_way_round(v, line)][:1]
    ordered = sorted(columns, key=lambda c: (c.option is None, c.option.all_in if c.option else 0))
    return Comparison(
        line=line,
        stretch=stretch,
        does=_does(job, line, stretch),
        columns=tuple(_with_differences(ordered)),
        decides=decides(ordered, job),
    )


def _longest(offers: Offers, line: str) -> tuple[str, Stretch] | None:
    """The stretch that a tunnel, a strip or a trench would renew: of those that answer most, the shortest.

    Where something is wrong under a slab, tunnel or floor is the question that stands, whatever lies in the yard.
    """
    digs = [r for r in offers.repairs if _is_dug(r.method) and (not line or r.line == line)]
    under_floor = [r for r in digs if record_of(r.method).ground == "floor" and r.answers]
    if not digs:
        return None
    best = max(under_floor or digs, key=lambda r: (len(r.answers), -r.stretch.length_ft))
    return best.line, best.stretch


def _usual(job: Job, line: str, stretch: Stretch, offers: Offers) -> tuple[str, ...]:
    """By what lies over the pipe; a short trench is a spot dig."""
    if runs_under(Profile(job.line(line)), "floor", stretch):
        return _weighed("floor", spot=False)
    here = (r for r in offers.repairs if (r.line, r.stretch) == (line, stretch))
    return _weighed("outside", spot=any(record_of(r.method).spot and _is_dug(r.method) for r in here))


def _is_dug(method: str) -> bool:
    """It is set against others, and opens one kind of ground for the whole of its length."""
    record = record_of(method)
    return bool(record.weighed and record.ground)


def _weighed(ground: str, *, spot: bool) -> tuple[str, ...]:
    """The ways that are set against each other under this ground, spots or runs, and those inside the pipe; the digs first."""
    ways = sorted((m for m in RECORDS.values() if m.weighed), key=lambda m: (not m.ground, m.weighed))
    return tuple(m.name for m in ways if _goes(m, ground, spot))


def _goes(method: Method, ground: str, spot: bool) -> bool:
    if method.ground:
        return method.ground == ground and method.spot is spot
    return ground == "outside" or method.lined  # nothing is pulled through under a floor


def _column(
    method: str, line: str, stretch: Stretch, offers: Offers, job: Job, diagnosis: Diagnosis, tables: Tables
) -> Column:
    """The offered repair over just this stretch where there is one; else one made for it."""
    same = [r for r in offers.repairs if (r.method, r.line, r.stretch) == (method, line, stretch)]
    made = same[0] if same else over_stretch(method, line, stretch, diagnosis.needs, Judge(job, tables, may))
    if not isinstance(made, Repair):
        return Column(method=method, against=made[0])
    dig = [v for v in made.verdicts if counts(v, Effect.REQUIRES_FIRST) and v.facts & DIG_FACTS]
    if dig and not made.first:
        return Column(method=method, against=dig[0])
    return _priced(made, job, diagnosis, tables)


def _goes_round(repair: Repair, line: str, stretch: Stretch) -> bool:
    return record_of(repair.method).goes_round and repair.line == line and repair.stretch.touches(stretch)


def _no_way_round(verdict: Verdict, line: str) -> bool:
    """A way round was seen on site and a rule stands against it."""
    return verdict.line == line and record_of(verdict.method).goes_round


def _priced(repair: Repair, job: Job, diagnosis: Diagnosis, tables: Tables) -> Column:
    option = study((repair,), job, diagnosis, tables).option
    against = next((v for t in option.takeoffs for v in t.finds if counts(v, Effect.BLOCKS)), None)
    if against is not None:
        return Column(method=repair.method, against=against)
    amounts = dict.fromkeys(CLASSES, Decimal(0))
    for line in option.price.lines:
        amounts[line.work_class] = amounts.get(line.work_class, Decimal(0)) + line.amount
    return Column(method=repair.method, option=option, by_class=tuple(amounts.items()))


def _with_differences(columns: Sequence[Column]) -> list[Column]:
    """Against the one that puts most right."""
    there = [c for c in columns if c.option is not None]
    base = max(there, key=lambda c: (len(_answered(c)), _is_dig(c)), default=None)
    return [replace(c, differs=_differs(base, c)) if base is not None and c.option else c for c in columns]


def _is_dig(column: Column) -> bool:
    return _is_dug(column.method)


def _answered(column: Column) -> frozenset[str]:
    assert column.option is not None
    return frozenset(answer for r in column.option.scope.repairs for answer in r.answers)


def _differs(first: Column, other: Column) -> tuple[Say, ...]:
    """Same stretch, same troubles put right, same side drains, same tests; else what is more or less."""
    out = [_other_stretch(other)] if _stretches(other) != _stretches(first) else []
    left = len(_answered(first) - _answered(other))
    if left:
        out.append(Say.of("not the same work: it leaves {count} of the bad places as they are", count=left))
    for what, names in WORK:
        here, there = _sum(other, names), _sum(first, names)
        if here != there:
            out.append(Say.of("not the same work: {what} {here}, against {there}", what=what, here=here, there=there))
    return tuple(out)


def _stretches(column: Column) -> tuple[tuple[str, Stretch], ...]:
    assert column.option is not None
    return tuple((r.line, r.stretch) for r in column.option.scope.repairs)


def _other_stretch(column: Column) -> Say:
    length = sum(stretch.length_ft for _, stretch in _stretches(column))
    return Say.of("not the same work: it takes the place of {length}", length=Feet(round(length, 1)))


def _sum(column: Column, names: Sequence[str]) -> int:
    assert column.option is not None
    return round(sum(t.value(name) for t in column.option.takeoffs for name in names))


def _does(job: Job, line: str, stretch: Stretch) -> Say:
    inside = [b for b in Profile(job.line(line)).branches if stretch.holds(b.station_ft) and b.live != "dead"]
    length, plain = Feet(round(stretch.length_ft, 1)), in_plain_words(LINES, line)
    if not inside:
        return Say.of(
            "{length} of the {line} have to be renewed; no side drain joins there.", length=length, line=plain
        )
    if len(inside) == 1:
        return Say.of(
            "{length} of the {line} have to be renewed; one side drain joins there.", length=length, line=plain
        )
    return Say.of(
        "{length} of the {line} have to be renewed; {count} side drains join there.",
        length=length,
        line=plain,
        count=len(inside),
    )

"""A job and its tables in, the comparison of ways and where it turns out, as plain data that the office's book can hold."""

from collections.abc import Sequence

from estimator.model.comparison import AlongAxis, BreakEven, Column, Comparison
from estimator.model.job import Job
from estimator.model.ways import Turning, Way, Ways
from estimator.model.work import Repair
from estimator.studies.break_even import break_even
from estimator.studies.compare import compare
from estimator.tables.tables import Tables
from estimator.works.methods import record_of


def weighed_pair(open_: Sequence[Column]) -> tuple[Repair, ...]:
    """Return the first two of the open ways that are set against each other; fewer where fewer are open."""
    turn = {column.method: record_of(column.method).weighed for column in open_ if column.option}
    first = sorted((c for c in open_ if c.option and turn[c.method]), key=lambda c: turn[c.method])[:2]
    return tuple(c.option.scope.repairs[0] for c in first if c.option)


def ways_of(job: Job, tables: Tables) -> Ways | None:
    """The ways to the stretch that matters most; None where nothing is dug for. Errors: those of takeoff and pricing."""
    found = compare(job, tables)
    if found is None:
        return None
    turns = even(found, job, tables)
    return Ways(
        line=found.line,
        stretch=found.stretch,
        does=found.does,
        ways=tuple(map(_way, found.columns)),
        decides=found.decides,
        first=turns.first if turns else "",
        second=turns.second if turns else "",
        turnings=tuple(map(_turning, turns.along)) if turns else (),
    )


def even(found: Comparison, job: Job, tables: Tables) -> BreakEven | None:
    """Where the two ways that open the ground over this stretch break even; None where fewer than two may be offered."""
    pair = weighed_pair(found.open)
    return break_even(*pair, job, tables) if len(pair) == 2 else None


def _way(column: Column) -> Way:
    if column.option is None:
        return Way(method=column.method, against=column.against.estimator if column.against else None)
    option = column.option
    return Way(
        method=column.method, price=option.price.total, all_in=option.all_in, days_on_site=option.days_on_site,
        days_without_drains=option.days_without_drains, floor_sf=option.floor_sf, by_class=column.by_class,
    )  # fmt: skip


def _turning(along: AlongAxis) -> Turning:
    turns = tuple((turn.at, turn.below, turn.above) for turn in along.turns)
    return Turning(what=along.axis.name, unit=along.axis.unit, now=along.axis.now, points=along.points, turns=turns)

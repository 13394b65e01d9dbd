"""An option's takeoffs in; what one more foot, one foot deeper, one more side drain adds to its own price, out.

Each is measured and priced anew as a whole with that much more, before half days and packs, so that it carries what it
brings along: earth, sand, loads, sod, hours. It holds up to the next step that changes how people are protected.
"""

from bisect import bisect_left
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import cache

from estimator.model.deeper_line import deeper
from estimator.model.job import Job
from estimator.model.judgement import Effect
from estimator.model.line import Mark
from estimator.model.money import exact, up_to
from estimator.model.offer import Margin
from estimator.model.remembered import remembered
from estimator.model.stretch import Stretch
from estimator.model.work import Repair, Takeoff
from estimator.pricing.rough import smooth_price
from estimator.tables.rows import ExtraRow, PlaceRow
from estimator.tables.tables import Tables

Measure = Callable[[Repair, Job], Takeoff]
Changed = tuple[Repair, Job]
PROTECTION = frozenset({"boxed", "hand_shored", "sloped", "engineer", "second_way_out", "depth_over_8", "hand_only"})
"""What holds the sides and who may dig: where one of these turns, a margin ends."""
STEPS = {"length": 1.0, "depth": 0.25, "side drain": 1.0}
"""How finely the end of a margin is looked for: a limit is so many whole steps, and its amount is that times the unit price."""
TIES = ("branches", "branches_tunnel", "reinstatements")
DEPTHS = ("safety_depth_ft",)


def margins(
    takeoffs: Sequence[Takeoff], job: Job, tables: Tables, place: PlaceRow | None, measure: Measure
) -> Mapping[str, Margin]:
    """Return the margin of each extra that is one, by its code: of its repairs the dearest, up to where the first ends.

    `measure` takes off a repair on a job. Errors: those of takeoff and pricing.
    """
    found: dict[str, Margin] = {}
    sold = remembered(lambda *scope: smooth_price(scope, tables, place))
    for row in (row for row in tables.extras if row.margin_of):
        mine = [t for t in takeoffs if t.repair.method in row.methods]
        each = [_margin(row, change, t, takeoffs, job, measure, sold) for t in mine for change in ways_of(row)]
        if mine:
            hold = [(cost, limit) for cost, limit in each if limit]
            price, step = max((cost for cost, _ in hold), default=0.0), tables.amount("extra_price_step")
            found[row.code] = Margin(
                price=max(up_to(exact(round(price, 2)), step), row.price),
                holds_to=exact(min((limit for _, limit in hold), default=0.0)),
                counted=exact(round(sum(_counted(row.margin_of, t) for t in mine), 2)),
            )
    return found


def _margin(
    row: ExtraRow,
    change: Callable[[Repair, Job, float], Changed],
    takeoff: Takeoff,
    takeoffs: Sequence[Takeoff],
    job: Job,
    measure: Measure,
    sold: Callable[..., float],
) -> tuple[float, float]:
    """Dollars for one more, and up to how many; nothing for nothing where even the first step changes the protection."""
    plain, last, limit = reach(row, change, takeoff.repair, job, measure)
    if not limit:
        return 0.0, 0.0
    others = [t for t in takeoffs if t.repair.id != takeoff.repair.id]
    return (sold(*others, last) - sold(*others, plain)) / limit, limit


@remembered
def reach(
    row: ExtraRow, change: Callable[[Repair, Job, float], Changed], repair: Repair, job: Job, measure: Measure
) -> tuple[Takeoff, Takeoff, float]:
    """Return a repair as it is, with as much more as holds, and how much that is: the same in every option that has it.

    What more of it turns, still more of it does not turn back: so the last step is asked first, then the halves.
    """
    plain, step = measure(repair, job), STEPS[row.margin_of]
    most = int(float(row.cap) / step + 1e-9)

    @cache
    def more(times: int) -> Takeoff:
        return measure(*change(repair, job, times * step)) if times else plain

    def turns(times: int) -> bool:
        return protection_of(more(times)) != protection_of(plain)

    hold = most if not turns(most) else bisect_left(range(most), True, key=lambda times: turns(times + 1))
    return plain, more(hold), hold * step


def protection_of(takeoff: Takeoff) -> tuple[frozenset[str], bool]:
    """Return how people are protected, and whether the repair is still allowed."""
    barred = any(v.effect is Effect.BLOCKS and not v.overruled for v in takeoff.finds)
    return takeoff.facts & PROTECTION, barred


def ways_of(row: ExtraRow) -> tuple[Callable[[Repair, Job, float], Changed], ...]:
    """Return how a repair and its job are with so much more of it: a stretch grows at either end."""
    return {"length": (_longer_up, _longer_down), "depth": (_deeper,), "side drain": (_with_side_drains,)}[
        row.margin_of
    ]


def _longer_down(repair: Repair, job: Job, by: float) -> Changed:
    return replace(repair, stretch=Stretch(repair.stretch.from_ft, repair.stretch.to_ft + by)), job


def _longer_up(repair: Repair, job: Job, by: float) -> Changed:
    return replace(repair, stretch=Stretch(repair.stretch.from_ft - by, repair.stretch.to_ft)), job


def _deeper(repair: Repair, job: Job, by: float) -> Changed:
    return repair, deeper(job, repair.line, by)


def _with_side_drains(repair: Repair, job: Job, by: float) -> Changed:
    """So many more side drains in the middle of the stretch, in use, of 3 in."""
    at = repair.stretch.middle_ft
    mark = Mark(word="branch", stretch=Stretch(at, at), size_in=3.0, live="live", proven=True)
    line = job.line(repair.line)
    more = replace(line, marks=(*line.marks, *(mark for _ in range(round(by)))))
    return repair, replace(job, lines=tuple(more if one.name == line.name else one for one in job.lines))


def _counted(margin_of: str, takeoff: Takeoff) -> float:
    """How much of it is in the price now."""
    if margin_of == "length":
        return takeoff.repair.stretch.length_ft
    names = DEPTHS if margin_of == "depth" else TIES
    return sum(takeoff.value(name) for name in names)

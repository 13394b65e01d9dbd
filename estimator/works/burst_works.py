"""A stretch to burst in; the pulls, the pits at their ends and at the side drains, and how deep they go, out."""

import math

from estimator.knowledge.excavation import needs_system
from estimator.model.frozen import Frozen
from estimator.model.opening import Opening
from estimator.model.profile import Branch
from estimator.model.say import Feet, Say
from estimator.model.stretch import Stretch
from estimator.works.case import Case
from estimator.works.depth import Bottom, bottom, outside_ft
from estimator.works.ground import is_wet, spans
from estimator.works.rounding import up
from estimator.works.trench_width import Plan, held_plan


def straight_entry_ft(radius_ft: float, depth_ft: float) -> float:
    """Plan length of an entry where the pipe bends once, from the ground down to the bottom: √(2RH - H²).

    >>> straight_entry_ft(7.5, 4.0), straight_entry_ft(5.0, 5.0)
    (6.6332495807108, 5.0)
    """
    return radius_ft if depth_ft >= radius_ft else math.sqrt(2 * radius_ft * depth_ft - depth_ft**2)


def s_entry_ft(radius_ft: float, depth_ft: float) -> float:
    """Plan length where the pipe bends down and back: √(H(4R - H)).

    >>> s_entry_ft(7.5, 4.0)
    10.198039027185569
    """
    return 2 * radius_ft if depth_ft >= 2 * radius_ft else math.sqrt(depth_ft * (4 * radius_ft - depth_ft))


class PullPlan(Frozen, kw_only=True):
    """Pulls over a stretch. Plans are (length, width) of pits as they are dug; `safe_ft` is never rounded up first."""

    under: Bottom
    depth_ft: float
    safe_ft: float
    pulls: int
    radius_ft: float
    entry_ft: float
    entry_pit: Plan
    pull_pit: Plan
    side_pit: Plan
    sides: tuple[Branch, ...]

    @property
    def plans(self) -> tuple[Plan, ...]:
        """Every pit, the entry first, one for each pull's end, one for each side drain."""
        return (self.entry_pit, *[self.pull_pit] * self.pulls, *[self.side_pit] * len(self.sides))


def pull_plan(case: Case) -> PullPlan:
    under = bottom(case, case.stretch)
    depth, radius = under.deepest_ft, case.number("bend_radius_ods") * outside_ft(case)
    safe = under.safety_ft
    shape = case.word("burst_entry", "straight", "S")
    entry = up((s_entry_ft if shape == "S" else straight_entry_ft)(radius, depth), case.number("dig_step_ft"))
    side = case.number("branch_pit_ft")
    pull = case.number("burst_pull_pit_length_ft"), case.number("burst_pull_pit_width_ft")
    return PullPlan(
        under=under,
        depth_ft=depth,
        safe_ft=safe,
        pulls=max(1, int(up(case.stretch.length_ft / case.number("burst_length_max_ft")))),
        radius_ft=radius,
        entry_ft=entry,
        entry_pit=held_plan(case, (entry, case.number("burst_pit_width_ft")), safe),
        pull_pit=held_plan(case, pull, safe),
        side_pit=held_plan(case, (side, side), safe),
        sides=case.branches,
    )


def pull_ends(case: Case, plan: PullPlan) -> tuple[float, ...]:
    """Stations where a pull ends: the far end, and between pulls of one length."""
    step = case.stretch.length_ft / plan.pulls
    return tuple(case.stretch.from_ft + step * (n + 1) for n in range(plan.pulls))


def openings(case: Case, plan: PullPlan) -> tuple[Opening, ...]:
    entry = _pit(case, plan, case.stretch.from_ft, plan.entry_pit, "entry")
    ends = tuple(_pit(case, plan, at, plan.pull_pit, "pull") for at in pull_ends(case, plan))
    sides = tuple(_pit(case, plan, b.station_ft, plan.side_pit, "side") for b in plan.sides)
    return (entry, *ends, *sides)


def _pit(case: Case, plan: PullPlan, at_ft: float, size: Plan, what: str) -> Opening:
    long, wide = size
    along = Stretch(at_ft - long / 2, at_ft + long / 2)
    at = Feet(round(at_ft, 1))
    names = {
        "entry": Say.of("the pit the pipe is pulled in from, at {at}", at=at),
        "pull": Say.of("the pulling pit at {at}", at=at),
        "side": Say.of("the pit at the side drain at {at}", at=at),
    }
    here = bottom(case, along)
    held = needs_system(plan.safe_ft, "C", case.job.site.caving_signs)
    return Opening(
        kind="pit",
        line=case.line.name,
        along=along,
        depth_ft=here.exact_ft,
        tolerance_ft=here.tolerance_ft,
        depth_known=not here.unlocated,
        bottom_width_ft=wide,
        top_width_ft=wide,
        spans=spans(case, along),
        held_by="boxed" if held else "",
        wet=is_wet(case, case.stretch, here.safety_ft),
        name=names[what],
        days=case.number("burst_days_open"),
    )

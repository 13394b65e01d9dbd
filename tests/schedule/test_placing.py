"""Tasks on days: by hand, and what must hold of any plan."""

from decimal import Decimal
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.model.say import Say
from estimator.model.schedule import Schedule, Task, Wait
from estimator.schedule.placing import least_hours, placed
from estimator.schedule.work_plan import Plan

WHY = Say.of("waiting for the inspector")


def task(name: str, crew: str, hours: float, *waits_for: str, step: str = "pipe", off: bool = False) -> Task:
    return Task(id=name, repair="r", method="trench", step=step, crew=crew, crew_hours=hours, items=(), waits_for=waits_for, drains_off=off)  # fmt: skip


def scheduled(*tasks: Task, waits: tuple[Wait, ...] = (), set_up: float = 1.0) -> Schedule:
    plan = Plan.of(tasks, waits)
    set_ups = {t.crew: set_up for t in tasks}
    done = placed(plan, set_ups, 8.0)
    return Schedule(tasks=done.tasks, waits=done.waits, day_hours=8.0, least_hours=least_hours(plan, set_ups, 8.0))


def test_one_crew_works_from_its_set_up_to_the_end_of_its_day() -> None:
    """10 h with 1 h of set-up a day: 7 h on the first, 3 h on the second, done at hour 12: a day and a half (by hand)."""
    found = scheduled(task("dig", "labor", 10, step="dig"))
    assert found.end == pytest.approx(12)
    assert found.days_on_site == Decimal("1.5")


def test_crews_work_side_by_side_where_nothing_waits() -> None:
    """7 h of each of two crews is one day, not two."""
    assert scheduled(task("a", "labor", 7), task("b", "plumbing", 7)).days_on_site == Decimal(1)


def test_what_waits_goes_after_and_an_inspector_costs_nobody_hours() -> None:
    """Dig 7 h, pipe 4 h the next morning after set-up (9 to 13), 4 h of waiting, fill at 17 after the set-up of day 3 (by hand)."""
    wait = Wait(id="inspector", why=WHY, hours=4, waits_for=("pipe",))
    found = scheduled(
        task("dig", "excavation", 7, step="dig"),
        task("pipe", "plumbing", 4, "dig", off=True),
        task("fill", "excavation", 3, "inspector", step="fill"),
        waits=(wait,),
    )
    starts = {t.id: (t.start, t.end) for t in found.tasks}
    assert starts["dig"] == (1, 8)
    assert starts["pipe"] == (9, 13)
    assert starts["fill"] == (17, 20)
    assert (found.days_on_site, found.days_without_drains) == (Decimal("2.5"), Decimal(1))


def test_a_ring_is_refused() -> None:
    with pytest.raises(ValueError, match="wait"):
        scheduled(task("a", "labor", 1, "b"), task("b", "labor", 1, "a"))


@st.composite
def plans(draw: st.DrawFn) -> tuple[Task, ...]:
    count = draw(st.integers(1, 8))
    out = []
    for n in range(count):
        waits = draw(st.lists(st.sampled_from(range(n)), unique=True, max_size=2)) if n else []
        crew = draw(st.sampled_from(["labor", "plumbing", "tunnel"]))
        hours = draw(st.floats(0.25, 30))
        out.append(task(str(n), crew, hours, *map(str, waits), off=draw(st.booleans())))
    return tuple(out)


@given(plans())
def test_any_plan_keeps_its_order_its_crews_and_its_bound(tasks: tuple[Task, ...]) -> None:
    found = scheduled(*tasks)
    at = {t.id: t for t in found.tasks}
    assert at.keys() == {t.id for t in tasks}
    for one in at.values():
        assert all(at[i].end <= one.start + 1e-6 for i in one.waits_for)
        assert one.start % 8 >= 1 - 1e-6
    for crew in {t.crew for t in tasks}:
        mine = sorted((t for t in at.values() if t.crew == crew), key=lambda t: t.start)
        assert all(a.end <= b.start + 1e-6 for a, b in pairwise(mine))
    assert found.end >= found.least_hours - 1e-6
    assert sum(d.hours for d in found.crew_days) == pytest.approx(sum(t.crew_hours for t in tasks))
    assert Decimal(0) <= found.days_without_drains <= found.days_on_site

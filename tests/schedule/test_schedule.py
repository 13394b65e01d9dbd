"""Tasks on their days: two houses reckoned by hand, the order of the work, and orders that cannot be beaten."""

from datetime import date
from decimal import Decimal
from functools import cache
from itertools import pairwise, permutations
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import demo
from estimator.fieldnotes import read_job
from estimator.model.offer import Option
from estimator.model.say import Say
from estimator.model.schedule import Schedule, Task, Wait
from estimator.model.steps import STEPS
from estimator.pipeline import run
from estimator.schedule import dated
from estimator.schedule.placing import Days, least_hours, placed
from estimator.schedule.work_plan import Plan
from estimator.tables.read import demo_folder, read_tables
from estimator.takeoff.quantities import FACTS, QUANTITIES
from estimator.works.methods import names

JOBS = Path(__file__).parent.parent / "jobs"
UNITS = {name: unit for name, (unit, _) in QUANTITIES.items()}
FOLDERS = {"demo": Path(demo.__file__).parent, "maple": JOBS / "maple", "pecan": JOBS / "pecan"}


@cache
def options(name: str) -> tuple[Option, ...]:
    job = read_job(FOLDERS[name] / "job.toml").job
    assert job is not None
    tables = read_tables(demo_folder(), job.day, UNITS, FACTS, (*names(), "job")).tables
    assert tables is not None
    quote = run(job, tables, job.day).quote
    assert quote is not None
    return quote.options


ALL = [(name, n) for name in FOLDERS for n in range({"demo": 4, "maple": 3, "pecan": 2}[name])]


def test_maple_by_hand() -> None:
    """The dig in the yard of docs/worked-examples.md, clock hours of 8 h days, a task's hours (low + likely + high) / 3.

    Set-up 1.9 / 3 = 0.6333 each morning. Plumbing: mobilize 3.5 / 3 = 1.1667, from 0.6333 to 1.8. Excavation: pothole
    3 / 3 = 1, to 2.8; dig 3.911 x 0.45 / 3 = 0.5867, to 3.3867 [computed]. Inspector two hours later.
    """
    spot = next(o for o in options("maple") if o.takeoffs[0].repair.method == "yard spot")
    by_step = {t.step: t for t in spot.schedule.tasks}
    assert by_step["site"].start == pytest.approx(0.6333, abs=0.0001)
    assert by_step["site"].end == pytest.approx(1.8)
    assert by_step["uncover"].end == pytest.approx(2.8)
    assert by_step["dig"].end == pytest.approx(2.8 + 3.911 * 0.15, abs=0.001)
    assert by_step["pipe"].start >= by_step["dig"].end - 1e-9
    wait = spot.schedule.waits[0]
    assert wait.hours == 2
    assert by_step["inspect"].start >= wait.end - 1e-9
    assert by_step["fill"].start >= by_step["inspect"].end - 1e-9


def test_pecan_by_hand() -> None:
    """29 ft of tunnel and its pit: 58.95 h of one crew, 7.37 of each day after its set-up, two hours of waiting between.

    Pit 2.074 cy x 4.4 / 3 = 3.04; tunnel (20 + 9 x 1.15 ft) x 3.95 / 3 = 39.96; fill 29 ft x 1.65 / 3 = 15.95. Dig and pit
    come first, then the pipe's tail, test and visit, then the fill. The tunnel crew's own work alone is 58.95 / 7.37 = 8.0
    days; nothing about it can end before the eighth [computed].
    """
    tunnel = next(o for o in options("pecan") if o.takeoffs[0].repair.method == "tunnel").schedule
    own = sum(t.crew_hours for t in tunnel.tasks if t.crew == "tunnel")
    assert own == pytest.approx(58.95, abs=0.01)
    assert tunnel.days_on_site >= Decimal(8)
    assert tunnel.days_on_site <= Decimal(11)
    assert tunnel.end == pytest.approx(tunnel.least_hours)  # no order is shorter


@pytest.mark.parametrize(("name", "n"), ALL)
def test_every_task_waits_for_what_comes_first_and_no_crew_is_in_two_places(name: str, n: int) -> None:
    plan = options(name)[n].schedule
    ends = {t.id: t.end for t in plan.tasks} | {w.id: w.end for w in plan.waits}
    for one in (*plan.tasks, *plan.waits):
        assert all(ends[i] <= one.start + 1e-6 for i in one.waits_for if i in ends), one.id
    for crew in plan.crews:
        mine = sorted((t for t in plan.tasks if t.crew == crew), key=lambda t: t.start)
        assert all(a.end <= b.start + 1e-6 for a, b in pairwise(mine))


@pytest.mark.parametrize(("name", "n"), ALL)
def test_the_hours_of_the_schedule_are_those_of_the_price(name: str, n: int) -> None:
    option = options(name)[n]
    for crew in option.schedule.crews:
        priced = sum(t.hours for t in option.price.tasks if t.crew == crew)
        assert sum(t.crew_hours for t in option.schedule.tasks if t.crew == crew) == pytest.approx(priced)
        assert sum(d.hours for d in option.schedule.crew_days if d.crew == crew) == pytest.approx(priced)


@pytest.mark.parametrize(("name", "n"), ALL)
def test_the_homeowners_days_cover_the_stay_and_say_the_same_days_without_drains(name: str, n: int) -> None:
    plan = options(name)[n].schedule
    spans = plan.calendar
    assert sum((s.length for s in spans), Decimal(0)) == plan.days_on_site
    assert [s.start for s in spans][1:] == [s.start + s.length for s in spans][:-1]
    assert sum((s.length for s in spans if s.no_drains), Decimal(0)) == plan.days_without_drains


def test_nobody_covers_pipe_before_the_inspector_has_seen_it() -> None:
    for name, n in ALL:
        plan = options(name)[n].schedule
        seen = [t.end for t in plan.tasks if t.step == "inspect"]
        assert seen
        assert all(t.start >= max(seen) - 1e-6 for t in plan.tasks if t.step in ("fill", "close"))


# ── against every order there is ──────────────────────────────────────────────────────────────────


def made(*rows: tuple[str, str, float, tuple[str, ...]]) -> Plan:
    return Plan.of(
        [
            Task(id=i, repair="r", method="trench", step="dig", crew=crew, crew_hours=h, items=(), waits_for=after)
            for i, crew, h, after in rows
        ],
        [],
    )


def best_of_all(plan: Plan, days: Days) -> float:
    """The soonest end over every order of the tasks [brute force]."""
    best = float("inf")
    for order in permutations(plan.tasks):
        ends: dict[str, float] = {}
        free: dict[str, float] = {}
        for task in order:
            if any(i not in ends for i in task.waits_for):
                break
            start = max([free.get(task.crew, 0.0), *(ends[i] for i in task.waits_for)])
            ends[task.id] = free[task.crew] = days.end(task.crew, days.opens(task.crew, start), plan.hours[task.id])
        else:
            best = min(best, max(ends.values()))
    return best


@settings(max_examples=60, deadline=None, derandomize=True)
@given(
    st.lists(
        st.tuples(st.sampled_from(["plumbing", "labor"]), st.integers(1, 9), st.integers(0, 5)), min_size=1, max_size=6
    )
)
def test_no_order_beats_the_lower_bound_and_the_schedule_is_no_worse_than_a_day_of_the_best(rows) -> None:
    plan = made(*((str(i), crew, float(h), (str(dep),) if dep < i else ()) for i, (crew, h, dep) in enumerate(rows)))
    set_ups = {"plumbing": 1.0, "labor": 1.0}
    days = Days(set_ups, 8.0)
    best = best_of_all(plan, days)
    end = max(t.end for t in placed(plan, set_ups, 8.0).tasks)
    assert least_hours(plan, set_ups, 8.0) <= best + 1e-6
    assert best - 1e-6 <= end <= best + 8.0


def test_a_task_goes_on_the_next_morning_after_set_up() -> None:
    days = Days({"labor": 1.0}, 8.0)
    assert days.end("labor", 1.0, 10.0) == 8 + 1 + 3
    assert days.start("labor", 12.0, 10.0) == 1.0


def test_a_ring_is_refused() -> None:
    with pytest.raises(ValueError, match="waits for itself"):
        placed(made(("a", "labor", 1, ("b",)), ("b", "labor", 1, ("a",))), {}, 8.0)


def test_holidays_and_weekends_are_left_out() -> None:
    """Thanksgiving 2026 is November 26 (5 USC 6103); a three day job from the Wednesday ends the Monday after."""
    task = Task(id="a", repair="r", method="trench", step="dig", crew="x", crew_hours=24, items=(), start=0, end=24)
    plan = dated(Schedule(tasks=(task,)), date(2026, 11, 25))
    assert plan.days == (date(2026, 11, 25), date(2026, 11, 27), date(2026, 11, 30))


def test_every_step_has_its_words() -> None:
    assert all(isinstance(text, Say) for text in STEPS.values())
    assert Wait(id="w", why=Say.of("waiting for the inspector"), hours=1, waits_for=()).end == 0

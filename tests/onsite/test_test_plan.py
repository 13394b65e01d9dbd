"""The order of plug tests: the least there is, and it ends at the leak wherever that lies."""

import random
from collections.abc import Sequence
from functools import cache
from math import log2
from pathlib import Path

import pytest

from estimator.cli.diagnosed_job import diagnosed
from estimator.onsite.plug_results import Result, TooManyResults, followed
from estimator.onsite.sections import label
from estimator.onsite.sheet import SiteSheet
from estimator.onsite.test_plan import TestPlan, best_order, test_plans
from estimator.onsite.test_sheet import test_sheet
from estimator.wording.say import plain_words, say

JOBS = Path(__file__).parents[1] / "jobs"


def chain(count: int, costs: Sequence[float] = ()) -> list[tuple[frozenset[int], float]]:
    """Plugs along a drain without side drains: each tests itself and all above it."""
    return [(frozenset(range(n, count)), cost) for n, cost in enumerate(costs or [1.0] * count)]


def tree(draw: random.Random, count: int) -> list[tuple[frozenset[int], float]]:
    """Plugs in a drain that branches as the dice have it: each section drains into one drawn before it."""
    into = [draw.randrange(n) if n else 0 for n in range(count)]
    above = [{n} for n in range(count)]
    for n in range(count - 1, 0, -1):
        above[into[n]] |= above[n]
    return [(frozenset(some), draw.choice([1.0, 1.5])) for some in above]


def brute(weights: Sequence[float], cuts: Sequence[tuple[frozenset[int], float]]) -> float:
    """Every order of tests there is, one by one."""

    @cache
    def least(of: frozenset[int]) -> float:
        whole = sum(weights[n] for n in of)
        ways = (
            each * whole + least(of & tests) + least(of - tests) for tests, each in cuts if of & tests and of - tests
        )
        return min(ways, default=0.0)

    return least(frozenset(range(len(weights))))


def test_no_order_takes_fewer_tests() -> None:
    draw = random.Random()
    for _ in range(100):
        weights = [draw.uniform(0.1, 50) for _ in range(draw.randint(1, 8))]
        for cuts in (chain(len(weights)), tree(draw, len(weights))):
            assert best_order(weights, cuts)[0] == pytest.approx(brute(weights, cuts))


def test_with_very_many_plugs_every_leak_is_still_found() -> None:
    draw = random.Random()
    weights = [draw.uniform(0.1, 50) for _ in range(40)]
    cuts = tree(draw, 40)
    _, chosen = best_order(weights, cuts)
    for leak in range(40):
        left = frozenset(range(40))
        while left in chosen:
            tests = cuts[chosen[left]][0]
            left = left & tests if leak in tests else left - tests
        assert left == {leak}


def test_the_mean_lies_between_shannons_bound_and_two_more() -> None:
    """Source: Shannon's noiseless coding bound; Gilbert and Moore (1959) for alphabetic codes: at most two more (from memory)."""
    draw = random.Random()
    for _ in range(200):
        weights = [draw.uniform(0.1, 50) for _ in range(draw.randint(2, 12))]
        bits = -sum(w / sum(weights) * log2(w / sum(weights)) for w in weights)
        mean = best_order(weights, chain(len(weights)))[0] / sum(weights)
        assert bits - 1e-9 <= mean <= bits + 2


def plan_of(name: str) -> TestPlan:
    looked = diagnosed(JOBS / name / "job.toml", None)
    assert looked.job and looked.diagnosis and looked.tables
    plan, *_ = test_plans(looked.job, looked.diagnosis, looked.tables)
    return plan


@pytest.mark.parametrize("name", ["hidden-leak", "hidden-leak-near-not-sealed", "juniper", "alder", "j01-near-tendons"])
def test_every_leak_is_found_by_following_the_steps(name: str) -> None:
    plan = plan_of(name)
    steps = {s.number: s for s in plan.steps}
    for leak in (s.name for s in plan.sections if s.known != "tight") if steps else ():
        at: int | tuple[str, ...] = 1
        made = 0
        while isinstance(at, int):
            step, made = steps[at], made + 1
            at = step.if_drops if leak in step.tests else step.if_holds
        assert leak in at
        assert made <= plan.most


@pytest.mark.parametrize("name", ["hidden-leak", "juniper", "alder"])
def test_typing_results_back_leads_to_the_leak_and_never_back_to_a_test_made(name: str) -> None:
    plan = plan_of(name)
    for leak in (s.name for s in plan.sections if s.known != "tight") if plan.steps else ():
        results: list[Result] = []
        while (so_far := followed([plan], results)[0]).next is not None:
            assert so_far.next.number not in {step.number for step, _ in so_far.made}
            assert so_far.left[0] == so_far.next
            results.append("drop" if leak in so_far.next.tests else "hold")
        assert leak in so_far.where
        assert len(so_far.made) == len(results) <= plan.most
        with pytest.raises(TooManyResults, match="no test is left"):
            followed([plan], [*results, "hold"])


def test_a_drop_in_the_readings_counts_where_no_result_was_written() -> None:
    """The house was filled and fell 3 in in 30 minutes: the first test is no longer that of the whole drain."""
    plan = plan_of("hidden-leak")
    assert len(plan.steps[0].tests) < len(plan.sections)


def test_the_sheet_says_what_comes_next_and_how_long_a_test_takes() -> None:
    """17 gal at 5 gal a minute, 10 minutes of air and 20 of reading: 33.4, up to 35 minutes (arithmetic)."""
    looked = diagnosed(JOBS / "hidden-leak" / "job.toml", None)
    assert looked.job and looked.diagnosis and looked.tables
    fresh = test_sheet(looked.job, looked.diagnosis, looked.tables)
    assert any("about 35 minutes" in str(line) for block in fresh.blocks for line in block.lines)
    then = test_sheet(looked.job, looked.diagnosis, looked.tables, ["hold"])
    assert "Next: test 2" in str(then.answer)
    assert "main 2" in str(test_sheet(looked.job, looked.diagnosis, looked.tables, ["drop"]).answer)


def test_a_branch_that_held_is_never_suspected() -> None:
    plan = plan_of("j01-hickory")
    tight = {s.name for s in plan.sections if s.known == "tight"}
    assert tight == {"hall bath", "kitchen", "master bath", "laundry"}
    ends = [end for s in plan.steps for end in (s.if_drops, s.if_holds) if not isinstance(end, int)]
    assert not tight & {name for end in ends for name in end}


def fresh_house(tmp_path: Path, log: str, *more: str) -> Path:
    """A made-up house with one drain of this log, and what else its job file says."""
    text = (JOBS / "hidden-leak" / "job.toml").read_text(encoding="utf-8")
    head = text[: text.index("[[line]]")]
    line = '[[line]]\nname = "main"\nsize = "4 in"\npipe = "cast iron"\nzero = "slab edge"\nlog = "main.txt"\n'
    (tmp_path / "main.txt").write_text(log, encoding="utf-8")
    job = tmp_path / "job.toml"
    job.write_text("\n".join([head, line, *more]), encoding="utf-8")
    return job


LOG = """
pass front cleanout to house, against flow, riser 2 ft
2       yard lawn
2       cleanout
6       slab tile
6       invert 30in below slab
10      branch 3in left live proven called hall bath
20      branch 2in right live proven called kitchen
{far}   branch 3in left live proven called master bath
{end}   invert 20in below slab
{end}   end closet
"""
SECOND = """
[[line]]
name = "den"
size = "3 in"
pipe = "cast iron"
zero = "slab edge"
ends = "city main"
log = "den.txt"
"""
DEN = """
pass den cleanout to house, against flow, riser 1 ft
1       yard lawn
3       slab tile
12      branch 2in left live proven called bar sink
20      end closet
"""


def plans_of(job: Path) -> tuple[TestPlan, ...]:
    looked = diagnosed(job, None)
    assert looked.job and looked.diagnosis and looked.tables, looked.problems
    return test_plans(looked.job, looked.diagnosis, looked.tables)


def test_a_toilet_is_pulled_only_where_no_cleanout_is_near(tmp_path: Path) -> None:
    """A plug goes 25 ft farther from a cleanout before a toilet is pulled: at 19 ft the cleanout is 23 ft away."""
    (near,) = plans_of(fresh_house(tmp_path, LOG.format(far=25, end=28)))
    assert not any(step.plug.toilet for step in near.steps)
    (far,) = plans_of(fresh_house(tmp_path, LOG.format(far=54, end=60)))
    by_toilet = {step.plug.branch for step in far.steps if step.plug.toilet}
    assert by_toilet == {"master bath"}
    plug = next(step.plug for step in far.steps if step.plug.toilet)
    assert (plug.way_in, plug.tests) == ("closet", 1.5)


def test_two_drains_are_planned_one_after_the_other(tmp_path: Path) -> None:
    (tmp_path / "den.txt").write_text(DEN, encoding="utf-8")
    first, second = plans_of(fresh_house(tmp_path, LOG.format(far=33, end=36), SECOND))
    assert (first.main, second.main) == ("main", "den")
    numbers = [step.number for plan in (first, second) for step in plan.steps]
    assert numbers == list(range(1, len(numbers) + 1))
    assert {s.name for s in second.sections} >= {"bar sink"}
    one, two = followed((first, second), ["hold"])  # the whole of the first drain holds
    assert one.next is None and not one.where
    assert two.next is not None and two.next.number == len(first.steps) + 1
    *_, two = followed((first, second), ["hold", "drop", "drop"])
    assert two.made and len(two.made) == 2


HALL = """
[[line]]
name = "hall"
size = "3 in"
pipe = "cast iron"
zero = "access"
joins = { line = "main", at = 10 }
log = "hall.txt"
"""
HALL_LOG = """
pass hall toilet to main, with flow, surface
0       closet, slab tile
5       branch 2in left live proven called lavatory
14      end main
"""
YARD = """
[[line]]
name = "yard"
size = "4 in"
pipe = "clay"
zero = "access"
ends = "city main"
log = "yard.txt"
"""
YARD_LOG = """
pass front cleanout to street, with flow, surface
0       yard lawn, cleanout
12      branch 4in left live proven called shop
34      property line
40      street
58      stop reached main
"""


def test_a_branch_with_branches_of_its_own_is_parted_by_its_own_toilet(tmp_path: Path) -> None:
    (tmp_path / "hall.txt").write_text(HALL_LOG, encoding="utf-8")
    (plan,) = plans_of(fresh_house(tmp_path, LOG.format(far=25, end=28), HALL))
    hall = [s for s in plan.sections if s.line == "hall"]
    assert [(s.name, s.stretch.from_ft, s.stretch.to_ft) for s in hall] == [
        ("hall bath 1", 5, 14), ("lavatory", 5, 5), ("hall bath 2", 0, 5),
    ]  # fmt: skip
    beside = [step.plug for step in plan.steps if step.plug.line == "hall"]
    assert beside and all(plug.toilet and plug.way_in == "hall toilet" for plug in beside)
    assert all(plan_leads_to(plan, s.name) for s in plan.sections)


WHOLE = '[[water_test]]\nsection = "main"\nkind = "isolated"\ncovers = ["main"]\nresult = "failed"\n'
PART = (
    '[[water_test]]\nsection = "main 2"\nkind = "isolated"\ncovers = ["main"]\nfrom = 4\nto = 14\nresult = "{result}"\n'
)


def test_what_the_tests_narrowed_is_typed_into_the_job_file_as_the_sheet_says(tmp_path: Path) -> None:
    """A test from 4 to 14 ft speaks for that piece alone; a whole line that failed says nothing more of the others."""
    (plan,) = plans_of(fresh_house(tmp_path, LOG.format(far=25, end=28), WHOLE, PART.format(result="failed")))
    assert {s.name: s.known for s in plan.sections if not s.branch} == {
        "main 1": "", "main 2": "leaks", "main 3": "", "main 4": "",
    }  # fmt: skip
    assert plan.steps == ()  # one piece leaks: no test tells more
    (plan,) = plans_of(fresh_house(tmp_path, LOG.format(far=25, end=28), WHOLE, PART.format(result="passed")))
    assert {s.known for s in plan.sections if s.name in ("main 1", "main 3", "main 4")} == {"leaks"}
    assert next(s for s in plan.sections if s.name == "main 2").known == "tight"
    job = fresh_house(tmp_path, LOG.format(far=25, end=28))
    drops: tuple[Result, ...] = ("drop", "drop", "drop", "drop")
    looked = diagnosed(job, None)
    assert looked.job and looked.diagnosis and looked.tables
    plan = test_plans(looked.job, looked.diagnosis, looked.tables)[0]
    for many in range(1, 5):
        sheet = test_sheet(looked.job, looked.diagnosis, looked.tables, drops[:many])
        note = next((str(line) for b in sheet.blocks for line in b.lines if "[[water_test]]" in str(line)), "")
        if note:
            break
    typed = (
        note.removesuffix(".")
        .replace("with kind", "\nkind")
        .replace(", result", "\nresult")
        .replace(", covers", "\ncovers")
        .replace(", from", "\nfrom")
        .replace(", to", "\nto")
    )
    (plan,) = plans_of(fresh_house(tmp_path, LOG.format(far=25, end=28), typed))
    assert [s.name for s in plan.sections if s.known == "leaks"] and plan.steps == ()


def test_without_a_way_in_a_branch_is_one_answer(tmp_path: Path) -> None:
    """No plug goes into a side drain that nothing opens: it is told by plugs in the main alone."""
    unfilmed = HALL.replace('log = "hall.txt"', 'filmed = false\nlength = "14 ft"')
    (plan,) = plans_of(fresh_house(tmp_path, LOG.format(far=25, end=28), unfilmed))
    assert not any(step.plug.line == "hall" for step in plan.steps)


def plan_leads_to(plan: TestPlan, leak: str) -> bool:
    steps = {s.number: s for s in plan.steps}
    at: int | tuple[str, ...] = plan.steps[0].number
    while isinstance(at, int):
        at = steps[at].if_drops if leak in steps[at].tests else steps[at].if_holds
    return at == (leak,)


def test_a_yard_line_is_tested_from_its_cleanout_to_the_lot_line(tmp_path: Path) -> None:
    """Beyond the lot line it is the city's street; the house side is plugged off, and the water stands in the cleanout."""
    (tmp_path / "yard.txt").write_text(YARD_LOG, encoding="utf-8")
    house, yard = plans_of(fresh_house(tmp_path, LOG.format(far=25, end=28), YARD))
    assert (house.main, house.outdoors, yard.main, yard.outdoors) == ("main", False, "yard", True)
    assert [(s.name, s.stretch.from_ft, s.stretch.to_ft) for s in yard.sections] == [
        ("yard 1", 12, 34), ("shop", 12, 12), ("yard 2", 0, 12),
    ]  # fmt: skip
    first = yard.steps[0].plug
    assert (first.station_ft, first.way_in, first.toilet) == (34, "front cleanout", False)
    looked = diagnosed(tmp_path / "job.toml", None)
    assert looked.job and looked.diagnosis and looked.tables
    sheet = test_sheet(looked.job, looked.diagnosis, looked.tables)
    assert any("house side" in str(line) for block in sheet.blocks for line in block.lines)


def test_a_yard_line_with_an_opening_seen_in_all_of_it_needs_no_test(tmp_path: Path) -> None:
    log = YARD_LOG.replace("12      branch 4in left live proven called shop", "20      hole 2in, soil seen")
    (tmp_path / "yard.txt").write_text(log, encoding="utf-8")
    *_, yard = plans_of(fresh_house(tmp_path, LOG.format(far=25, end=28), YARD))
    assert yard.outdoors and not yard.steps and yard.sections[0].seen == 1


def test_a_failed_test_alone_replaces_nothing() -> None:
    """A house that failed as a whole with nothing seen: no section counts as replaced anyway."""
    assert not any(s.repair for s in plan_of("hidden-leak").sections)


def test_the_true_section_is_found_nine_times_of_ten(tmp_path: Path) -> None:
    """A thousand fresh draws: a leak somewhere, levels read twice with the error the tables state and called a drop from 1/4 in on."""
    looked = diagnosed(fresh_house(tmp_path, LOG.format(far=33, end=36)), None)
    assert looked.job and looked.diagnosis and looked.tables
    (plan,) = test_plans(looked.job, looked.diagnosis, looked.tables)
    error, minutes = looked.tables.number("drop_reading_error_in"), looked.tables.number("test_minutes")
    draw, found = random.Random(), 0
    for _ in range(1000):
        leak = draw.choices(plan.sections, [s.weight for s in plan.sections])[0].name
        results: list[Result] = []
        while (so_far := followed([plan], results)[0]).next is not None:
            falls = draw.uniform(0.02, 0.2) * minutes if leak in so_far.next.tests else 0.0
            read = falls + draw.gauss(0, error) - draw.gauss(0, error)
            results.append("drop" if read >= 0.25 else "hold")
        found += leak in so_far.where
    assert found >= 900


def test_the_stack_gives_ten_feet_above_the_highest_joint(tmp_path: Path) -> None:
    """Pipe of 4 in with its bottom 20 in below the slab: its top is 16 in down, so 8 ft 8 in above the slab is 10 ft (arithmetic; IPC 312)."""
    looked = diagnosed(fresh_house(tmp_path, LOG.format(far=33, end=36)), None)
    assert looked.job and looked.diagnosis and looked.tables
    sheet = test_sheet(looked.job, looked.diagnosis, looked.tables)
    stack = next(line for block in sheet.blocks for line in block.lines if "Stack" in str(line))
    assert dict(stack.words)["stack"].ft == pytest.approx(8 + 8 / 12, abs=0.06)  # type: ignore[attr-defined]


def test_gallons_count_the_risers_whose_height_levels_tell(tmp_path: Path) -> None:
    """A 3 in branch joins midway between bottoms 2 ft and 3 ft below the slab: 2.5 ft at 0.367 gal a foot (arithmetic)."""
    log = f"{IN}2 slab tile, invert 36in below slab\n12 branch 3in left live called hall bath\n22 invert 24in below slab\n22 end closet bend\n"
    plan, sheet = plan_and_sheet(fresh_house(tmp_path, log))
    bath = next(s for s in plan.sections if s.branch)
    assert bath.riser_ft == pytest.approx(2.5)
    assert bath.riser_gal == pytest.approx(2.5 * 3.14159 / 4 * 9 * 12 / 231, rel=1e-3)
    assert plan.steps[0].plug.gallons == pytest.approx(sum(s.gallons for s in plan.sections) + bath.riser_gal)
    assert any("include one riser" in str(line) for block in sheet.blocks for line in block.lines)


def test_risers_of_unknown_height_are_told_with_what_a_foot_holds(tmp_path: Path) -> None:
    """Source: handbook contents of pipe, 0.37 gal a foot of 3 in and 0.65 of 4 in (from memory)."""
    plan, sheet = plan_and_sheet(
        fresh_house(tmp_path, f"{IN}2 slab tile\n12 branch 3in left live called hall bath\n22 end closet bend\n")
    )
    assert all(s.riser_ft is None for s in plan.sections)
    told = next(line for block in sheet.blocks for line in block.lines if "left out" in str(line))
    assert "0.37" in str(told.words) and "0.65" in str(told.words)


def test_a_branch_is_no_line_in_spanish_and_a_two_way_cleanout_has_its_name() -> None:
    assert say(label("kitchen"), "es_US") == "cocina"
    assert say(label("main 2"), "es_US") == "principal 2"
    assert plain_words("two-way cleanout", "es_US") == plain_words("two-way", "es_US") == "el registro doble"


IN = "pass front cleanout to house, against flow, surface\n0 yard lawn, cleanout\n"


def plan_and_sheet(job: Path) -> tuple[TestPlan, SiteSheet]:
    looked = diagnosed(job, None)
    assert looked.job and looked.diagnosis and looked.tables, looked.problems
    (plan,) = test_plans(looked.job, looked.diagnosis, looked.tables)
    return plan, test_sheet(looked.job, looked.diagnosis, looked.tables)

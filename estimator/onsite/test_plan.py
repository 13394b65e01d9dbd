"""A house's drains in; which sections a plug can test, and the order that finds the leak with the fewest plugs, out.

A drain is a tree of sections (`sections.py`); a plug, filled from above, tests all that lies upstream of it. So each test parts
what is left in two, and a toilet is pulled only for a plug that no cleanout is near enough to reach, and such a test counts for
more. A yard line is a drain of its own, filled by its cleanout with the house side plugged off.
"""

from collections.abc import Sequence
from functools import cache
from itertools import count

from estimator.diagnosis.tests_read import read_test
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis
from estimator.model.line import Line
from estimator.onsite.plugs import Plug, plug_for
from estimator.onsite.sections import Section, Tree, drains_of, tree_of, yard_lines_of
from estimator.tables.tables import Tables


class Step(Frozen):
    """One test: all sections upstream of the plug. What comes next where the level drops, and where it holds.

    A next step is its number, or the names of the sections the leak must then lie in.
    """

    number: int
    plug: Plug
    tests: tuple[str, ...]
    if_drops: int | tuple[str, ...]
    if_holds: int | tuple[str, ...]


class TestPlan(Frozen):
    """`steps` begin with the first test to make; `expected` is how many tests it takes on average, `most` at worst."""

    __test__ = False
    main: str
    outdoors: bool
    sections: tuple[Section, ...]
    steps: tuple[Step, ...]
    expected: float
    most: int


def test_plans(job: Job, diagnosis: Diagnosis, tables: Tables) -> tuple[TestPlan, ...]:
    """Return a plan for each drain that leaves the slab, then for each yard line; tests are numbered through."""
    plans: list[TestPlan] = []
    drains = drains_of(job)
    for root in (*drains, *yard_lines_of(job)):
        before = sum(len(plan.steps) for plan in plans)
        failed = root in drains and _failed(root, drains, job, tables)
        plans.append(_plan(tree_of(root, job, diagnosis, tables), failed, before, job, tables))
    return tuple(plans)


test_plans.__test__ = False  # type: ignore[attr-defined]


def _failed(main: Line, drains: Sequence[Line], job: Job, tables: Tables) -> bool:
    """Whether a test of this whole drain failed, and of no other drain with it."""
    others = {line.name for line in drains if line is not main}
    failed = [t for t in job.water_tests if t.kind == "whole" and read_test(t, job, tables).outcome == "failed"]
    return any(not others or (t.covers and not others & set(t.covers)) for t in failed)


def _plan(tree: Tree, failed: bool, before: int, job: Job, tables: Tables) -> TestPlan:
    sections = tree.sections
    failed = failed or any(s.known == "leaks" for s in sections)
    weights = _weights(tree)
    if _settled(sections, weights):
        return TestPlan(tree.line, tree.outdoors, sections, (), 0.0, 0)
    plugs = [plug_for(cut, tree, job, tables) for cut in tree.cuts]
    steps, expected, most = _Order(tree, weights, plugs, before).steps(failed)
    return TestPlan(tree.line, tree.outdoors, sections, steps, expected, most)


def _settled(sections: Sequence[Section], weights: Sequence[float]) -> bool:
    """No test changes the repair any more: all is tight, or one repair answers what leaks, or the camera saw where it leaks."""
    if sum(weights) == 0:
        return True
    leaking = [s for s in sections if s.known == "leaks"]
    one = _alike([s.repair for s, w in zip(sections, weights, strict=True) if w > 0])
    return bool(leaking) and (one or any(s.seen for s in leaking if not s.branch))


def _alike(repairs: Sequence[str]) -> bool:
    """Sections that need not be told apart: a single one, or the same repair replaces all of them."""
    return len(repairs) == 1 or (len(set(repairs)) == 1 and bool(repairs[0]))


def _weights(tree: Tree) -> list[float]:
    """How likely the leak lies in each section; where isolated tests failed, in those that were in them alone.

    Of a yard line what the camera saw open, or what is replaced anyway, needs no test.
    """
    leaks = any(s.known == "leaks" for s in tree.sections)
    wanted = "leaks" if leaks else ""
    told = [tree.outdoors and bool(s.seen or s.repair) for s in tree.sections]
    return [s.weight if s.known == wanted and not off else 0.0 for s, off in zip(tree.sections, told, strict=True)]


MOST_EXACT = 28
"""Up to so many places for a plug the best order is found exactly; beyond, each test halves what is left as evenly as it can."""


def best_order(
    weights: Sequence[float], cuts: Sequence[tuple[frozenset[int], float]], repairs: Sequence[str] = ()
) -> tuple[float, dict[frozenset[int], int]]:
    """Return the least weighted cost of tests, and for each set of sections that is reached the cut that comes next.

    A test at a cut tells whether the leak lies among the sections of the cut; each cut has its cost in tests. Sections with the
    same repair are not told apart. Each set is solved once. Source: binary search in trees by dynamic programming, of which
    optimal alphabetic trees (Gilbert and Moore, 1959) are the case of a chain (from memory).

    >>> chain = lambda n: [(frozenset(range(cut, n)), 1.0) for cut in range(n)]
    >>> best_order([1, 1, 1, 1], chain(4))[0], best_order([8, 1, 1], chain(3))[0]
    (8.0, 12.0)
    >>> best_order([1, 1, 1], [(frozenset({1, 2}), 3.0), (frozenset({2}), 1.0)])[0]
    9.0
    """
    chosen: dict[frozenset[int], int] = {}
    parts = [(n, tests, costs) for n, (tests, costs) in enumerate(cuts)]
    labels = repairs or [""] * len(weights)

    def weight(of: frozenset[int]) -> float:
        return sum(weights[n] for n in sorted(of))

    def even(of: frozenset[int], tests: frozenset[int], cost: float) -> float:
        return cost * max(weight(of & tests), weight(of - tests))

    @cache
    def cost(of: frozenset[int]) -> float:
        ways = [(n, tests, each) for n, tests, each in parts if of & tests and of - tests]
        if not ways or _alike([labels[n] for n in sorted(of)]):
            return 0.0
        if len(parts) > MOST_EXACT:
            ways = [min(ways, key=lambda way: even(of, way[1], way[2]))]
        prices = {n: each * weight(of) + cost(of & tests) + cost(of - tests) for n, tests, each in ways}
        best = min(ways, key=lambda way: (round(prices[way[0]], 9), even(of, way[1], 1.0), way[0]))
        chosen[of] = best[0]
        return prices[best[0]]

    return float(cost(frozenset(n for n, w in enumerate(weights) if w > 0))), chosen


class _Order:
    """The steps of one drain: which plug comes first, and what comes after each result."""

    def __init__(self, tree: Tree, weights: Sequence[float], plugs: Sequence[Plug], before: int) -> None:
        self.tree, self.weights, self.plugs = tree, weights, plugs
        parts = [(cut.tests, plug.tests) for cut, plug in zip(tree.cuts, plugs, strict=True)]
        _, self.chosen = best_order(weights, parts, [s.repair for s in tree.sections])
        self.numbers = count(before + 1)
        self.made: list[Step] = []

    def steps(self, failed: bool) -> tuple[tuple[Step, ...], float, int]:
        """Return the steps by number, how many tests it takes on average, and at worst; the first is the whole drain where no test failed yet."""
        first = 0 if failed else next(self.numbers)
        then, deep, mean = self._below(frozenset(n for n, w in enumerate(self.weights) if w > 0))
        if first:
            self.made.append(Step(first, self.plugs[0], tuple(s.name for s in self.tree.sections), then, ()))
        return tuple(sorted(self.made, key=lambda s: s.number)), mean + bool(first), deep + bool(first)

    def _below(self, of: frozenset[int]) -> tuple[int | tuple[str, ...], int, float]:
        """What comes next where the leak lies in these sections, and how many tests more, at worst and on average."""
        if of not in self.chosen:
            return tuple(self.tree.sections[n].name for n in sorted(of)), 0, 0.0
        number, cut = next(self.numbers), self.chosen[of]
        tests = self.tree.cuts[cut].tests
        drops, deep, long = self._below(of & tests)
        holds, flat, short = self._below(of - tests)
        upstream = tuple(self.tree.sections[n].name for n in sorted(tests))
        self.made.append(Step(number, self.plugs[cut], upstream, drops, holds))
        whole, above = (sum(self.weights[n] for n in some) for some in (of, of & tests))
        return number, 1 + max(deep, flat), 1 + (above * long + (whole - above) * short) / whole

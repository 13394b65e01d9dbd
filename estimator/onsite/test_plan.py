"""A house's drains under the slab in; which sections a plug can test, and the order that finds the leak with the fewest plugs, out.

The drain is one chain from the building outlet to its far end: a length of main, the branch that joins there, the next length of
main … A plug anywhere in the main, filled from above, tests all that lies upstream of it. So each test halves what is left, and
a toilet is pulled only for a plug that no cleanout is near enough to reach, and such a test counts for more.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from itertools import count
from math import log2

from estimator.diagnosis.tests_read import read_test
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis
from estimator.model.line import Line
from estimator.onsite.plugs import Plug, plug_for
from estimator.onsite.sections import Section, drains_of, sections_of
from estimator.tables.tables import Tables


@dataclass(frozen=True, slots=True)
class Step:
    """One test: all sections upstream of the plug. What comes next where the level drops, and where it holds.

    A next step is its number, or the names of the sections the leak must then lie in.
    """

    number: int
    plug: Plug
    tests: tuple[str, ...]
    if_drops: int | tuple[str, ...]
    if_holds: int | tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TestPlan:
    """`steps` begin with the first test to make; `expected` is how many tests it takes on average, `most` at worst."""

    __test__ = False
    main: str
    sections: tuple[Section, ...]
    steps: tuple[Step, ...]
    expected: float
    most: int
    least_bits: float  # no order of yes-or-no tests takes fewer on average (Shannon)


def test_plans(job: Job, diagnosis: Diagnosis, tables: Tables) -> tuple[TestPlan, ...]:
    """Return a plan for each drain that leaves the slab; tests are numbered through."""
    plans: list[TestPlan] = []
    drains = drains_of(job)
    for main in drains:
        before = sum(len(plan.steps) for plan in plans)
        plans.append(_plan(main, _failed(main, drains, job, tables), before, job, diagnosis, tables))
    return tuple(plans)


test_plans.__test__ = False  # type: ignore[attr-defined]


def _failed(main: Line, drains: Sequence[Line], job: Job, tables: Tables) -> bool:
    """Whether a test of this whole drain failed, and of no other drain with it."""
    others = {line.name for line in drains if line is not main}
    failed = [t for t in job.water_tests if t.kind == "whole" and read_test(t, job, tables).outcome == "failed"]
    return any(not others or (t.covers and not others & set(t.covers)) for t in failed)


def _plan(main: Line, failed: bool, before: int, job: Job, diagnosis: Diagnosis, tables: Tables) -> TestPlan:
    sections = sections_of(main, job, diagnosis, tables)
    failed = failed or any(s.known == "leaks" for s in sections)
    groups = _groups(sections)
    weights = _weights(groups)
    if _settled(sections, weights):
        return TestPlan(main.name, sections, (), 0.0, 0, 0.0)
    steps, expected, most = _Order(groups, weights, main, sections, tables, before).steps(failed)
    shares = [w / sum(weights) for w in weights if w > 0]
    return TestPlan(main.name, sections, steps, expected, most, -sum(w * log2(w) for w in shares))


def _settled(sections: Sequence[Section], weights: Sequence[float]) -> bool:
    """No test changes the repair any more: all is tight, or what leaks is one group, or the camera saw where it leaks."""
    if all(s.known == "tight" for s in sections) or sum(weights) == 0:
        return True
    leaking = [s for s in sections if s.known == "leaks"]
    return bool(leaking) and (sum(w > 0 for w in weights) == 1 or any(s.seen for s in leaking if not s.branch))


def _weights(groups: Sequence["_Group"]) -> list[float]:
    """How likely the leak lies in each group; where isolated tests failed, in those that were in them alone."""
    leaks = any(s.known == "leaks" for g in groups for s in g.sections)
    wanted = ("leaks",) if leaks else ("",)
    return [sum(s.weight for s in g.sections if s.known in wanted) for g in groups]


@dataclass(frozen=True, slots=True)
class _Group:
    """Neighbors that need not be told apart: the same repair replaces them, or all are proved tight."""

    sections: tuple[Section, ...]


def _groups(sections: Sequence[Section]) -> tuple[_Group, ...]:
    out: list[list[Section]] = []
    for section in sections:
        last = out[-1][-1] if out else None
        if last and ((section.repair and section.repair == last.repair) or (section.known == last.known == "tight")):
            out[-1].append(section)
        else:
            out.append([section])
    return tuple(_Group(tuple(one)) for one in out)


def best_order(
    weights: Sequence[float], costs: Sequence[float] | None = None
) -> tuple[float, dict[tuple[int, int], int]]:
    """Return the least weighted cost of tests, and for each run (from, to) of groups the cut that reaches it.

    A test at a cut tells on which side the leak lies; `costs` are those of a test at each cut, 1 where none are given. The best
    tree of cuts over a chain is found exactly, each run of neighbors once. Source: optimal alphabetic trees (Gilbert and
    Moore, 1959; from memory).

    >>> best_order([1, 1, 1, 1])[0], best_order([8, 1, 1])[0], best_order([1, 1, 1], [0, 3, 1])[0]
    (8.0, 12.0, 9.0)
    """
    cuts: dict[tuple[int, int], int] = {}
    each = costs or [1.0] * len(weights)

    @cache
    def cost(low: int, high: int) -> float:
        whole = sum(weights[low:high])
        if high - low <= 1 or whole == 0:
            return 0.0

        def at(cut: int) -> float:
            return each[cut] * whole + cost(low, cut) + cost(cut, high)

        best = min(range(low + 1, high), key=lambda cut: (at(cut), abs(cut - (low + high) / 2)))
        cuts[low, high] = best
        return at(best)

    return float(cost(0, len(weights))), cuts


class _Order:
    """The steps of one drain: which plug comes first, and what comes after each result."""

    def __init__(
        self,
        groups: Sequence[_Group],
        weights: Sequence[float],
        main: Line,
        sections: Sequence[Section],
        tables: Tables,
        before: int,
    ) -> None:
        self.groups, self.weights, self.sections = groups, weights, sections
        self.plugs = [
            plug_for([s for g in groups[cut:] for s in g.sections], sections, main, tables)
            for cut in range(len(groups))
        ]
        _, self.cuts = best_order(weights, [plug.tests for plug in self.plugs])
        self.numbers = count(before + 1)
        self.made: list[Step] = []

    def steps(self, failed: bool) -> tuple[tuple[Step, ...], float, int]:
        """Return the steps by number, how many tests it takes on average, and at worst; the first is the whole drain where no test failed yet."""
        first = 0 if failed else next(self.numbers)
        then, deep, mean = self._below(0, len(self.groups))
        if first:
            self.made.append(Step(first, self.plugs[0], tuple(s.name for s in self.sections), then, ()))
        return tuple(sorted(self.made, key=lambda s: s.number)), mean + bool(first), deep + bool(first)

    def _below(self, low: int, high: int) -> tuple[int | tuple[str, ...], int, float]:
        """What comes next where the leak lies in these groups, and how many tests more, at worst and on average."""
        if (low, high) not in self.cuts:
            left = zip(self.groups[low:high], self.weights[low:high], strict=True)
            return tuple(s.name for g, w in left if w > 0 for s in g.sections if s.known != "tight"), 0, 0.0
        number, cut = next(self.numbers), self.cuts[low, high]
        drops, deep, long = self._below(cut, high)
        holds, flat, short = self._below(low, cut)
        upstream = tuple(s.name for g in self.groups[cut:] for s in g.sections)
        self.made.append(Step(number, self.plugs[cut], upstream, drops, holds))
        whole, above = sum(self.weights[low:high]), sum(self.weights[cut:high])
        return number, 1 + max(deep, flat), 1 + (above * long + (whole - above) * short) / whole

"""A house's drains under the slab in; which sections a plug can test, and the order that finds the leak with the fewest plugs, out.

The drain is one chain from the building outlet to its far end: a length of main, the branch that joins there, the next length of
main … A plug anywhere in the main, filled from above, tests all that lies upstream of it. So each test halves what is left, and
no toilet is pulled until one branch alone is left with one length of main.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from math import log2

from estimator.diagnosis.tests_read import read_test
from estimator.knowledge.hydrostatics import head_psi, plug_load_lb
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis
from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.onsite.sections import Section, main_drain, sections_of
from estimator.onsite.ways_in import named_ways
from estimator.tables.tables import Tables


@dataclass(frozen=True, slots=True)
class Plug:
    """Where a plug goes: station on the main and which side of a branch, size, the way in and how far from it, the water on it.

    `branch` is the one it stands next to, "" at the building outlet; `upstream` whether it stands on that branch's upstream side.
    """

    station_ft: float
    branch: str
    upstream: bool
    size_in: float
    way_in: str
    way_in_ft: float
    head_ft: float
    gallons: float

    @property
    def psi(self) -> float:
        return head_psi(self.head_ft)

    @property
    def load_lb(self) -> float:
        return plug_load_lb(self.size_in, self.head_ft)


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


def test_plan(job: Job, diagnosis: Diagnosis, tables: Tables) -> TestPlan | None:
    """Return the plan for the drain under the slab; None where no line leaves a slab."""
    main = main_drain(job)
    if main is None:
        return None
    sections = sections_of(main, job, diagnosis, tables)
    groups = _groups(sections)
    weights = _weights(groups)
    whole = (t for t in job.water_tests if t.kind == "whole")
    failed = any(read_test(t, job, tables).outcome == "failed" for t in whole) or any(
        s.known == "leaks" for s in sections
    )
    if _settled(sections, weights):
        return TestPlan(main.name, sections, (), 0.0, 0, 0.0)
    steps, expected, most = _ordered(groups, weights, main, sections, failed, tables)
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


test_plan.__test__ = False  # type: ignore[attr-defined]


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


def best_order(weights: Sequence[float]) -> tuple[float, dict[tuple[int, int], int]]:
    """Return the least weighted number of tests, and for each run (from, to) of groups the cut that reaches it.

    A test at a cut tells on which side the leak lies. The best tree of cuts over a chain is found exactly, each run of neighbors
    once. Source: optimal alphabetic trees (Gilbert and Moore, 1959; from memory).

    >>> best_order([1, 1, 1, 1])[0], best_order([8, 1, 1])[0]
    (8.0, 12.0)
    """
    cuts: dict[tuple[int, int], int] = {}

    @cache
    def cost(low: int, high: int) -> float:
        if high - low <= 1 or sum(weights[low:high]) == 0:
            return 0.0
        best = min(
            range(low + 1, high), key=lambda cut: (cost(low, cut) + cost(cut, high), abs(cut - (low + high) / 2))
        )
        cuts[low, high] = best
        return sum(weights[low:high]) + cost(low, best) + cost(best, high)

    return float(cost(0, len(weights))), cuts


def _ordered(
    groups: Sequence[_Group],
    weights: Sequence[float],
    main: Line,
    sections: Sequence[Section],
    failed: bool,
    tables: Tables,
) -> tuple[tuple[Step, ...], float, int]:
    """Return the steps by number, how many tests it takes on average, and at worst; the first is the whole drain where no test failed yet."""
    total, cuts = best_order(weights)
    steps: list[Step] = []
    numbers = iter(range(1, 2 * len(groups) + 2))

    def below(low: int, high: int) -> tuple[int | tuple[str, ...], int]:
        if (low, high) not in cuts:
            left = zip(groups[low:high], weights[low:high], strict=True)
            return tuple(s.name for g, w in left if w > 0 for s in g.sections if s.known != "tight"), 0
        number, cut = next(numbers), cuts[low, high]
        drops, deep = below(cut, high)
        holds, flat = below(low, cut)
        upstream = [s for g in groups[cut:] for s in g.sections]
        plug = _plug(upstream, sections, main, tables)
        steps.append(Step(number, plug, tuple(s.name for s in upstream), drops, holds))
        return number, 1 + max(deep, flat)

    first = 0 if failed else next(numbers)
    then, deep = below(0, len(groups))
    if first:
        plug = _plug(sections, sections, main, tables)
        steps.append(Step(first, plug, tuple(s.name for s in sections), then, ()))
    mean = total / sum(weights)
    return tuple(sorted(steps, key=lambda s: s.number)), mean + bool(first), deep + bool(first)


def _plug(upstream: Sequence[Section], chain: Sequence[Section], main: Line, tables: Tables) -> Plug:
    """The plug at the lower end of the sections it tests, reached from the nearest way in."""
    profile, lowest = Profile(main), upstream[0]
    at = lowest.stretch.from_ft if main.downstream < 0 else lowest.stretch.to_ft
    ways = list(named_ways(main).items())
    ways += [(m.stretch.from_ft, m.choice) for m in profile.marks("end") if m.choice]
    distance, name = min(((abs(station - at), name) for station, name in ways), default=(0.0, ""))
    invert = profile.invert_below_slab_ft(at).value
    located = profile.depth_to_centre_ft(at).value
    below = chain[chain.index(lowest) - 1] if chain.index(lowest) > 0 else None
    return Plug(
        station_ft=at,
        branch=lowest.name if lowest.branch else below.name if below and below.branch else "",
        upstream=not lowest.branch,
        size_in=profile.bore_in(at).value,
        way_in=name,
        way_in_ft=distance,
        head_ft=invert if invert is not None else located or tables.number("depth_if_unlocated_ft"),
        gallons=sum(s.gallons for s in upstream),
    )

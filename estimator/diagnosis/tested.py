"""A job's water tests in; the sections they leave under suspicion, and what the camera saw in them, out."""

from collections.abc import Iterable
from dataclasses import dataclass

from estimator.diagnosis.case import Case, branches_without_a_line, opens
from estimator.diagnosis.severity import PLAN, REPAIR, severity
from estimator.diagnosis.tests_read import read_test
from estimator.model.job import Job, WaterTest
from estimator.model.line import Finding
from estimator.model.test_read import Outcome, TestRead
from estimator.tables.tables import Tables

STATIC_TESTS = "common practice; contractors' pages on static tests of slab drains (read second-hand)"


def read(case: Case) -> tuple[TestRead, ...]:
    return tuple(read_test(t, case.job, case.tables) for t in case.tests)


def having(case: Case, outcome: Outcome) -> tuple[TestRead, ...]:
    return tuple(r for r in read(case) if r.outcome == outcome)


def openings(case: Case) -> tuple[Finding, ...]:
    """What the camera saw that lets water out; not what is only suspected."""
    return tuple(f for f in case.line.findings if opens(f) and f.grade in ("seen", "inferred"))


FLOORS = frozenset({"slab", "basement", "crawl"})


@dataclass(frozen=True, slots=True)
class Section:
    """What one failed test leaves under suspicion: the parts it covered less those that held by themselves.

    `line` bears the leak where nothing seen explains it: the first line that may leak, under a floor if any lies there;
    `station_ft` is where a branch joins it that has no line of its own.
    """

    read: TestRead
    parts: tuple[str, ...]
    lines: tuple[str, ...]
    line: str
    station_ft: float | None

    @property
    def isolated(self) -> bool:
        return self.read.test.kind == "isolated"


def sections(job: Job, tables: Tables) -> tuple[Section, ...]:
    """Failed tests, each narrowed: what held by itself is never blamed, and a test of more says nothing that one of less says better."""
    reads = [read_test(t, job, tables) for t in job.water_tests if t.kind != "new pipe"]
    tight = _tight(reads)
    failed = [r for r in reads if r.outcome == "failed"]
    known = {id(r): _parts(r.test, job, tables) for r in failed}
    out = []
    for read in failed:
        narrower = [o for o in failed if o.test.kind == "isolated" and set(known[id(o)]) < set(known[id(read)])]
        if read.test.kind == "whole" and narrower:
            continue
        parts = tuple(p for p in known[id(read)] if p not in tight or read.test.kind == "isolated")
        out.append(_section(read, parts or known[id(read)], job, tables))
    return tuple(out)


def _tight(reads: Iterable[TestRead]) -> frozenset[str]:
    """Parts whose last test by themselves passed."""
    last: dict[str, Outcome] = {}
    for read in reads:
        if read.test.kind == "isolated" and read.outcome != "inconclusive":
            for part in read.test.covers or (read.test.section,):
                if read.outcome == "passed" or len(read.test.covers) < 2:
                    last[part] = read.outcome
    return frozenset(part for part, outcome in last.items() if outcome == "passed")


def _parts(test: WaterTest, job: Job, tables: Tables) -> tuple[str, ...]:
    """Lines and branches in a test: those it names, else its section, else all lines under the floor with their branches."""
    known = {line.name for line in job.lines} | {name for name, _ in branches_without_a_line(job)}
    named = [part for part in test.covers if part in known] or [part for part in (test.section,) if part in known]
    if named:
        return tuple(named)
    lines = [Case(job, line, tables) for line in job.lines]
    inside = [c.line.name for c in lines if FLOORS & c.zones(c.profile.extent)] or [c.line.name for c in lines]
    return (*inside, *(name for name, line in branches_without_a_line(job) if line in inside))


def _section(read: TestRead, parts: tuple[str, ...], job: Job, tables: Tables) -> Section:
    joins = dict(branches_without_a_line(job))
    lines = tuple(line.name for line in job.lines if line.name in parts)
    inside = [n for n in lines if FLOORS & (case := Case(job, job.line(n), tables)).zones(case.profile.extent)]
    if lines:
        return Section(read, parts, lines, (inside or lines)[0], None)
    branch = next((part for part in parts if part in joins), None)
    if branch is None:
        return Section(read, parts, (), job.lines[0].name, None)
    marks = (m for m in job.line(joins[branch]).marks if m.name == branch)
    return Section(read, parts, (), joins[branch], next(m.stretch.from_ft for m in marks))


def not_located(case: Case) -> tuple[Section, ...]:
    """Failed sections borne by this line in which the camera saw no opening that explains them: a hairline explains nothing."""
    return tuple(s for s in sections(case.job, case.tables) if s.line == case.line.name and not _explained(s, case))


def _explained(section: Section, case: Case) -> bool:
    lines = (Case(case.job, case.job.line(name), case.tables) for name in section.lines)
    return any(explaining(line) for line in lines)


def suspected(case: Case) -> tuple[Case, ...]:
    """Every line that a failed test on this line leaves under suspicion."""
    mine = [s for s in sections(case.job, case.tables) if case.line.name in s.lines]
    names = dict.fromkeys(name for s in mine for name in s.lines)
    return tuple(Case(case.job, case.job.line(name), case.tables) for name in names)


def _in_the_test(finding: Finding, case: Case) -> bool:
    """A test of the drains under a floor is plugged where they leave it: an opening out in the yard explains nothing."""
    under_floor = FLOORS & case.zones(case.profile.extent)
    return not under_floor or bool(FLOORS & case.zones(finding.stretch))


def leaks_in_the_test(case: Case) -> tuple[Finding, ...]:
    """Openings of this line that must be what the failed test lost water by: none worse was seen on any line it leaves open."""
    lines = suspected(case)
    if not lines:
        return ()
    worst = max((severity(f, other) for other in lines for f in explaining(other)), default=REPAIR)
    return explaining(case) if worst < REPAIR else ()


def explaining(case: Case) -> tuple[Finding, ...]:
    """Openings of a line, on the house side of the plug, wide enough to lose what a test loses."""
    return tuple(f for f in openings(case) if _in_the_test(f, case) and severity(f, case) >= PLAN)


def failed_sections(case: Case) -> tuple[str, ...]:
    """Sections of the house that failed a test of their own, each once."""
    apart = (t for t in case.job.water_tests if t.kind == "isolated")
    return tuple(dict.fromkeys(t.section for t in apart if read_test(t, case.job, case.tables).outcome == "failed"))

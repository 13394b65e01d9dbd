"""A job's water tests in; the sections they leave under suspicion, and what the camera saw in them, out."""

from collections.abc import Iterable

from estimator.diagnosis.case import Case, branches_without_a_line, opens
from estimator.diagnosis.severity import PLAN, REPAIR, severity
from estimator.diagnosis.tests_read import read_test
from estimator.model.frozen import Frozen
from estimator.model.job import Job, WaterTest
from estimator.model.line import Finding
from estimator.model.stretch import Stretch
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


class Section(Frozen):
    """What one failed test leaves under suspicion: the parts it covered less those that held by themselves.

    `line` bears the leak where nothing seen explains it: the first line that may leak, under a floor if any lies there;
    `at` is the part of that line that was tested, or the point where a branch joins it that has no line of its own; None: all of it.
    """

    read: TestRead
    parts: tuple[str, ...]
    lines: tuple[str, ...]
    line: str
    at: Stretch | None

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
        if any(_narrower(o.test, read.test, set(known[id(o)]), set(known[id(read)])) for o in failed):
            continue
        parts = tuple(p for p in known[id(read)] if p not in tight or read.test.kind == "isolated")
        out.append(_section(read, parts or known[id(read)], job, tables))
    return tuple(out)


def _narrower(one: WaterTest, than: WaterTest, its: set[str], others: set[str]) -> bool:
    """Whether an isolated test says better where it leaks: of fewer parts than a whole one, or of a part of the same line."""
    if one.kind != "isolated":
        return False
    if one.part and than.part is None and its <= others:
        return True
    return than.kind == "whole" and its < others


def _tight(reads: Iterable[TestRead]) -> frozenset[str]:
    """Lines and branches whose last test by themselves passed; one of a part of a line proves nothing of the rest."""
    last: dict[str, Outcome] = {}
    for read in reads:
        if read.test.kind == "isolated" and read.test.part is None and read.outcome != "inconclusive":
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
        return Section(read, parts, lines, (inside or lines)[0], read.test.part)
    branch = next((part for part in parts if part in joins), None)
    if branch is None:
        return Section(read, parts, (), job.lines[0].name, None)
    marks = (m for m in job.line(joins[branch]).marks if m.name == branch)
    return Section(read, parts, (), joins[branch], next(m.stretch for m in marks))


def not_located(case: Case) -> tuple[Section, ...]:
    """Failed sections borne by this line in which the camera saw no opening that explains them: a hairline explains nothing."""
    return tuple(s for s in sections(case.job, case.tables) if s.line == case.line.name and not _explained(s, case))


def _explained(section: Section, case: Case) -> bool:
    lines = (Case(case.job, case.job.line(name), case.tables) for name in section.lines)
    return any(_in_part(f, section) for line in lines for f in explaining(line))


def _in_part(finding: Finding, section: Section) -> bool:
    """Whether water of the section can get out there; of one that covers whole lines, anywhere in them."""
    return not section.lines or section.at is None or section.at.touches(finding.stretch)


def _in_the_test(finding: Finding, case: Case) -> bool:
    """A test of the drains under a floor is plugged where they leave it: an opening out in the yard explains nothing."""
    under_floor = FLOORS & case.zones(case.profile.extent)
    return not under_floor or bool(FLOORS & case.zones(finding.stretch))


def leaks_in_the_test(case: Case) -> tuple[Finding, ...]:
    """Openings of this line that must be what the failed test lost water by: none worse was seen on any line it leaves open."""
    mine = [s for s in sections(case.job, case.tables) if case.line.name in s.lines]
    others = {name: Case(case.job, case.job.line(name), case.tables) for s in mine for name in s.lines}
    open_to = {
        name: [f for f in explaining(other) if any(_in_part(f, s) for s in mine if name in s.lines)]
        for name, other in others.items()
    }
    worst = max((severity(f, others[name]) for name, found in open_to.items() for f in found), default=REPAIR)
    return tuple(open_to.get(case.line.name, ())) if worst < REPAIR else ()


def explaining(case: Case) -> tuple[Finding, ...]:
    """Openings of a line, on the house side of the plug, wide enough to lose what a test loses."""
    return tuple(f for f in openings(case) if _in_the_test(f, case) and severity(f, case) >= PLAN)


def failed_sections(case: Case) -> tuple[str, ...]:
    """Sections of the house that failed a test of their own, each once."""
    return tuple(dict.fromkeys(s.read.test.section for s in sections(case.job, case.tables) if s.isolated))

"""One line of a job with its profile and the firm's numbers: what every reading of the findings looks at."""

from functools import cached_property

from estimator.knowledge.pipe_family import Family, family
from estimator.model.frozen import Frozen
from estimator.model.job import SLAB_FLOORS, Job, WaterTest
from estimator.model.line import Finding, Line
from estimator.model.profile import Profile
from estimator.model.stretch import Stretch
from estimator.tables.tables import Tables

OPENINGS = frozenset({"gap", "crack", "hole", "collapse", "leak", "roots"})
"""Kinds that let water out; a groove does once it is gone through."""
SOAKS = OPENINGS | {"channel", "opening", "failed test"}
"""Kinds of need that let water into the soil, or would open further when the ground moves."""


class Run(Frozen, dict=True):
    """A part of a line that is of one family of pipe from end to end."""

    stretch: Stretch
    family: Family


class Case(Frozen, dict=True):
    """A line in its job. `number` reads a setting."""

    job: Job
    line: Line
    tables: Tables

    def number(self, key: str) -> float:
        return self.tables.number(key)

    @cached_property
    def profile(self) -> Profile:
        return Profile(self.line)

    @cached_property
    def runs(self) -> tuple[Run, ...]:
        """The line cut where the family of the pipe changes; D06, D17, D18 and the whole-line limits look at one run."""
        out: list[Run] = []
        for stretch, pipe in self.profile.pipes(self.profile.extent):
            if out and out[-1].family == family(pipe):
                out[-1] = Run(out[-1].stretch.union(stretch), out[-1].family)
            else:
                out.append(Run(stretch, family(pipe)))
        return tuple(out)

    def run_at(self, station_ft: float) -> Run:
        return next((r for r in self.runs if r.stretch.holds(station_ft)), self.runs[-1])

    def bore_in(self, finding: Finding) -> float:
        return self.profile.bore_in(finding.stretch.middle_ft).value

    def family_at(self, finding: Finding) -> Family:
        return family(self.profile.pipe(finding.stretch.middle_ft).value)

    def zones(self, stretch: Stretch) -> frozenset[str]:
        return frozenset(zone for _, zone in self.profile.zones(stretch) if zone)

    def under_slab(self, stretch: Stretch) -> bool:
        return self.job.house.floor in SLAB_FLOORS and "slab" in self.zones(stretch)

    def of(self, *kinds: str) -> tuple[Finding, ...]:
        return tuple(f for f in self.line.findings if f.kind in kinds)

    @cached_property
    def tests(self) -> tuple[WaterTest, ...]:
        """Water tests that cover this line, or a branch of it that has no line of its own; the whole system where none is named."""
        names = {self.line.name, *(name for name, line in branches_without_a_line(self.job) if line == self.line.name)}
        old = [t for t in self.job.water_tests if t.kind != "new pipe"]
        return tuple(t for t in old if (set(t.covers) & names if t.covers else t.kind == "whole" or t.section in names))


def branches_without_a_line(job: Job) -> tuple[tuple[str, str], ...]:
    """Branches that were noted on a line and never filmed as a line of their own: (name, the line they join)."""
    own = {line.name for line in job.lines}
    named = [(m.name, line.name) for line in job.lines for m in line.marks if m.word == "branch" and m.name]
    return tuple((name, line) for name, line in named if name not in own)


def opens(finding: Finding) -> bool:
    """Water gets out there: seen, inferred or suspected.

    Roots mean an opening; a groove counts once it is gone through or soil shows.
    """
    if finding.kind == "channel":
        return bool({"gone", "soil seen", "void", "washing", "running out"} & set(finding.signs))
    if finding.kind == "roots":
        return True
    return finding.kind in OPENINGS

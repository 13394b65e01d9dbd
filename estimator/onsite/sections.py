"""A house's drains under the slab in; the chain of sections that a plug can part, from the building outlet up, out.

A length of main, the branch that joins there, the next length of main, and so on to the far end.
"""

from dataclasses import dataclass

from estimator.diagnosis.tests_read import read_test
from estimator.knowledge.hydrostatics import pipe_gal_per_ft
from estimator.knowledge.pipe_family import family
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis
from estimator.model.line import Line
from estimator.model.profile import Branch, Profile
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.tables.tables import Tables
from estimator.wording.plain import ROOMS, in_plain_words

OPENINGS = ("hole", "crack", "gap", "collapse", "channel", "leak", "offset")
"""Findings through which water can leave."""
WEIGHT_PER_FT = {"iron": 1.0, "clay": 1.5, "plastic": 0.2}
"""How often a foot of old pipe leaks, against iron (judgment, from memory; only the order of the tests rests on it)."""
BRANCH_FT = 8.0
"""A branch nobody filmed counts as so many feet: closet bend, trap arm and riser leak more often than straight pipe (from memory)."""
SEEN_WEIGHT = 40.0
"""A seen opening counts as so many feet of pipe (judgment)."""


@dataclass(frozen=True, slots=True)
class Section:
    """One piece of the chain. `stretch` is on the main; a branch has a point. `known` is what a test proved of it."""

    name: str
    branch: bool
    stretch: Stretch
    size_in: float
    gallons: float
    weight: float
    seen: int  # openings that the camera saw in it
    known: str  # "", "tight" or "leaks"
    repair: str  # the defect whose repair replaces all of it anyway; "" where none does
    riser_ft: float | None = None  # of a branch, from the pipe's bottom to the slab top; None where no level was read

    @property
    def riser_gal(self) -> float:
        """What the riser holds up to the slab top, gallons; 0 where its height is not known."""
        return (self.riser_ft or 0.0) * pipe_gal_per_ft(self.size_in)


def label(name: str) -> Say:
    """Return a section's name for the reader: a branch by its room, which is no line; a length of main by its number.

    >>> str(label("kitchen")), str(label("main 2"))
    ('kitchen', 'main 2')
    """
    kind, _, number = name.rpartition(" ")
    if kind in NUMBERED and number.isdigit():
        return Say.of(NUMBERED[kind].text, number=int(number))
    return in_plain_words(ROOMS, name)


NUMBERED = {"main": Say.of("main {number}"), "branch": Say.of("branch {number}")}


def drains_of(job: Job) -> tuple[Line, ...]:
    """Return the lines that leave the slab, the one with the most branches first; what joins one of them under the slab is its branch."""
    found = [line for line in job.lines if Profile(line).slab_edge_ft is not None]
    return tuple(sorted(found, key=lambda line: -len(Profile(line).branches)))


def sections_of(main: Line, job: Job, diagnosis: Diagnosis, tables: Tables) -> tuple[Section, ...]:
    """The chain from the outlet up."""
    profile = Profile(main)
    edge = profile.slab_edge_ft or 0.0
    up = -main.downstream
    end = profile.extent.to_ft if up > 0 else profile.extent.from_ft
    branches = sorted(
        (b for b in profile.branches if (b.station_ft - edge) * up > 0 and b.live != "dead"),
        key=lambda b: b.station_ft * up,
    )
    out: list[Section] = []
    at = edge
    for number, branch in enumerate(branches, start=1):
        out.append(
            _piece(main, profile, Stretch.between(at, branch.station_ft), f"main {number}", job, diagnosis, tables)
        )
        out.append(_branch(branch, main, job, diagnosis, tables, number))
        at = branch.station_ft
    out.append(_piece(main, profile, Stretch.between(at, end), f"main {len(branches) + 1}", job, diagnosis, tables))
    return tuple(s for s in out if s.branch or s.stretch.length_ft > 0)


def _piece(
    main: Line, profile: Profile, stretch: Stretch, name: str, job: Job, diagnosis: Diagnosis, tables: Tables
) -> Section:
    seen = sum(f.kind in OPENINGS and f.grade == "seen" and f.stretch.touches(stretch) for f in main.findings)
    pipes = profile.pipes(stretch)
    weight = SEEN_WEIGHT * seen + sum(p.length_ft * WEIGHT_PER_FT.get(family(m), 1.0) for p, m in pipes)
    gallons = sum(part.length_ft * pipe_gal_per_ft(size) for part, size in profile.sizes(stretch))
    repair = _repaired(main.name, stretch, diagnosis)
    return Section(
        name,
        False,
        stretch,
        profile.bore_in(stretch.middle_ft).value,
        gallons,
        weight,
        seen,
        _proved(main.name, job, tables),
        repair,
    )


def _branch(branch: Branch, main: Line, job: Job, diagnosis: Diagnosis, tables: Tables, number: int) -> Section:
    name = branch.name or f"branch {number}"
    line = next((one for one in job.lines if one.joins and one.joins.line == main.name and _same(one, branch)), None)
    seen = sum(f.kind in OPENINGS for f in line.findings) if line else 0
    long_ft = Profile(line).extent.length_ft if line else BRANCH_FT
    repair = ""
    if line:
        whole = Profile(line).extent
        repair = _repaired(line.name, whole, diagnosis)
    at = Stretch(branch.station_ft, branch.station_ft)
    known = _proved(name, job, tables) or (_proved(line.name, job, tables) if line else "")
    return Section(
        name,
        True,
        at,
        branch.size_in,
        long_ft * pipe_gal_per_ft(branch.size_in),
        long_ft + SEEN_WEIGHT * seen,
        seen,
        known,
        repair,
        _riser_ft(branch, main),
    )


def _riser_ft(branch: Branch, main: Line) -> float | None:
    """How far the branch's bottom lies below the slab top where it joins, as far as levels tell."""
    invert = Profile(main).invert_below_slab_ft(branch.station_ft)
    return None if invert.value is None or invert.how == "carried" else max(invert.value, 0.0)


def _repaired(line: str, stretch: Stretch, diagnosis: Diagnosis) -> str:
    """What must be repaired there whatever a test shows; a failed test alone is no repair."""
    needs = (n for n in diagnosis.needs if n.must and n.line == line and "failed test" not in n.kinds)
    return next((n.id for n in needs if n.stretch.covers(stretch)), "")


def _same(line: Line, branch: Branch) -> bool:
    return line.joins is not None and abs(line.joins.station_ft - branch.station_ft) < 1.0


def _proved(name: str, job: Job, tables: Tables) -> str:
    """What isolated tests of this part alone proved, the last one counting; the readings speak where no result was written."""
    for test in reversed(job.water_tests):
        if test.kind == "isolated" and name in test.covers:
            outcome = read_test(test, job, tables).outcome
            if outcome == "passed":
                return "tight"
            if outcome == "failed" and len(test.covers) == 1:
                return "leaks"
    return ""

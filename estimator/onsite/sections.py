"""A house's drains in; the tree of sections that plugs can part, from the lower end up, and every place a plug can part it, out.

A length of the drain, the branch that joins there with whatever joins that, the next length of the drain, and so on to the far
end. A plug anywhere in the drain, filled from above, tests all that lies upstream of it; in a branch it does where the branch
has a way in of its own.
"""

from estimator.diagnosis.tests_read import proved
from estimator.knowledge.hydrostatics import pipe_gal_per_ft
from estimator.knowledge.pipe_family import family
from estimator.model.answers import INDOOR_ZONES
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.judgement import Diagnosis
from estimator.model.line import Line
from estimator.model.profile import Branch, Profile
from estimator.model.say import Say
from estimator.model.stretch import Stretch
from estimator.onsite.ways_in import named_ways, ways_and_ends
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


class Section(Frozen):
    """One part of the tree. `stretch` is on `line`; a branch in one piece has the point where it joins. `known` is what a test proved of it."""

    name: str
    branch: bool  # a branch in one piece
    line: str
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


class Cut(Frozen):
    """Where a plug can stand, and which sections lie upstream of it. `branch` is the one it stands next to, "" for none."""

    line: str
    station_ft: float
    tests: frozenset[int]
    branch: str = ""
    upstream: bool = True  # on that branch's upstream side


class Tree(Frozen):
    """`sections` from the lower end up; the first of `cuts` tests them all."""

    line: str
    sections: tuple[Section, ...]
    cuts: tuple[Cut, ...]
    outdoors: bool


def is_named(branch: str) -> bool:
    """Return whether the notes call the branch something; one that they do not is numbered."""
    return branch.rpartition(" ")[0] != "branch"


def label(name: str) -> Say:
    """Return a section's name for the reader: a branch by its room, which is no line; a length of drain by its number.

    >>> str(label("kitchen")), str(label("main 2")), str(label("kitchen 2"))
    ('kitchen', 'main 2', 'kitchen 2')
    """
    kind, _, number = name.rpartition(" ")
    if not number.isdigit():
        return in_plain_words(ROOMS, name)
    if kind in NUMBERED:
        return Say.of(NUMBERED[kind].text, number=int(number))
    return Say.of("{part} {number}", part=in_plain_words(ROOMS, kind), number=int(number))


NUMBERED = {"main": Say.of("main {number}"), "branch": Say.of("branch {number}"), "yard": Say.of("yard {number}")}


def drains_of(job: Job) -> tuple[Line, ...]:
    """Return the lines that leave the slab, the one with the most branches first; what joins one of them under the slab is its branch."""
    found = [line for line in job.lines if Profile(line).slab_edge_ft is not None]
    return tuple(sorted(found, key=lambda line: -len(Profile(line).branches)))


def yard_lines_of(job: Job) -> tuple[Line, ...]:
    """Return the lines outdoors that a plug can be sent down from a cleanout of their own."""
    return tuple(line for line in job.lines if line.joins is None and _outdoors(line) and named_ways(line))


def _outdoors(line: Line) -> bool:
    profile = Profile(line)
    zones = {zone for _, zone in profile.zones(profile.extent) if zone is not None}
    return profile.slab_edge_ft is None and bool(zones) and not zones & {*INDOOR_ZONES, "crawl"}


def tree_of(root: Line, job: Job, diagnosis: Diagnosis, tables: Tables) -> Tree:
    """Return the tree of this line: from the building outlet up, or of a yard line from the lot line or its lower end."""
    profile, outdoors = Profile(root), _outdoors(root)
    low = profile.lot_line_ft if outdoors else profile.slab_edge_ft
    grown = _Grown(job, diagnosis, tables)
    grown.line(root, lower_end(root) if low is None else low, "yard" if outdoors else "main", cuts=True)
    return Tree(root.name, tuple(grown.sections), tuple(grown.cuts), outdoors)


def lower_end(line: Line) -> float:
    """Return the station, ft, of the end the drain flows to."""
    extent = Profile(line).extent
    return extent.to_ft if line.downstream > 0 else extent.from_ft


class _Grown:
    """Sections and cuts as they are found, branch after branch up the drain."""

    def __init__(self, job: Job, diagnosis: Diagnosis, tables: Tables) -> None:
        self.job, self.diagnosis, self.tables = job, diagnosis, tables
        self.sections: list[Section] = []
        self.cuts: list[Cut] = []

    def line(self, line: Line, low: float, name: str, *, cuts: bool) -> None:
        """A drain from its lower end up; whatever is found between a cut and the line's end lies upstream of it."""
        profile, up = Profile(line), -line.downstream
        far = profile.extent.to_ft if up > 0 else profile.extent.from_ft
        above = (b for b in profile.branches if (b.station_ft - low) * up > 0 and b.live != "dead")
        branches = [b for b in sorted(above, key=lambda b: b.station_ft * up) if not self._a_drain_of_its_own(line, b)]
        first, waiting, at, beside = len(self.cuts), [], low, ""
        for number, branch in enumerate([*branches, None], start=1):
            end = branch.station_ft if branch else far
            if abs(end - at) > 0:
                waiting.append((len(self.sections), at, beside, True))
                piece = Stretch.between(at, end)
                self.sections.append(
                    _piece(line, profile, piece, f"{name} {number}", self.job, self.diagnosis, self.tables)
                )
            if branch:
                beside = branch.name or f"branch {number}"
                waiting.append((len(self.sections), end, beside, False))
                self._branch(branch, line, beside)
            at = end
        whole = len(self.sections)
        if cuts:
            made = [Cut(line.name, at, frozenset(range(start, whole)), by, above) for start, at, by, above in waiting]
            self.cuts[first:first] = made

    def _a_drain_of_its_own(self, line: Line, branch: Branch) -> bool:
        """What joins there leaves the slab: it is planned for itself."""
        own = self._line_of(line, branch)
        return own is not None and Profile(own).slab_edge_ft is not None

    def _line_of(self, line: Line, branch: Branch) -> Line | None:
        return next((o for o in self.job.lines if o.joins and o.joins.line == line.name and _same(o, branch)), None)

    def _branch(self, branch: Branch, main: Line, name: str) -> None:
        """One piece, where nothing joins it; else a drain with branches of its own."""
        own = self._line_of(main, branch)
        if own is None or not any(b.live != "dead" for b in Profile(own).branches):
            here = len(self.sections)
            self.sections.append(_side_drain(branch, main, own, name, self.job, self.diagnosis, self.tables))
            if own and ways_and_ends(own):
                self.cuts.append(Cut(own.name, lower_end(own), frozenset({here})))
            return
        self.line(own, lower_end(own), name, cuts=bool(ways_and_ends(own)))


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
        main.name,
        stretch,
        profile.bore_in(stretch.middle_ft).value,
        gallons,
        weight,
        seen,
        proved(main.name, job, tables, stretch),
        repair,
    )


def _side_drain(
    branch: Branch, main: Line, line: Line | None, name: str, job: Job, diagnosis: Diagnosis, tables: Tables
) -> Section:
    seen = sum(f.kind in OPENINGS for f in line.findings) if line else 0
    long_ft = Profile(line).extent.length_ft if line else BRANCH_FT
    repair = ""
    if line:
        whole = Profile(line).extent
        repair = _repaired(line.name, whole, diagnosis)
    at = Stretch(branch.station_ft, branch.station_ft)
    known = proved(name, job, tables) or (proved(line.name, job, tables) if line else "")
    return Section(
        name,
        True,
        main.name,
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

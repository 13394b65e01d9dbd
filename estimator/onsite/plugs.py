"""The sections a plug tests in; where it goes, by which way in, and the water that stands on it, out."""

from estimator.knowledge.hydrostatics import head_psi, plug_load_lb
from estimator.model.frozen import Frozen
from estimator.model.job import Job
from estimator.model.profile import Profile
from estimator.onsite.sections import Cut, Tree
from estimator.onsite.ways_in import ways_and_ends
from estimator.tables.tables import Tables

TOILET_FT = 25.0
"""So much farther a plug is walked from a cleanout on its hose before a toilet is pulled for it (judgment)."""
TOILET_TESTS = 0.5
"""Pulling a toilet and setting it again takes about half as long as a test (from memory)."""


class Plug(Frozen):
    """Where a plug goes: station on its line and which side of a branch, size, the way in and how far from it, the water on it.

    `branch` is the one it stands next to or in, "" at the lower end of a drain; `upstream` whether it stands on that branch's upstream side;
    `toilet` whether the way in is a toilet that is pulled.
    """

    line: str
    station_ft: float
    branch: str
    upstream: bool
    size_in: float
    way_in: str
    way_in_ft: float
    toilet: bool
    head_ft: float
    gallons: float

    @property
    def psi(self) -> float:
        return head_psi(self.head_ft)

    @property
    def load_lb(self) -> float:
        return plug_load_lb(self.size_in, self.head_ft)

    @property
    def tests(self) -> float:
        """What using it costs, in tests."""
        return 1.0 + (TOILET_TESTS if self.toilet else 0.0)


def plug_for(cut: Cut, tree: Tree, job: Job, tables: Tables) -> Plug:
    """Return the plug at this cut; a toilet is pulled only where no cleanout is near."""
    line, at = job.line(cut.line), cut.station_ft
    profile = Profile(line)
    station, name = min(ways_and_ends(line).items(), key=lambda way: _effort(way, at), default=(at, ""))
    invert = None if tree.outdoors else profile.invert_below_slab_ft(at).value
    located = profile.depth_to_centre_ft(at).value
    return Plug(
        line=cut.line,
        station_ft=at,
        branch=cut.branch,
        upstream=cut.upstream,
        size_in=profile.bore_in(at).value,
        way_in=name,
        way_in_ft=abs(station - at),
        toilet=is_toilet(name),
        head_ft=invert if invert is not None else located or tables.number("depth_if_unlocated_ft"),
        gallons=sum(tree.sections[n].gallons + tree.sections[n].riser_gal for n in cut.tests),
    )


def _effort(way: tuple[float, str], at_ft: float) -> float:
    station, name = way
    return abs(station - at_ft) + (TOILET_FT if is_toilet(name) else 0.0)


def is_toilet(way_in: str) -> bool:
    """Return whether a way in is a toilet that has to be pulled, by its name in the notes.

    >>> is_toilet("master bath toilet pulled"), is_toilet("closet bend"), is_toilet("front cleanout")
    (True, True, False)
    """
    return any(word in way_in.lower() for word in ("toilet", "closet", "inodoro"))

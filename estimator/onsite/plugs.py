"""The sections a plug tests in; where it goes, by which way in, and the water that stands on it, out."""

from collections.abc import Sequence
from dataclasses import dataclass

from estimator.knowledge.hydrostatics import head_psi, plug_load_lb
from estimator.model.line import Line
from estimator.model.profile import Profile
from estimator.onsite.sections import Section
from estimator.onsite.ways_in import ways_and_ends
from estimator.tables.tables import Tables

TOILET_FT = 25.0
"""So much farther a plug is walked from a cleanout on its hose before a toilet is pulled for it (judgment)."""
TOILET_TESTS = 0.5
"""Pulling a toilet and setting it again takes about half as long as a test (from memory)."""


@dataclass(frozen=True, slots=True)
class Plug:
    """Where a plug goes: station on the main and which side of a branch, size, the way in and how far from it, the water on it.

    `branch` is the one it stands next to, "" at the building outlet; `upstream` whether it stands on that branch's upstream side;
    `toilet` whether the way in is a toilet that is pulled.
    """

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


def plug_for(upstream: Sequence[Section], chain: Sequence[Section], main: Line, tables: Tables) -> Plug:
    """Return the plug at the lower end of the sections it tests; a toilet is pulled only where no cleanout is near."""
    profile, lowest = Profile(main), upstream[0]
    at = lowest.stretch.from_ft if main.downstream < 0 else lowest.stretch.to_ft
    station, name = min(ways_and_ends(main).items(), key=lambda way: _effort(way, at), default=(at, ""))
    invert = profile.invert_below_slab_ft(at).value
    located = profile.depth_to_centre_ft(at).value
    below = chain[chain.index(lowest) - 1] if chain.index(lowest) > 0 else None
    return Plug(
        station_ft=at,
        branch=lowest.name if lowest.branch else below.name if below and below.branch else "",
        upstream=not lowest.branch,
        size_in=profile.bore_in(at).value,
        way_in=name,
        way_in_ft=abs(station - at),
        toilet=is_toilet(name),
        head_ft=invert if invert is not None else located or tables.number("depth_if_unlocated_ft"),
        gallons=sum(s.gallons + s.riser_gal for s in upstream),
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

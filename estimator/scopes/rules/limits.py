"""The firm's settings and the place's row in; the limits a rule compares with out."""

from typing import Literal

from estimator.knowledge.fixture_units import Family
from estimator.knowledge.plumbing_code import longest_arm_ft
from estimator.tables.lookups import trap_arms
from estimator.tables.rows import PlaceRow, Soil
from estimator.tables.tables import Tables
from estimator.works.grade import code_families, fall_asked_in_per_ft, least_fall_in_per_ft

UNKNOWN = "unknown"
"""The row for a place nobody has asked about: the stricter of two code families."""


class Limits:
    """Look-ups for rules. `asked` keeps the keys read, so that a verdict can name them and a test can check them."""

    def __init__(self, tables: Tables, place: str = "") -> None:
        self._tables = tables
        self.asked: list[str] = []
        here = tables.known_place(place)
        self.asked_here = here is not None and place != UNKNOWN
        self.place: PlaceRow | None = here or tables.known_place(UNKNOWN)

    def slope_is_known(self, size_in: float) -> bool:
        """Somebody asked this place which slope it wants of a pipe of this size."""
        return self.asked_here and fall_asked_in_per_ft(self.place, size_in) is not None

    def __call__(self, key: str) -> float:
        """A setting as a number. Errors: KeyError when the table has no such key."""
        self.asked.append(key)
        return self._tables.number(key)

    @property
    def code(self) -> Literal["IPC", "UPC", ""]:
        """The place's plumbing code family; "" where nobody asked."""
        code = self.place.code if self.place else ""
        return "IPC" if code == "IPC" else "UPC" if code == "UPC" else ""

    @property
    def code_families(self) -> tuple[Family, ...]:
        """The place's family; both where nobody asked, so that the stricter one decides."""
        return code_families(self.place)

    def least_fall_in_per_ft(self, size_in: float) -> float:
        """What the place asks of a pipe of this size, in a ft; the stricter family's where nobody asked."""
        return least_fall_in_per_ft(self.place, size_in, self._tables.number)

    def longest_trap_arm_ft(self, trap_in: float) -> float:
        """What the place's row says of a trap of this size; where it says nothing, the code family's; the shorter of both."""
        here = trap_arms(self.place.trap_arms) if self.place else {}
        return here[trap_in] if trap_in in here else longest_arm_ft(trap_in, self.code)

    def soil(self, word: str | None) -> Soil | None:
        """The soil's row; None for a word the table does not know."""
        try:
            return self._tables.soil(word) if word else None
        except KeyError:
            return None

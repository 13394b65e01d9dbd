"""The firm's settings and the place's row in; the limits a rule compares with out."""

from estimator.tables.rows import PlaceRow, Soil
from estimator.tables.tables import Tables

UNKNOWN = "unknown"
"""The row for a place nobody has asked about: the stricter of two code families."""


class Limits:
    """Look-ups for rules. `asked` keeps the keys read, so that a verdict can name them and a test can check them."""

    def __init__(self, tables: Tables, place: str = "") -> None:
        self._tables = tables
        self.asked: list[str] = []
        here = self._place(place)
        self.asked_here = here is not None and place != UNKNOWN
        self.place: PlaceRow | None = here or self._place(UNKNOWN)

    def _place(self, name: str) -> PlaceRow | None:
        try:
            return self._tables.place(name)
        except KeyError:
            return None

    def __call__(self, key: str) -> float:
        """A setting as a number. Errors: KeyError when the table has no such key."""
        self.asked.append(key)
        return self._tables.number(key)

    def soil(self, word: str | None) -> Soil | None:
        """The soil's row; None for a word the table does not know."""
        try:
            return self._tables.soil(word) if word else None
        except KeyError:
            return None

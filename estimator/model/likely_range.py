"""How far the firm's own cost and the days of an option may run, and what moves them. Office only: no homeowner's paper reads it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from zlib import crc32


@dataclass(frozen=True, slots=True, kw_only=True)
class LikelyRange:
    """Percentiles of the firm's own direct cost and of crew days, by percent; drivers sum to 100.

    `seed` and `draws` make the same range again. `curve` has (percent, dollars, days): in so many of a hundred such jobs the
    cost and the days stay within. `held_chance_percent` is the chance of staying within the cost the price was made with,
    its contingency included.
    """

    seed: int
    draws: int
    cost: Mapping[int, float] = field(hash=False)
    days: Mapping[int, float] = field(hash=False)
    mean_cost: float
    drivers: tuple[tuple[str, float], ...]  # what moves the cost, percent of its spread, largest first
    confidence_percent: float
    contingency_needed_percent: float
    contingency_percent: float  # what the tables give
    curve: tuple[tuple[int, float, float], ...] = ()
    held_chance_percent: float = 100.0

    @property
    def short_percent(self) -> float:
        """How much contingency the tables lack for the firm's confidence; 0 where they give enough."""
        return max(0.0, self.contingency_needed_percent - self.contingency_percent)


def seed_of(number: str) -> int:
    """The seed that is written on the record of a revision.

    >>> seed_of("2026-131")
    3208534261
    """
    return crc32(number.encode("utf-8", "backslashreplace"))

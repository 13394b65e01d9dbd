"""Low, likely and high in; any percentile of the triangle between them out."""

import math
from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ThreePoints:
    """low ≤ likely ≤ high of anything."""

    low: float
    likely: float
    high: float

    def at(self, share: float) -> float:
        """The value below which this share (0 to 1) of the triangle lies.

        >>> ThreePoints(0, 1, 2).at(0.5), ThreePoints(3, 3, 3).at(0.9)
        (1.0, 3)
        """
        return self.at_all((share,))[0]

    def at_all(self, shares: Iterable[float]) -> list[float]:
        """The same for many shares at once.

        >>> ThreePoints(0, 1, 2).at_all((0.0, 0.5, 1.0))
        [0.0, 1.0, 2.0]
        """
        low, high, width, root = self.low, self.high, self.high - self.low, math.sqrt
        if width <= 0:
            return [self.likely for _ in shares]
        below, above = self.likely - low, high - self.likely
        turn = below / width
        return [
            low + root(share * width * below) if share < turn else high - root((1 - share) * width * above)
            for share in shares
        ]

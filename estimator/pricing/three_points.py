"""Low, likely and high in; any percentile of the triangle between them out."""

import math
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
        width = self.high - self.low
        if width <= 0:
            return self.likely
        turn = (self.likely - self.low) / width
        if share < turn:
            return self.low + math.sqrt(share * width * (self.likely - self.low))
        return self.high - math.sqrt((1 - share) * width * (self.high - self.likely))

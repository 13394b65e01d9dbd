"""Low, likely and high in; mean, spread and any percentile of the triangle between them, out."""

import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ThreePoints:
    """low ≤ likely ≤ high of anything.

    >>> ThreePoints(5, 8, 14).pert_mean, ThreePoints(5, 8, 14).pert_sigma
    (8.5, 1.5)
    """

    low: float
    likely: float
    high: float

    @property
    def mean(self) -> float:
        """(low + likely + high) ÷ 3, of a triangle."""
        return (self.low + self.likely + self.high) / 3

    @property
    def variance(self) -> float:
        """(a² + b² + c² − ab − ac − bc) ÷ 18, of a triangle."""
        a, c, b = self.low, self.likely, self.high
        return (a * a + b * b + c * c - a * b - a * c - b * c) / 18

    @property
    def pert_mean(self) -> float:
        """(low + 4 likely + high) ÷ 6."""
        return (self.low + 4 * self.likely + self.high) / 6

    @property
    def pert_sigma(self) -> float:
        """(high − low) ÷ 6."""
        return (self.high - self.low) / 6

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


def spread_of_sum(parts: list[ThreePoints]) -> tuple[float, float]:
    """Mean and sigma of a sum of independent triangles: means and variances add, lows and highs never do."""
    return sum(p.mean for p in parts), math.sqrt(sum(p.variance for p in parts))

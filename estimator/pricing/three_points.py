"""Low, likely and high in; any percentile of the triangle between them out."""

import numpy as np
from numpy.typing import NDArray

from estimator.model.frozen import Frozen

Column = NDArray[np.float64]
"""One value a draw."""


class ThreePoints(Frozen):
    """low ≤ likely ≤ high of anything."""

    low: float
    likely: float
    high: float

    def at(self, share: float) -> float:
        """The value below which this share (0 to 1) of the triangle lies.

        >>> ThreePoints(0, 1, 2).at(0.5), ThreePoints(3, 3, 3).at(0.9)
        (1.0, 3.0)
        """
        return float(self.at_all(np.array([share]))[0])

    def at_all(self, shares: Column) -> Column:
        """The same for many shares at once.

        >>> ThreePoints(0, 1, 2).at_all(np.array([0.0, 0.5, 1.0])).tolist()
        [0.0, 1.0, 2.0]
        """
        low, high, width = self.low, self.high, self.high - self.low
        if width <= 0:
            return np.full(len(shares), float(self.likely))
        below, above = self.likely - low, high - self.likely
        rises, falls = low + np.sqrt(shares * width * below), high - np.sqrt((1 - shares) * width * above)
        return np.where(shares < below / width, rises, falls)

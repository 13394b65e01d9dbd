"""Hours of site days in; half days, and those on which no drain may be used, out."""

import math
from collections.abc import Iterable, Sequence
from decimal import Decimal

from estimator.model.frozen import Frozen

HALF_DAY = Decimal("0.5")
DUST = 1e-6
"""Hours less than anybody means: what adding floats may leave behind."""


class Clock(Frozen):
    """Site days by the half: hours of a day, hours over that start no new half day, the hour at which the work ends."""

    day_hours: float
    tolerance_hours: float
    end: float

    @property
    def halves(self) -> int:
        """Half days from the first morning to the last task; a quarter hour over starts no new one."""
        over = max(DUST, self.end - self.tolerance_hours)
        return max(1, math.ceil(2 * round(over / self.day_hours, 6)))

    def span(self, half: int) -> tuple[float, float]:
        """From which hour to which a half day goes, from 0; the last takes what is left."""
        last = self.end if half == self.halves - 1 else 0.0
        return half * self.day_hours / 2, max(last, (half + 1) * self.day_hours / 2)

    def off(self, half: int, spans: Iterable[tuple[float, float]]) -> bool:
        """Whether the drains are off in a half day for more than a quarter hour; `spans` is when they are, in order."""
        start, end = self.span(half)
        hours, reached = 0.0, start
        for began, ended in spans:
            low, high = max(reached, began), min(end, ended)
            if high > low:
                hours, reached = hours + high - low, high
        return hours > self.tolerance_hours + DUST

    def days_off(self, spans: Sequence[tuple[float, float]]) -> Decimal:
        """Days on which no drain may be used, by the half; half a day at least where they are off at all."""
        ordered = sorted(spans)
        off = sum(self.off(half, ordered) for half in range(self.halves))
        return HALF_DAY * (off or (1 if spans else 0))

    def day_at_start(self, hour: float) -> int:
        """The site day, from 1, on which what begins at an hour begins."""
        return math.floor((hour + DUST) / self.day_hours) + 1

    def day_at_end(self, hour: float) -> int:
        """The site day on which what ends at an hour ends; a quarter hour over a day starts no new one."""
        return max(1, math.ceil((hour - self.tolerance_hours) / self.day_hours - DUST))

    def halves_of(self, spans: Sequence[tuple[float, float]]) -> tuple[int, ...]:
        """The half days, from 0, that hold more than a quarter hour of these spans."""
        half, spare = self.day_hours / 2, self.tolerance_hours
        last = math.ceil(max((end for _, end in spans), default=0.0) / half)
        return tuple(
            n
            for n in range(last)
            if any(low < (n + 1) * half - spare and high > n * half + spare for low, high in spans)
        )

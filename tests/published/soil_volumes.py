"""A kind of soil in; how its volume and weight change from the bank to loose to compacted, out.

Published ranges, to check the firm's own soils table against; the table decides.
"""

from typing import Literal

from estimator.model.frozen import Frozen

State = Literal["bank", "loose", "compacted"]
SOURCE = "FM 5-434 table 1-1, from memory; its rows agree with themselves"
TEXTBOOK_SOURCE = "Dagostino / Peterson, Estimating in Building Construction, fig. 9.1 (read)"
LOOKED = "2026-11-25"

FACTORS: dict[str, dict[tuple[State, State], float]] = {
    "sand": {
        ("bank", "loose"): 1.11, ("bank", "compacted"): 0.95, ("loose", "bank"): 0.90,
        ("loose", "compacted"): 0.86, ("compacted", "bank"): 1.05, ("compacted", "loose"): 1.17,
    },
    "common earth": {
        ("bank", "loose"): 1.25, ("bank", "compacted"): 0.90, ("loose", "bank"): 0.80,
        ("loose", "compacted"): 0.72, ("compacted", "bank"): 1.11, ("compacted", "loose"): 1.39,
    },
    "clay": {
        ("bank", "loose"): 1.43, ("bank", "compacted"): 0.90, ("loose", "bank"): 0.70,
        ("loose", "compacted"): 0.63, ("compacted", "bank"): 1.11, ("compacted", "loose"): 1.59,
    },
    "blasted rock": {
        ("bank", "loose"): 1.50, ("bank", "compacted"): 1.30, ("loose", "bank"): 0.67,
        ("loose", "compacted"): 0.87, ("compacted", "bank"): 0.77, ("compacted", "loose"): 1.15,
    },
}  # fmt: skip
"""One cubic yard of the first state makes so many of the second."""

TEXTBOOK_SWELL_PERCENT: dict[str, tuple[float, float]] = {
    "sand and gravel": (10, 18), "loam": (15, 25), "dense clay": (20, 35), "solid rock": (40, 70),
}  # fmt: skip


class Change(Frozen):
    """What three densities say: swell and shrinkage in percent, load factor."""

    bank_lb: float
    loose_lb: float
    compacted_lb: float | None = None

    @property
    def swell_percent(self) -> float:
        """
        >>> round(Change(3400, 2700).swell_percent)
        26
        """
        return (self.bank_lb / self.loose_lb - 1) * 100

    @property
    def load_factor(self) -> float:
        """
        >>> round(Change(3000, 2310).load_factor, 2)
        0.77
        """
        return self.loose_lb / self.bank_lb

    @property
    def shrinkage_percent(self) -> float:
        """
        >>> round(Change(3000, 2310, 3750).shrinkage_percent, 6)
        20.0

        Errors: ValueError where no compacted density is known.
        """
        if self.compacted_lb is None:
            raise ValueError("shrinkage needs a compacted density")
        return (1 - self.bank_lb / self.compacted_lb) * 100


def factor(soil: str, from_state: State, to_state: State) -> float:
    """
    >>> factor("clay", "bank", "loose"), factor("clay", "bank", "bank")
    (1.43, 1.0)

    Errors: KeyError for a soil not listed.
    """
    return 1.0 if from_state == to_state else FACTORS[soil][from_state, to_state]

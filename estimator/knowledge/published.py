"""What every published number carries: the value, its unit, where it was read, how sure, and when someone last looked."""

from dataclasses import dataclass
from typing import Literal

Basis = Literal["read", "read second-hand", "memory", "computed", "common practice"]


@dataclass(frozen=True, slots=True)
class Published:
    """One published number.

    >>> Published(4.0, "ft", "29 CFR 1926.651(c)(2)", "read", "2026-11-25").value
    4.0
    """

    value: float
    unit: str
    source: str
    basis: Basis
    looked: str  # the day someone last looked, ISO
    note: str = ""

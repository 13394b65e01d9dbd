"""Pipe and the code family in; how far its hangers may be apart, ft, out. From memory: the code of the place decides."""

from collections.abc import Iterable
from typing import Literal

SOURCE = "IPC 2021 table 308.5; UPC table 313.3 (from memory)"
LOOKED = "2026-11-29"

Hung = Literal["plastic", "cast iron", "cast iron in 10 ft lengths"]

IPC_FT: dict[Hung, float] = {"plastic": 4.0, "cast iron": 5.0, "cast iron in 10 ft lengths": 10.0}
"""PVC and ABS at any drain size; cast iron at 5 ft, or 10 ft where 10 ft lengths are laid."""
UPC_FT: dict[Hung, float] = {"plastic": 4.0, "cast iron": 5.0, "cast iron in 10 ft lengths": 10.0}
"""The same for PVC and ABS; cast iron with hubs. No-hub joints take their own hangers on top."""


def widest_ft(pipe: Hung, families: Iterable[str]) -> float:
    """Return the widest spacing that every one of the code families allows, level pipe.

    >>> widest_ft("plastic", ("IPC", "UPC")), widest_ft("cast iron in 10 ft lengths", ("IPC",))
    (4.0, 10.0)
    """
    return min((UPC_FT if code == "UPC" else IPC_FT)[pipe] for code in families)

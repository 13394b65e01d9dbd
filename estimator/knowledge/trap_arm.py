"""A trap's size and the code family in; how far it may lie from its vent, ft, out. Read second-hand: the place decides."""

from typing import Literal

LOOKED = "2026-11-25"
SOURCE = "IPC/IRC and UPC tables of trap-arm lengths (read second-hand)"

IPC_FT: dict[float, float] = {1.25: 5.0, 1.5: 6.0, 2.0: 8.0, 3.0: 12.0}
UPC_FT: dict[float, float] = {1.25: 2.5, 1.5: 3.5, 2.0: 5.0, 3.0: 6.0}


def longest_arm_ft(trap_in: float, code: Literal["IPC", "UPC", ""]) -> float:
    """The longest trap arm; the shorter of both families where nobody asked the place.

    >>> longest_arm_ft(1.5, "IPC"), longest_arm_ft(1.5, "UPC"), longest_arm_ft(1.5, "")
    (6.0, 3.5, 3.5)

    Errors: KeyError for a trap size the tables do not list.
    """
    if code == "IPC":
        return IPC_FT[trap_in]
    return UPC_FT[trap_in] if code == "UPC" else min(IPC_FT[trap_in], UPC_FT[trap_in])

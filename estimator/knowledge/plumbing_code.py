"""What plumbing codes say in single figures: hangers apart, trap arms, whether bursting and relining are in the code. The place decides."""

import re
from collections.abc import Iterable
from typing import Literal

HANGER_SOURCE = "IPC 2021 table 308.5; UPC table 313.3 (from memory)"
LOOKED = "2026-11-29"  # the hangers; trap arms 2026-11-25

Hung = Literal["plastic", "cast iron", "cast iron in 10 ft lengths"]

HANGER_IPC_FT: dict[Hung, float] = {"plastic": 4.0, "cast iron": 5.0, "cast iron in 10 ft lengths": 10.0}
"""PVC and ABS at any drain size; cast iron at 5 ft, or 10 ft where 10 ft lengths are laid."""
HANGER_UPC_FT: dict[Hung, float] = {"plastic": 4.0, "cast iron": 5.0, "cast iron in 10 ft lengths": 10.0}
"""The same for PVC and ABS; cast iron with hubs. No-hub joints take their own hangers on top."""


def widest_hanger_ft(pipe: Hung, families: Iterable[str]) -> float:
    """Return the widest spacing that every one of the code families allows, level pipe.

    >>> widest_hanger_ft("plastic", ("IPC", "UPC")), widest_hanger_ft("cast iron in 10 ft lengths", ("IPC",))
    (4.0, 10.0)
    """
    return min((HANGER_UPC_FT if code == "UPC" else HANGER_IPC_FT)[pipe] for code in families)


TRAP_ARM_SOURCE = "IPC/IRC and UPC tables of trap-arm lengths (read second-hand)"

TRAP_ARM_IPC_FT: dict[float, float] = {1.25: 5.0, 1.5: 6.0, 2.0: 8.0, 3.0: 12.0}
TRAP_ARM_UPC_FT: dict[float, float] = {1.25: 2.5, 1.5: 3.5, 2.0: 5.0, 3.0: 6.0}


def longest_arm_ft(trap_in: float, code: Literal["IPC", "UPC", ""]) -> float:
    """The longest trap arm; the shorter of both families where nobody asked the place.

    >>> longest_arm_ft(1.5, "IPC"), longest_arm_ft(1.5, "UPC"), longest_arm_ft(1.5, "")
    (6.0, 3.5, 3.5)

    Errors: KeyError for a trap size the tables do not list.
    """
    if code == "IPC":
        return TRAP_ARM_IPC_FT[trap_in]
    return TRAP_ARM_UPC_FT[trap_in] if code == "UPC" else min(TRAP_ARM_IPC_FT[trap_in], TRAP_ARM_UPC_FT[trap_in])


LINING_CODE_SINCE = 2018
"""The first edition with sections on pipe bursting (IPC 716) and relining (IPC 717): from memory, to be checked, as the sizes."""
RELINED_FROM_IN = 4.0
"""IPC 717.2 speaks of pipe of 4 in and larger."""
BURST_UP_TO_IN = 6.0
"""IPC 716.1 speaks of building sewers and drains of 6 in and smaller."""


def allows_lining(code: str, edition: str) -> bool:
    """Return whether the code has sections on bursting and relining.

    >>> allows_lining("IPC", "2021, no local changes"), allows_lining("IPC", "2015"), allows_lining("UPC", "2021")
    (True, False, False)
    """
    year = re.search(r"\b(20\d\d)\b", edition or "")
    return code == "IPC" and year is not None and int(year[1]) >= LINING_CODE_SINCE

"""A place's code and edition in; whether it has sections on bursting and relining, and the sizes they speak of, out.

IPC 716 (pipe bursting) and 717 (relining): edition and sizes from memory, to be checked.
"""

import re

SINCE = 2018
"""The first edition with both sections."""
RELINED_FROM_IN = 4.0
"""IPC 717.2 speaks of pipe of 4 in and larger."""
BURST_UP_TO_IN = 6.0
"""IPC 716.1 speaks of building sewers and drains of 6 in and smaller."""


def in_force(code: str, edition: str) -> bool:
    """Return whether the code has both sections.

    >>> in_force("IPC", "2021, no local changes"), in_force("IPC", "2015"), in_force("UPC", "2021")
    (True, False, False)
    """
    year = re.search(r"\b(20\d\d)\b", edition or "")
    return code == "IPC" and year is not None and int(year[1]) >= SINCE

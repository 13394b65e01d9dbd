"""A tool that cuts or breaks concrete, where and how long in; the protection factor of the mask the rule asks for, out."""

from typing import Literal

Tool = Literal["handheld saw", "walk-behind saw", "rig-mounted core drill", "handheld drill", "breaker"]
SOURCE = "29 CFR 1926.1153(c)(1) table 1 (read)"
LOOKED = "2026-11-25"
LONG_SHIFT_HOURS = 4.0

FACTORS: dict[str, tuple[int, int, int, int]] = {
    "handheld saw": (0, 10, 10, 10),
    "walk-behind saw": (0, 0, 10, 10),
    "rig-mounted core drill": (0, 0, 0, 0),
    "handheld drill": (0, 0, 0, 0),
    "breaker": (0, 10, 10, 10),
}
"""Assigned protection factor, with the table's water or shroud: outdoors to 4 h, outdoors longer, enclosed to 4 h, longer."""


def protection_factor(tool: Tool, *, enclosed: bool, hours: float) -> int:
    """A tunnel, a crawl space and a room are enclosed. 0 means table 1 names none for it, not that dust does no harm.

    >>> protection_factor("breaker", enclosed=True, hours=1), protection_factor("handheld saw", enclosed=False, hours=4)
    (10, 0)
    >>> protection_factor("handheld saw", enclosed=False, hours=4.1)
    10
    """
    return FACTORS[tool][2 * enclosed + (hours > LONG_SHIFT_HOURS)]

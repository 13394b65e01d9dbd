"""A full pipe's bore and fall in; how fast water runs, out (Manning)."""

import math

SOURCE = "Manning's formula, full pipe, n = 0.013"
LOOKED = "2026-11-25"
ROUGHNESS = 0.013
FEET_CONSTANT = 1.486
INCHES_PER_FT = 12.0


def full_velocity_fps(bore_in: float, fall_in_per_ft: float, roughness: float = ROUGHNESS) -> float:
    """1.486 / n x (D / 4)^(2/3) x S^(1/2), ft a second.

    >>> round(full_velocity_fps(4, 0.25), 2), round(full_velocity_fps(3, 0.125), 2)
    (3.15, 1.84)
    """
    radius_ft = bore_in / INCHES_PER_FT / 4
    return float(FEET_CONSTANT / roughness * radius_ft ** (2 / 3) * math.sqrt(fall_in_per_ft / INCHES_PER_FT))

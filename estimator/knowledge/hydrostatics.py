"""Water standing in pipe, or wet fill around it, in; pressure, contents, leak rate and how hard an empty pipe floats, out."""

import math
from collections.abc import Sequence

SOURCE = "62.4 lb/cu ft of water, 7.48 gal/cu ft, 1 psi = 2.31 ft (read)"
LOOKED = "2026-11-25"
WATER_LB_PER_CF = 62.4
SQ_IN_PER_SQ_FT = 144.0
GAL_PER_CF = 7.48
CUBIC_IN_PER_GAL = 231.0
MINUTES_PER_HOUR = 60.0
HOURS_PER_DAY = 24.0
CODE_HEAD_FT = 10.0  # IPC 312 (read)
CODE_MINUTES = 15.0  # IPC 312 (read)


def head_psi(head_ft: float) -> float:
    """
    >>> round(head_psi(10), 2), round(head_psi(3), 2)
    (4.33, 1.3)
    """
    return head_ft * WATER_LB_PER_CF / SQ_IN_PER_SQ_FT


def pipe_gal_per_ft(inside_in: float) -> float:
    """0.0408 x d², gal for each ft of pipe.

    >>> round(pipe_gal_per_ft(4), 4), round(pipe_gal_per_ft(3), 4)
    (0.6528, 0.3672)
    """
    return round(math.pi / 4 * 12 / CUBIC_IN_PER_GAL, 4) * inside_in**2


def gal_per_inch(risers_in: Sequence[float]) -> float:
    """Gallons for each inch the water falls: every open riser falls together.

    >>> round(gal_per_inch([3]), 4), round(gal_per_inch([2, 4]), 4)
    (0.0306, 0.068)
    """
    return sum(pipe_gal_per_ft(d) for d in risers_in) / 12


def leak_gal_per_hour(drop_in: float, minutes: float, risers_in: Sequence[float]) -> float:
    """drop x gallons an inch / time. Errors: ValueError for no time or no riser.

    >>> round(leak_gal_per_hour(1, 15, [3]), 3)
    0.122
    """
    if minutes <= 0 or not risers_in:
        raise ValueError("a leak rate needs minutes and at least one open riser")
    return drop_in * gal_per_inch(risers_in) * MINUTES_PER_HOUR / minutes


def plug_load_lb(inside_in: float, head_ft: float) -> float:
    """What the water pushes on a test plug.

    >>> round(plug_load_lb(4, 10))
    54
    """
    return head_psi(head_ft) * math.pi / 4 * inside_in**2


FLOATS_SOURCE = "weight of the fill displaced less the pipe's own; pipe weights of ASTM D1785 Schedule 40, from memory"
PVC_LB_PER_FT: dict[float, float] = {1.5: 0.51, 2: 0.68, 3: 1.41, 4: 2.01, 6: 3.53, 8: 5.39}
WET_FILL_PCF = 120.0  # cement and soil slurry, common practice


def uplift_lb_per_ft(outside_in: float, pipe_lb_per_ft: float, fill_pcf: float = WET_FILL_PCF) -> float:
    """pi/4 x OD² x weight of the fill - weight of the pipe, lb a ft.

    >>> round(uplift_lb_per_ft(4.5, PVC_LB_PER_FT[4]))
    11
    """
    return math.pi / 4 * (outside_in / 12) ** 2 * fill_pcf - pipe_lb_per_ft

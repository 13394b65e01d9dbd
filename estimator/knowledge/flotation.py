"""An empty pipe in wet fill in; how hard it pushes up, out. Hangers hold down-load only."""

import math

SOURCE = "weight of the fill displaced less the pipe's own; pipe weights of ASTM D1785 Schedule 40, from memory"
LOOKED = "2026-11-25"
PVC_LB_PER_FT: dict[float, float] = {1.5: 0.51, 2: 0.68, 3: 1.41, 4: 2.01, 6: 3.53, 8: 5.39}
WET_FILL_PCF = 120.0  # cement and soil slurry, common practice
INCHES_PER_FT = 12.0


def uplift_lb_per_ft(outside_in: float, pipe_lb_per_ft: float, fill_pcf: float = WET_FILL_PCF) -> float:
    """pi/4 x OD² x weight of the fill - weight of the pipe, lb a ft.

    >>> round(uplift_lb_per_ft(4.5, PVC_LB_PER_FT[4]))
    11
    """
    return math.pi / 4 * (outside_in / INCHES_PER_FT) ** 2 * fill_pcf - pipe_lb_per_ft

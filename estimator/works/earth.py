"""The shape of a hole in; its volume out, cubic feet, exactly.

A hole whose depth runs in a straight line between two ends and whose sides slope evenly has a section that is a square
function of the way along, so the prismoidal formula gives its volume without error. The end-area formula gives more.
"""

from collections.abc import Sequence
from itertools import pairwise

from estimator.model.frozen import Frozen

PRISMOIDAL = "prismoidal formula: length x (first area + 4 x middle area + last area) / 6"


def section_sf(bottom_width_ft: float, depth_ft: float, slope_h_to_v: float = 0.0) -> float:
    """Area of a trench across: depth x (bottom width + slope x depth), sq ft.

    >>> section_sf(2, 6, 1.0), section_sf(2, 6)
    (48.0, 12.0)
    """
    return depth_ft * (bottom_width_ft + slope_h_to_v * depth_ft)


def top_width_ft(bottom_width_ft: float, depth_ft: float, slope_h_to_v: float = 0.0) -> float:
    """
    >>> top_width_ft(2, 6, 1.0)
    14.0
    """
    return bottom_width_ft + 2 * slope_h_to_v * depth_ft


def prismoid_cf(length_ft: float, first_sf: float, middle_sf: float, last_sf: float) -> float:
    """length x (A1 + 4 Am + A2) / 6, cubic ft.

    >>> round(prismoid_cf(100, 1504, 1860, 2240) / 27, 1)
    6903.7
    """
    return length_ft * (first_sf + 4 * middle_sf + last_sf) / 6


def end_area_cf(length_ft: float, first_sf: float, last_sf: float) -> float:
    """length x (A1 + A2) / 2, cubic ft: a check only, never less than the exact volume of an even trench.

    >>> round(end_area_cf(100, 1504, 2240) / 27, 1)
    6933.3
    """
    return length_ft * (first_sf + last_sf) / 2


class Depth(Frozen):
    """How deep at a distance along the hole, ft."""

    at_ft: float
    depth_ft: float


def trench_cf(depths: Sequence[Depth], bottom_width_ft: float, slope_h_to_v: float = 0.0) -> float:
    """A trench with straight-line depth between the given places, sides sloped, ends upright, cubic ft; exact.

    >>> round(trench_cf([Depth(0, 4), Depth(100, 8)], 2.0, 1.0) / 27, 2)
    182.72
    >>> round(trench_cf([Depth(0, 4), Depth(100, 8)], 2.0) / 27, 2)
    44.44
    """
    whole = 0.0
    for a, b in pairwise(depths):
        middle = (a.depth_ft + b.depth_ft) / 2
        first, mid, last = (section_sf(bottom_width_ft, d, slope_h_to_v) for d in (a.depth_ft, middle, b.depth_ft))
        whole += prismoid_cf(b.at_ft - a.at_ft, first, mid, last)
    return whole


def trench_end_area_cf(depths: Sequence[Depth], bottom_width_ft: float, slope_h_to_v: float = 0.0) -> float:
    """The same trench by end areas: the check.

    >>> round(trench_end_area_cf([Depth(0, 4), Depth(100, 8)], 2.0, 1.0) / 27, 2)
    192.59
    """
    return sum(
        end_area_cf(
            b.at_ft - a.at_ft,
            section_sf(bottom_width_ft, a.depth_ft, slope_h_to_v),
            section_sf(bottom_width_ft, b.depth_ft, slope_h_to_v),
        )
        for a, b in pairwise(depths)
    )


def sloped_end_cf(bottom_width_ft: float, depth_ft: float, slope_h_to_v: float) -> float:
    """What one sloped end adds beyond the upright end: half the bottom width x slope x depth squared, and two corners.

    s·D²·Wb/2 + 2/3·s²·D³, cubic ft.

    >>> round(sloped_end_cf(2.0, 6.0, 1.0), 1)
    180.0
    """
    return slope_h_to_v * depth_ft**2 * bottom_width_ft / 2 + 2 / 3 * slope_h_to_v**2 * depth_ft**3


def sloped_pit_cf(length_ft: float, width_ft: float, depth_ft: float, slope_h_to_v: float) -> float:
    """A level pit sloped on all four sides: D·L·W + s·D²(L+W) + 4/3·s²·D³, cubic ft; exact.

    >>> round(sloped_pit_cf(8, 4, 6, 1.0), 1), sloped_pit_cf(8, 4, 6, 0.0)
    (912.0, 192.0)
    """
    d, s = depth_ft, slope_h_to_v
    return d * length_ft * width_ft + s * d**2 * (length_ft + width_ft) + 4 / 3 * s**2 * d**3


def sloped_all_round_cf(depths: Sequence[Depth], bottom_width_ft: float, slope_h_to_v: float) -> float:
    """A trench sloped on its sides and both ends, cubic ft; exact, for each end slopes up from a level edge across the bottom.

    >>> sloped_all_round_cf([Depth(0, 6), Depth(8, 6)], 4.0, 1.0) == sloped_pit_cf(8, 4, 6, 1.0)
    True
    """
    ends = (depths[0].depth_ft, depths[-1].depth_ft)
    return trench_cf(depths, bottom_width_ft, slope_h_to_v) + sum(
        sloped_end_cf(bottom_width_ft, d, slope_h_to_v) for d in ends
    )

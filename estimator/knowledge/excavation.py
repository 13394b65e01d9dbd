"""A depth and a soil type in; what the federal excavation rules ask for out. A published floor: local rules and the competent person stand over it."""

from typing import Literal

SoilType = Literal["A", "B", "C", "rock"]
LOOKED = "2026-11-25"

SLOPE_H_TO_V: dict[str, float] = {"rock": 0.0, "A": 0.75, "B": 1.0, "C": 1.5}
"""Steepest sides allowed to 20 ft, horizontal to one vertical: 29 CFR 1926 Subpart P App. B Table B-1 (read second-hand)."""
SLOPE_SOURCE = "29 CFR 1926 Subpart P App. B Table B-1"

LADDER_FROM_FT = 4.0  # 1926.651(c)(2) (read)
LADDER_TRAVEL_FT = 25.0  # sideways, the most: 1926.651(c)(2) (read)
SYSTEM_FROM_FT = 5.0  # 1926.652(a)(1) (read)
ENGINEER_OVER_FT = 20.0  # Table B-1 note 3; 1926.652(b), (c) (read second-hand)
AIR_TEST_OVER_FT = 4.0  # and only where bad air can be expected: 1926.651(g) (read)
GUARDRAIL_FROM_FT = 6.0  # where the edge is not readily seen: 1926.501(b)(7) (read second-hand)
SPOIL_BACK_FT = 2.0  # 1926.651(j)(2) (read second-hand)
PIT_OFF_LINES_FT = 3.0  # a tunnel's pit from gas and electric lines: common practice
FOOTING_SOURCE = "29 CFR 1926.651(i); plumbing codes: 45 degree line from the footing's lower edge"


def slope(soil_type: SoilType) -> float:
    """Steepest side, horizontal to one vertical.

    >>> slope("B")
    1.0
    """
    return SLOPE_H_TO_V[soil_type]


def needs_ladder(depth_ft: float) -> bool:
    """A ladder or ramp from 4 ft on.

    >>> needs_ladder(3.99), needs_ladder(4.0)
    (False, True)
    """
    return depth_ft >= LADDER_FROM_FT


def needs_system(depth_ft: float, soil_type: SoilType, caving_signs: bool | None) -> bool:
    """A slope, bench, shore or box: from 5 ft on, or at any depth with a sign of caving; not in stable rock.

    >>> needs_system(4.99, "B", False), needs_system(5.0, "B", False), needs_system(3.0, "B", True)
    (False, True, True)
    >>> needs_system(9.0, "rock", False)
    False
    """
    if soil_type == "rock":
        return bool(caving_signs)
    return depth_ft >= SYSTEM_FROM_FT or bool(caving_signs)


def needs_engineer(depth_ft: float) -> bool:
    """Deeper than 20 ft a registered engineer designs it.

    >>> needs_engineer(20.0), needs_engineer(20.01)
    (False, True)
    """
    return depth_ft > ENGINEER_OVER_FT


def air_test(depth_ft: float, bad_air_expected: bool) -> bool:
    """Deeper than 4 ft, and only where bad air can be expected.

    >>> air_test(4.0, True), air_test(4.01, True), air_test(9.0, False)
    (False, True, False)
    """
    return depth_ft > AIR_TEST_OVER_FT and bad_air_expected


def needs_guardrail(depth_ft: float) -> bool:
    """An edge of 6 ft or deeper that is not readily seen.

    >>> needs_guardrail(5.99), needs_guardrail(6.0)
    (False, True)
    """
    return depth_ft >= GUARDRAIL_FROM_FT


def ladders(length_ft: float) -> int:
    """Ladders so that nobody walks more than 25 ft sideways to one.

    >>> ladders(50), ladders(51), ladders(120), ladders(3)
    (1, 2, 3, 1)
    """
    return max(1, -int(-length_ft // (2 * LADDER_TRAVEL_FT)))


def type_over_a_pipe(listed: SoilType, *, classified: bool, leak: bool, water: bool, caving: bool = False) -> SoilType:
    """Soil type where a pipe already lies: never A nor stable rock; C at a leak, in water or when nobody classified it.

    Whatever the ground beside it, what lies over a pipe is the backfill of its own trench.

    Subpart P App. A: type A must not be previously disturbed or fissured; submerged or seeping soil is C.

    >>> type_over_a_pipe("A", classified=True, leak=False, water=False)
    'B'
    >>> type_over_a_pipe("A", classified=True, leak=True, water=False)
    'C'
    >>> type_over_a_pipe("rock", classified=True, leak=False, water=False)
    'B'
    >>> type_over_a_pipe("rock", classified=True, leak=True, water=False)
    'C'
    """
    if leak or water or not classified or listed == "C" or (listed == "rock" and caving):
        return "C"
    return "B"


def may_bench(soil_type: SoilType, cohesive: bool) -> bool:
    """No benches in type C; in type B only where the soil holds together (Subpart P App. B figures, from memory).

    >>> may_bench("B", True), may_bench("B", False), may_bench("C", True)
    (True, False, False)
    """
    return soil_type == "A" or (soil_type == "B" and cohesive)


def clear_of_footing(offset_ft: float, below_footing_ft: float) -> bool:
    """The bottom edge of the dig lies outside the 45 degree line from the footing's lower edge.

    >>> clear_of_footing(2.0, 2.0), clear_of_footing(1.99, 2.0), clear_of_footing(0.1, -0.5)
    (True, False, True)
    """
    return below_footing_ft <= 0 or offset_ft >= below_footing_ft

"""What a place's row says stands over the code family: trap arms and the backwater valve, at their edges."""

import pytest

from estimator.knowledge.plumbing_code import TRAP_ARM_IPC_FT, TRAP_ARM_UPC_FT
from estimator.model.judgement import Effect
from estimator.scopes.rules import BY_ID
from estimator.scopes.rules.facts import StretchFacts
from estimator.scopes.rules.limits import Limits
from estimator.scopes.rules.verdicts import each
from tests.made_up.stretch import limits, place, reroute, stretch


def asked(rule: str, facts: StretchFacts, limits: Limits) -> list[str]:
    applies = BY_ID[rule].applies
    assert applies is not None
    return [str(ruling.effect) for ruling in each(applies(facts, limits))]


def sink_at(feet: float) -> StretchFacts:
    """A kitchen sink has a 1 1/2 in trap (IPC table 709.1)."""
    return stretch(method="reroute", reroutes=(reroute(wall_ft=feet, serves=(("kitchen sink", 1),)),))


@pytest.mark.parametrize(
    ("row", "longest_ft"),
    [
        ({"trap_arms": ("1.5 4",)}, 4.0),  # the place's own word
        ({"trap_arms": ("1.25 5", "1.5 6", "2 8", "3 12")}, 6.0),  # IPC, read second-hand
        ({"trap_arms": ("2 9",)}, 6.0),  # the row is silent on this size: the code family's
        ({"trap_arms": (), "code": "UPC"}, 3.5),  # UPC, read second-hand
        ({"trap_arms": (), "code": ""}, 3.5),  # nobody asked: the shorter of both
        ({"trap_arms": ("1.5 4",), "code": "UPC"}, 4.0),
    ],
)
def test_a_trap_arm_may_be_as_long_as_the_place_says(row: dict[str, object], longest_ft: float) -> None:
    there = place(**row)
    assert there.longest_trap_arm_ft(1.5) == longest_ft
    assert asked("trap-arms", sink_at(longest_ft), there) == []
    assert asked("trap-arms", sink_at(longest_ft + 0.1), there) == [Effect.REQUIRES_FIRST]


def test_the_demo_place_says_what_its_code_family_says() -> None:
    assert {size: limits().longest_trap_arm_ft(size) for size in TRAP_ARM_IPC_FT} == TRAP_ARM_IPC_FT
    unasked = limits(place="unknown")
    assert {size: unasked.longest_trap_arm_ft(size) for size in TRAP_ARM_IPC_FT} == {
        s: min(TRAP_ARM_IPC_FT[s], TRAP_ARM_UPC_FT[s]) for s in TRAP_ARM_IPC_FT
    }


@pytest.mark.parametrize(("answer", "effects"), [(True, [Effect.ADDS_WORK]), (False, []), (None, [Effect.CAUTION])])
def test_a_backwater_valve_is_added_where_the_place_asks_and_asked_about_where_nobody_did(
    answer: bool | None, effects: list[Effect]
) -> None:
    assert asked("backwater-valve", stretch(method="trench"), place(backwater_valve=answer)) == effects


@pytest.mark.parametrize("quiet", [{"is_branch": True}, {"ends": "septic tank"}, {"house": {"sewer": "septic"}}])
def test_no_sewage_of_the_city_comes_back_into_a_side_drain_or_from_a_tank(quiet: dict[str, object]) -> None:
    assert asked("backwater-valve", stretch(method="trench", **quiet), place(backwater_valve=True)) == []


def test_a_single_dig_in_the_yard_asks_for_no_valve() -> None:
    for method in ("yard spot", "slab spot", "reline", "clean"):
        assert not BY_ID["backwater-valve"].concerns.holds(stretch(method=method))

"""The cheapest set of repairs, checked against a general solver (SciPy's HiGHS) and against plain enumeration."""

from dataclasses import replace
from random import Random

import puzzles
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator.model.stretch import Stretch
from estimator.model.work import Candidate
from estimator.scopes.search import cheapest, in_order

POINT = Stretch(0, 0)
small = st.integers(0, 10_000).map(lambda seed: puzzles.anything(Random(seed), seed % 6, seed // 6 % 10))


def one(id: str, answers: str, cost: int, shared: str = "", stretch: Stretch = POINT, line: str = "main") -> Candidate:
    return Candidate(
        id=id, line=line, stretch=stretch, answers=frozenset(answers), cost=cost, shared=frozenset(shared.split())
    )


def ids(answer) -> list[str]:
    return [c.id for c in answer.chosen]


@pytest.mark.parametrize("seed", range(300))
def test_the_cheapest_sum_is_the_one_a_general_solver_finds(seed: int) -> None:
    random = Random(seed)
    puzzle = puzzles.anything(random, random.randrange(1, 12), random.randrange(1, 25))
    found = cheapest(*puzzle).answer
    assert (found.cost if found else None) == puzzles.by_general_solver(puzzle)


@pytest.mark.parametrize("seed", range(60))
def test_the_cheapest_sum_of_a_house_is_the_one_a_general_solver_finds(seed: int) -> None:
    random = Random(seed)
    puzzle = puzzles.house(random, random.randrange(1, 4), random.randrange(1, 6), drop=0.5)
    found = cheapest(*puzzle).answer
    assert (found.cost if found else None) == puzzles.by_general_solver(puzzle)


@pytest.mark.parametrize("seed", range(300))
def test_sets_come_in_the_order_plain_enumeration_gives(seed: int) -> None:
    random = Random(1_000 + seed)
    puzzle = puzzles.anything(random, random.randrange(0, 6), random.randrange(0, 10))
    got = [(a.cost, len(a.chosen), tuple(ids(a))) for a in in_order(*puzzle)]
    assert got == sorted(puzzles.every_tight_set(puzzle))


@pytest.mark.parametrize("seed", range(200))
def test_lines_that_only_shared_charges_join_come_in_order_too(seed: int) -> None:
    random = Random(2_000 + seed)
    puzzle = puzzles.apart(random, random.randrange(2, 4), random.randrange(3, 10))
    got = [(a.cost, len(a.chosen), tuple(ids(a))) for a in in_order(*puzzle)]
    assert got == sorted(puzzles.every_tight_set(puzzle))


def test_the_puzzles_hold_what_they_are_meant_to_hold() -> None:
    seen = set()
    for seed in range(300):
        random = Random(seed)
        puzzle = puzzles.anything(random, random.randrange(1, 12), random.randrange(1, 25))
        found = cheapest(*puzzle)
        seen |= {"a need nobody answers"} if found.unreachable else set()
        seen |= {"nothing fits together"} if found.answer is None else set()
        first_two = [a.cost for a, _ in zip(in_order(*puzzle), range(2), strict=False)]
        seen |= {"a tie"} if len(first_two) == 2 and first_two[0] == first_two[1] else set()
    assert seen == {"a need nobody answers", "nothing fits together", "a tie"}


def test_a_shared_charge_is_paid_once() -> None:
    spots = [one("a", "1", 10, "crew"), one("b", "2", 10, "crew", line="other"), one("c", "12", 71, line="third")]
    assert (found := cheapest("12", spots, {"crew": 50}).answer) and (ids(found), found.cost) == (["a", "b"], 70)


def test_a_charge_just_too_dear_to_share_turns_the_choice() -> None:
    spots = [one("a", "1", 10, "crew"), one("b", "2", 10, "crew", line="other"), one("c", "12", 71, line="third")]
    assert (found := cheapest("12", spots, {"crew": 52}).answer) and (ids(found), found.cost) == (["c"], 71)


def test_equal_sums_are_settled_by_fewest_repairs_then_by_ids() -> None:
    spots = [one("a", "1", 5), one("b", "2", 5, line="other"), one("z", "12", 10), one("y", "12", 10)]
    assert [ids(a) for a in in_order("12", spots)] == [["y"], ["z"], ["a", "b"]]


def test_two_repairs_may_touch_but_not_overlap() -> None:
    left = one("left", "1", 1, stretch=Stretch(0, 5))
    assert cheapest("12", [left, one("right", "2", 1, stretch=Stretch(5, 9))]).answer
    assert cheapest("12", [left, one("right", "2", 1, stretch=Stretch(4.9, 9))]).answer is None
    assert cheapest("12", [left, one("right", "2", 1, stretch=Stretch(4.9, 9), line="other")]).answer


def test_needs_nobody_answers_are_named_and_the_rest_is_answered() -> None:
    found = cheapest({"1", "2"}, [one("a", "1", 5)])
    assert found.unreachable == ("2",)
    assert found.answer and ids(found.answer) == ["a"]


def test_no_needs_take_no_repairs() -> None:
    found = cheapest((), [one("a", "1", 5)]).answer
    assert found is not None and found.chosen == () and found.cost == 0


def test_what_cannot_be_counted_is_refused() -> None:
    with pytest.raises(ValueError, match="below zero"):
        cheapest("1", [one("a", "1", -1)])
    with pytest.raises(ValueError, match="same id"):
        cheapest("1", [one("a", "1", 1), one("a", "1", 2)])
    with pytest.raises(KeyError, match="crew"):
        cheapest("1", [one("a", "1", 1, "crew")])


@settings(max_examples=150, deadline=None)
@given(small, st.integers(0, 30), st.integers(0, 9))
def test_a_dearer_candidate_never_makes_it_cheaper(puzzle, more: int, which: int) -> None:
    needs, candidates, shared = puzzle
    before = cheapest(needs, candidates, shared).answer
    dearer = [replace(c, cost=c.cost + more * (i == which)) for i, c in enumerate(candidates)]
    after = cheapest(needs, dearer, shared).answer
    assert (before is None) == (after is None)
    assert before is None or after is None or before.cost <= after.cost <= before.cost + more


@settings(max_examples=150, deadline=None)
@given(small, st.integers(0, 9))
def test_one_more_candidate_for_the_same_needs_never_makes_it_dearer(puzzle, which: int) -> None:
    needs, candidates, shared = puzzle
    fewer = [c for i, c in enumerate(candidates) if i != which]
    before, after = cheapest(needs, fewer, shared), cheapest(needs, candidates, shared)
    if before.answer and before.unreachable == after.unreachable:
        assert after.answer and after.answer.cost <= before.answer.cost


@settings(max_examples=150, deadline=None)
@given(small)
def test_one_more_need_never_makes_it_cheaper(puzzle) -> None:
    needs, candidates, shared = puzzle
    fewer, all_of_them = cheapest(needs[:-1], candidates, shared).answer, cheapest(needs, candidates, shared).answer
    if all_of_them:
        assert fewer and fewer.cost <= all_of_them.cost


@settings(max_examples=100, deadline=None)
@given(small, st.randoms())
def test_the_order_in_which_candidates_come_changes_nothing(puzzle, random) -> None:
    needs, candidates, shared = puzzle
    mixed = random.sample(candidates, len(candidates))
    assert list(in_order(needs, candidates, shared)) == list(in_order(needs, mixed, shared))

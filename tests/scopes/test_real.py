"""Sets priced as they really are: the best one found and proved, checked by pricing every set there is."""

from itertools import count
from random import Random

import puzzles
import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator.scopes.real import best_real
from estimator.scopes.search import Answer, in_order

HALF_DAYS, SLACK = 25, 6


def staircase(answer: Answer) -> int:
    """A toy price: up to the next 25, what is 6 or less over a step not counted; so never below the sum less 6."""
    return -(-(answer.cost - SLACK) // HALF_DAYS) * HALF_DAYS if answer.cost > SLACK else 0


@pytest.mark.parametrize("seed", range(200))
def test_the_best_real_price_is_the_best_of_all_sets(seed: int) -> None:
    random = Random(seed)
    puzzle = puzzles.anything(random, random.randrange(1, 6), random.randrange(1, 10))
    prices = [staircase(answer) for answer in in_order(*puzzle)]
    found = best_real(in_order(*puzzle), staircase, SLACK)
    assert (found.price if found else None) == min(prices, default=None)
    assert found is None or found.proved


def test_the_best_real_price_need_not_be_the_cheapest_sum() -> None:
    sums = [Answer((), 100), Answer((), 104), Answer((), 200)]
    prices = {100: 150, 104: 125, 200: 200}
    found = best_real(sums, lambda answer: prices[answer.cost])
    assert found is not None
    assert (found.answer.cost, found.price, found.proved) == (104, 125, True)


def test_a_set_is_priced_while_its_sum_less_slack_lies_below_the_best_price() -> None:
    def price(answer: Answer) -> int:
        return 110

    assert best_real([Answer((), 100), Answer((), 115)], price, 6).priced == 2  # 109 < 110
    assert best_real([Answer((), 100), Answer((), 116)], price, 6).priced == 1  # 110 is no less than 110


def test_after_two_hundred_prices_the_bound_is_told() -> None:
    endless = (Answer((), 100 + i) for i in count())
    found = best_real(endless, lambda answer: 1_000)
    assert found is not None
    assert found.priced == 200
    assert found.bound == 1_000 - 300  # the next sum is 300
    assert not found.proved


def test_of_two_sets_of_one_price_the_earlier_one_stays() -> None:
    found = best_real([Answer((), 100), Answer((), 101)], lambda answer: 150)
    assert found is not None
    assert found.answer.cost == 100


def test_a_set_that_cannot_win_is_looked_at_and_not_priced() -> None:
    sums = [Answer((), 100), Answer((), 101), Answer((), 102)]
    prices = {100: 150, 101: 160, 102: 140}
    asked = []

    def price(answer: Answer) -> int:
        asked.append(answer.cost)
        return prices[answer.cost]

    found = best_real(sums, price, leasts=[lambda answer: prices[answer.cost] - 5])
    assert found is not None
    assert (found.price, found.priced, asked) == (140, 2, [100, 102])


def test_after_two_thousand_looks_the_bound_is_told() -> None:
    endless = (Answer((), 100 + i) for i in count())
    found = best_real(endless, lambda answer: 9_000, leasts=[lambda answer: 9_000])
    assert found is not None
    assert (found.priced, found.bound) == (1, 9_000 - 100 - 2_000)


def test_no_set_gives_no_price() -> None:
    assert best_real([], staircase) is None


@given(st.lists(st.tuples(st.integers(0, 50), st.integers(0, 30)), min_size=1, max_size=12), st.integers(1, 5))
def test_no_set_beats_the_best_by_more_than_the_bound(sets, most: int) -> None:
    ordered = sorted(sets)
    answers = [Answer((), total) for total, _ in ordered]
    price = {id(answer): total + over for answer, (total, over) in zip(answers, ordered, strict=True)}
    found = best_real(answers, lambda a: price[id(a)], most=most)
    assert found is not None
    assert min(price.values()) >= found.price - found.bound
    assert found.priced <= most


def test_of_two_sets_of_one_price_the_one_that_leaves_less_is_taken() -> None:
    left = {100: (0, 1), 101: (0, 0), 102: (1, 0)}
    found = best_real([Answer((), cost) for cost in left], lambda answer: 150, left_of=lambda a: left[a.cost])
    assert found is not None
    assert (found.answer.cost, found.price, found.proved) == (101, 150, True)


def test_what_is_left_never_outweighs_a_price() -> None:
    found = best_real(
        [Answer((), 100), Answer((), 125)], lambda a: a.cost, left_of=lambda a: (0,) if a.cost > 100 else (9,)
    )
    assert found is not None
    assert found.answer.cost == 100


@pytest.mark.parametrize(("cost", "taken"), [(150, 150), (151, 100)])
def test_a_set_that_could_just_reach_the_best_price_is_still_priced_where_something_is_left(
    cost: int, taken: int
) -> None:
    found = best_real([Answer((), 100), Answer((), cost)], lambda a: 150, left_of=lambda a: (int(a.cost == 100),))
    assert found is not None
    assert (found.answer.cost, found.bound) == (taken, 0)

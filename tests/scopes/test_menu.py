"""The menu, checked against plain enumeration of every set on small houses."""

from itertools import combinations, islice
from random import Random

import puzzles
import pytest

from estimator.model.stretch import Stretch
from estimator.model.work import Candidate
from estimator.scopes.menu import MOST_METHOD_SETS, Dish, best_at, cheapest_of_methods, dishes, menu
from estimator.scopes.options import shown, spare
from estimator.scopes.search import Answer, cheapest, in_order


def house(seed: int):
    """Up to ten candidates of three methods; each with days, floor and old pipe of its own."""
    random = Random(seed)
    needs, candidates, shared = puzzles.house(random, random.randrange(1, 3), random.randrange(1, 3), 3, 0.3)
    some = candidates[:10]
    parts = {c.id: (random.randrange(1, 5) / 2, random.choice((0.0, 20.0, 45.0)), -c.stretch.length_ft) for c in some}
    return [n for n in needs if any(n in c.answers for c in some)], some, shared, parts


def measures_of(parts):
    return lambda answer: tuple(sum(parts[c.id][i] for c in answer.chosen) for i in range(3))


def price_of(answer: Answer) -> int:
    return -(-answer.cost // 2_500) * 2_500


@pytest.mark.parametrize("seed", range(80))
def test_the_first_dish_is_the_cheapest_real_price_there_is(seed: int) -> None:
    needs, candidates, shared, parts = house(seed)
    everything = list(in_order(needs, candidates, shared))
    found = menu(dishes(needs, candidates, shared, price_of, measures_of(parts), parts_of(parts)))
    assert [d.price for d in found[:1]] == [min(price_of(a) for a in everything)][: len(found)]
    assert bool(found) == bool(everything)


def parts_of(parts):
    return lambda candidate: parts[candidate.id]


@pytest.mark.parametrize("seed", range(80))
def test_the_best_at_each_measure_is_the_best_of_all_sets(seed: int) -> None:
    needs, candidates, shared, parts = house(seed)
    everything = list(in_order(needs, candidates, shared))
    measure = measures_of(parts)
    for which, answer in enumerate(best_at(needs, candidates, shared, parts_of(parts))):
        best = min(everything, key=lambda a: (round(100 * measure(a)[which]), a.cost))
        assert measure(answer)[which] == pytest.approx(measure(best)[which])
        assert answer.cost == best.cost


@pytest.mark.parametrize("seed", range(60))
def test_every_set_of_methods_has_its_cheapest_answer_on_the_way_to_the_menu(seed: int) -> None:
    needs, candidates, shared, _ = house(seed)
    found = {tuple(c.id for c in a.chosen) for a in cheapest_of_methods(needs, candidates, shared)}
    methods = sorted({c.method for c in candidates})
    wanted = set()
    for size in range(len(methods) + 1):
        for allowed in combinations(methods, size):
            answer = cheapest(needs, [c for c in candidates if c.method in allowed], shared)
            if answer.answer and not answer.unreachable:
                wanted.add(tuple(c.id for c in answer.answer.chosen))
    assert found == wanted


@pytest.mark.parametrize("seed", range(40))
def test_no_dish_beats_another(seed: int) -> None:
    needs, candidates, shared, parts = house(seed)
    found = menu(dishes(needs, candidates, shared, price_of, measures_of(parts), parts_of(parts)))
    assert not any(a.beats(b) for a in found for b in found)
    assert [d.price for d in found] == sorted(d.price for d in found)


def test_sets_of_methods_are_counted_and_not_timed() -> None:
    needs, candidates, shared = puzzles.house(Random(3), 3, 4)
    assert len(list(islice(cheapest_of_methods(needs, candidates, shared), 300))) <= MOST_METHOD_SETS


def one(id: str, method: str, cost: int, answers: str = "1") -> Candidate:
    return Candidate(id=id, line="main", stretch=Stretch(0, 0), answers=frozenset(answers), cost=cost, method=method)


def dish(*chosen: Candidate, price: int = 0) -> Dish:
    total = price or sum(c.cost for c in chosen)
    return Dish(answer=Answer(chosen, total), price=total, days_without_drains=0, floor_sf=0, old_pipe_left_ft=0)


def test_options_are_the_cheapest_and_other_ways_on_the_dearest_need() -> None:
    on_it = [
        dish(one("a", "yard spot", 10), one("b", "clean", 1, "2")),
        dish(one("c", "sectional liner", 12)),
        dish(one("d", "reline", 20)),
        dish(one("e", "trench", 30)),
        dish(one("f", "burst", 31)),
        dish(one("g", "reroute", 40)),
    ]
    assert [d.answer.chosen[0].method for d in shown(on_it)] == ["yard spot", "reline", "trench", "reroute"]


def test_with_few_other_ways_other_methods_of_the_same_kind_fill_up() -> None:
    on_it = [dish(one("t", "tunnel", 30)), dish(one("b", "break-through", 20))]
    on_it.sort(key=lambda d: d.price)
    assert [d.answer.chosen[0].method for d in shown(on_it)] == ["break-through", "tunnel"]


def test_an_empty_menu_shows_nothing() -> None:
    assert shown([]) == ()


def test_the_menu_is_filled_up_with_the_cheapest_beaten_set_that_goes_another_way() -> None:
    burst, trench = dish(one("b", "burst", 90)), dish(one("t", "trench", 100))
    dear, lined = dish(one("t2", "trench", 120)), dish(one("s", "reline", 300))
    found = (burst, dear, trench, lined)
    assert menu(found) == (burst,)
    ways = [d.answer.chosen[0].id for d in spare(shown(menu(found)), found)]
    assert ways == ["s", "t", "t2", "s"]  # another kind first, then another method of the same kind


def test_beside_one_small_repair_nothing_big_fills_up() -> None:
    found = (dish(one("a", "yard spot", 90)), dish(one("b", "burst", 100)), dish(one("c", "sectional liner", 110)))
    assert [d.answer.chosen[0].id for d in spare(found[:1], found)] == ["c"]


def test_nothing_fills_up_where_every_set_goes_the_same_way() -> None:
    found = (dish(one("a", "trench", 90)), dish(one("b", "trench", 100)))
    assert list(spare(found[:1], found)) == []
    assert list(spare((), found)) == []

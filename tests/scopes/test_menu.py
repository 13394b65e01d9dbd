"""The menu, checked against plain enumeration of every set on small houses."""

from dataclasses import replace
from itertools import combinations, islice
from random import Random

import puzzles
import pytest

from estimator.model.stretch import Stretch
from estimator.model.work import Candidate
from estimator.scopes.kinds import way
from estimator.scopes.menu import MOST_METHOD_SETS, MenuEntry, best_at, cheapest_of_methods, menu, menu_entries
from estimator.scopes.options import on, shown, small
from estimator.scopes.search import Answer, cheapest, in_order
from estimator.works.methods import names


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
    found = menu(menu_entries(needs, candidates, shared, price_of, measures_of(parts), parts_of(parts)))
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
    found = menu(menu_entries(needs, candidates, shared, price_of, measures_of(parts), parts_of(parts)))
    assert not any(a.beats(b) for a in found for b in found)
    assert [d.price for d in found] == sorted(d.price for d in found)


def test_sets_of_methods_are_counted_and_not_timed() -> None:
    needs, candidates, shared = puzzles.house(Random(3), 3, 4)
    assert len(list(islice(cheapest_of_methods(needs, candidates, shared), 300))) <= MOST_METHOD_SETS


def one(id: str, method: str, cost: int, answers: str = "1") -> Candidate:
    return Candidate(id=id, line="main", stretch=Stretch(0, 0), answers=frozenset(answers), cost=cost, method=method)


def entry(*chosen: Candidate, price: int = 0) -> MenuEntry:
    total = price or sum(c.cost for c in chosen)
    return MenuEntry(answer=Answer(chosen, total), price=total, measures_of=lambda _: (0, 0, 0))


def test_options_are_the_cheapest_and_other_ways_on_the_dearest_need() -> None:
    on_it = [
        entry(one("a", "yard spot", 10), one("b", "clean", 1, "2")),
        entry(one("c", "sectional liner", 12)),
        entry(one("d", "reline", 20)),
        entry(one("e", "trench", 30)),
        entry(one("f", "burst", 31)),
        entry(one("g", "reroute", 40)),
    ]
    assert [d.answer.chosen[0].method for d in shown(on_it)] == ["yard spot", "reline", "trench", "reroute"]


def test_with_few_other_ways_other_methods_of_the_same_kind_fill_up() -> None:
    on_it = [entry(one("t", "tunnel", 30)), entry(one("b", "break-through", 20))]
    on_it.sort(key=lambda d: d.price)
    assert [d.answer.chosen[0].method for d in shown(on_it)] == ["break-through", "tunnel"]


def test_an_empty_menu_shows_nothing() -> None:
    assert shown([]) == ()


def test_a_lining_never_drops_a_replacement_and_two_of_a_kind_are_shown() -> None:
    """Dearer in money, alike in days, floor and old pipe: people still tell them apart [common practice: a lining is no new pipe]."""
    ways = ("reline", "burst", "trench", "tunnel")
    found = tuple(entry(one(way, way, 90 + 10 * i)) for i, way in enumerate(ways))
    assert found[0].no_worse(found[1])
    assert menu(found) == found
    assert shown(menu(found)) == found[:3]


def test_of_sets_that_go_the_same_way_the_beaten_one_is_dropped() -> None:
    found = (entry(one("a", "trench", 90)), entry(one("b", "trench", 100)), entry(one("c", "trench", 90)))
    assert menu(found) == found[:1]


def test_a_way_on_a_lesser_need_comes_before_a_second_method_on_the_dearest() -> None:
    lined, yard = one("a", "sectional liner", 10), one("y", "yard spot", 20, "2")
    found = (
        entry(lined, yard),
        entry(one("s", "slab spot", 12), yard),
        entry(lined, one("t", "trench", 30, "2")),
        entry(lined, one("b", "burst", 31, "2")),
        entry(one("f", "break-through", 40), yard),
    )
    assert shown(found) == found[:3] + found[4:]


def measured(floor: float, *chosen: Candidate, price: int = 0, old: float = 0, days: float = 0) -> MenuEntry:
    return replace(entry(*chosen, price=price), measures_of=lambda _: (days, floor, old))


def test_tunnel_and_floor_come_before_variants_on_a_lesser_need() -> None:
    """What the owner of a slab house asks first: a tunnel, or the floor opened [common practice]."""
    lined, burst, trench = (one(way, way, 4, "2") for way in ("sectional liner", "burst", "trench"))
    floor, tunnel = one("f", "break-through", 10), one("t", "tunnel", 14)
    found = (
        measured(48, floor, lined),
        measured(48, floor, one("r", "reline", 5, "2")),
        measured(48, floor, burst, price=16),
        measured(48, floor, trench, price=17),
        measured(0, tunnel, lined),
    )
    assert shown(found) == (*found[:3], found[4])


def test_a_tunnel_comes_before_a_smaller_opening_of_the_floor() -> None:
    ways = ("sectional liner", "reline", "slab spot", "break-through", "tunnel")
    found = tuple(
        measured(floor, one(w, w, 10 + i)) for i, (w, floor) in enumerate(zip(ways, (0, 0, 9, 30, 0), strict=True))
    )
    assert [d.answer.chosen[0].method for d in shown(found)] == ["sectional liner", "reline", "break-through", "tunnel"]


def test_a_third_way_of_one_kind_is_shown_where_it_gives_what_the_others_do_not() -> None:
    slow = measured(0, one("d", "trench", 20), old=9, days=1)
    pulled = measured(0, one("b", "burst", 21), old=9)
    hung, leaves_more = (measured(0, one("c", "crawl replace", 30), old=old) for old in (4, 9))
    assert shown((slow, pulled, hung)) == (slow, pulled, hung)
    assert shown((slow, pulled, leaves_more)) == (slow, pulled)


@pytest.mark.parametrize("seed", range(200))
def test_a_way_on_the_dearest_need_gives_way_only_to_four_others_or_to_one_that_beats_it(seed: int) -> None:
    """Of random menus on two needs: looked through one by one, the way that is missing has its reason."""
    random = Random(seed)
    ways = random.sample(sorted(names()), 5)
    lesser = [one(w, w, random.randrange(1, 4), "2") for w in ("yard spot", "sectional liner", "trench")]
    found = menu(
        [
            measured(random.choice((0, 20, 40)), one(w, w, cost), other, old=random.choice((0, 5, 9)))
            for w in ways
            for cost in (random.randrange(10, 40),)
            for other in random.sample(lesser, 2)
        ]
    )
    options = shown(found)
    used = [on("1", d).method for d in options]
    assert options[0] == found[0]
    assert 1 <= len(options) <= 4
    for missing in set(ways) - set(used):
        first = next(d for d in found if on("1", d).method == missing)
        kept = any(way(on("1", o)) == way(on("1", first)) and o.no_worse(first) for o in options)
        assert kept or len(set(used)) == 4


def test_a_spot_opened_stands_beside_one_lined_from_inside() -> None:
    found = (entry(one("a", "sectional liner", 41)), entry(one("b", "yard spot", 44)), entry(one("c", "reline", 76)))
    assert shown(found) == found


def test_a_piece_that_says_it_is_a_spot_is_one() -> None:
    hung = entry(replace(one("a", "crawl replace", 30), kind="spot"))
    line = entry(one("b", "crawl replace", 60))
    assert small((hung, line)) == (hung,)


def test_where_cleaning_does_nothing_is_dug_for_what_is_slight() -> None:
    clean, lined, dug = (entry(one(way, way, 10)) for way in ("clean", "sectional liner", "yard spot"))
    assert small((clean, lined, dug), slight=True) == (clean, lined)
    assert small((clean, lined, dug)) == (clean, lined, dug)
    assert small((lined, dug), slight=True) == (lined, dug)  # nothing to clean out: a spot dig may be the cheaper one


def test_at_one_price_the_set_that_leaves_less_comes_first() -> None:
    slack, good = (
        replace(entry(one("a", "clean", 10)), left=(0, 0, 1, 0, 0)),
        replace(entry(one("b", "clean", 10, "12")), left=(0,) * 5),
    )
    assert menu((slack, good))[0] == good


def test_where_the_search_stops_early_a_cheaper_set_of_other_methods_says_how_far_it_could_be_beaten() -> None:
    """Nine needs, two ways each: the set all of one way is the last of 512 by sum and the cheapest in truth [computed]."""
    some = [c for n in "abcdefghi" for c in (one(f"{n}x", "x", 10, n), one(f"{n}y", "y", 11, n))]

    def price(answer: Answer) -> int:
        return 60 if all(c.method == "y" for c in answer.chosen) else answer.cost + 100

    found = menu_entries(
        list("abcdefghi"), some, {}, price, lambda a: (0.0, 0.0, 0.0), lambda c: (0.0, 0.0, 0.0), slack=50
    )
    best, cheaper = found[0], min(found, key=lambda d: d.price)
    assert (best.price, cheaper.price) == (190, 60)
    never_below = best.price - best.bound
    assert cheaper.bound == 60 - never_below > 0

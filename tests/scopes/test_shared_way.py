"""A tunnel that begins in another one: the search counts the way once, checked against plain sums [computed]."""

from itertools import combinations

import pytest

from estimator.model.stretch import Stretch
from estimator.model.work import Candidate
from estimator.scopes.search import cheapest
from estimator.scopes.shared_way import share_ways


def tunnel(id: str, cost: int, answers: str, line: str) -> Candidate:
    return Candidate(id=id, line=line, stretch=Stretch(0, 20), answers=frozenset(answers), cost=cost, method="tunnel")


MAIN, KITCHEN, BATH = tunnel("main", 900, "1", "main"), tunnel("kitchen", 500, "2", "k"), tunnel("bath", 400, "3", "b")
SAVED = {("main", "kitchen"): 300, ("main", "bath"): 250}


def really(chosen) -> int:
    ids = {c.id for c in chosen}
    return sum(c.cost for c in chosen) - sum(cents for pair, cents in SAVED.items() if ids >= set(pair))


def test_every_set_costs_what_its_tunnels_cost_together() -> None:
    shared, charges = share_ways((MAIN, KITCHEN, BATH), SAVED)
    for size in (1, 2, 3):
        for some in combinations(shared, size):
            keys = {key for c in some for key in c.shared}
            total = sum(c.cost for c in some) + sum(charges[key] for key in keys)
            alone = [c for c in (MAIN, KITCHEN, BATH) if c.id in {s.id for s in some}]
            assert total == really(alone)


def test_the_search_finds_the_pair_that_shares_its_way() -> None:
    floor = tunnel("floor", 250, "2", "k")
    apart = cheapest("12", (MAIN, KITCHEN, floor)).answer
    shared, charges = share_ways((MAIN, KITCHEN, floor), {("main", "kitchen"): 300})
    beside = cheapest("12", shared, charges).answer
    assert apart and [c.id for c in apart.chosen] == ["floor", "main"]
    assert beside and [c.id for c in beside.chosen] == ["kitchen", "main"]
    assert beside.cost == 1_100


@pytest.mark.parametrize("cost", [0, 100, 549, 550, 551])
def test_no_tunnel_comes_out_below_nothing_and_no_set_above_its_cost(cost: int) -> None:
    cheap = tunnel("main", cost, "1", "main")
    shared, charges = share_ways((cheap, KITCHEN, BATH), SAVED)
    assert all(c.cost >= 0 for c in shared)
    for some in combinations(shared, 2):
        keys = {key for c in some for key in c.shared}
        alone = [c for c in (cheap, KITCHEN, BATH) if c.id in {s.id for s in some}]
        assert sum(c.cost for c in some) + sum(charges[key] for key in keys) <= sum(c.cost for c in alone)


def test_candidates_that_share_nothing_stay_as_they_are() -> None:
    assert share_ways((MAIN, KITCHEN), {}) == ((MAIN, KITCHEN), {})

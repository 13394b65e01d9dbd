"""A tunnel that begins in another one: the search counts the way once, checked against plain sums [computed]."""

from itertools import combinations
from pathlib import Path
from random import Random

import pytest

from estimator.fieldnotes import read_job
from estimator.model.stretch import Stretch
from estimator.model.work import Candidate
from estimator.pipeline import run
from estimator.scopes.search import cheapest
from estimator.scopes.shared_way import share_cleaning, share_ways


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


def inside(id: str, cost: int, line: str = "main") -> Candidate:
    return Candidate(
        id=id, line=line, stretch=Stretch(0, 4), answers=frozenset(id), cost=cost, method="sectional liner"
    )


def test_a_repair_alone_costs_the_same_whether_its_cleaning_is_shared_or_not() -> None:
    some = (inside("a", 500), inside("b", 400), inside("c", 300, "yard"))
    shared, charges = share_cleaning(some, {"a": 120, "b": 100, "c": 90})
    assert sorted(charges.values()) == [20, 90, 100]
    assert [c.cost + sum(charges[key] for key in c.shared) for c in shared] == [500, 400, 300]


@pytest.mark.parametrize("seed", range(40))
def test_repairs_that_share_their_cleaning_are_summed_up_with_the_one_that_spends_most(seed: int) -> None:
    """The tool that goes farthest has cleaned for all that lie nearer [computed]."""
    random = Random(seed)
    spent = {name: random.randrange(0, 200) for name in "abcde"}
    some = tuple(inside(name, spent[name] + random.randrange(0, 300)) for name in spent)
    shared, charges = share_cleaning(some, spent)
    for size in range(1, 6):
        for chosen in combinations(shared, size):
            keys = {key for c in chosen for key in c.shared}
            summed = sum(c.cost for c in chosen) + sum(charges[key] for key in keys)
            cleaned = [spent[c.id] for c in chosen]
            really = sum(c.cost for c in some if c.id in {s.id for s in chosen}) - sum(sorted(cleaned)[:-1])
            assert all(c.cost >= 0 for c in chosen)
            assert summed == really


def test_on_a_real_line_two_short_liners_are_cleaned_for_once(tables) -> None:
    job = read_job(Path(__file__).parents[1] / "jobs" / "j12-cedar" / "job.toml").job
    assert job is not None
    lined = next(
        o
        for o in run(job, tables, job.day).quote.options
        if [r.method for r in o.scope.repairs] == ["sectional liner"] * 2
    )
    assert sum(t.value("films_before") for t in lined.takeoffs) == 1

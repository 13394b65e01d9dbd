"""Needs, candidates and functions that price and measure a set in, the menu out: sets none of which beats another; and the beaten."""

import operator
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import cached_property
from itertools import groupby

from estimator.model.frozen import Frozen
from estimator.model.work import Candidate
from estimator.scopes.cover import Cover
from estimator.scopes.real import LeftOf, PriceOf, best_real, nothing_left
from estimator.scopes.search import Answer, cheapest_without, in_order, least_by

MOST_METHOD_SETS = 256
"""So many sets of allowed methods are tried at most."""


Measures = tuple[float, float, float]
"""Days without drains, floor opened in sq ft, old pipe left in ft."""
MeasuresOf = Callable[[Answer], Measures]


class MenuEntry(Frozen, kw_only=True, dict=True):
    """One set on the menu: its real price in cents and, once asked, what the homeowner lives with. Less is better in all four."""

    answer: Answer
    price: int
    measures_of: MeasuresOf
    bound: int | None = None  # by how many cents it could be beaten; None: it is the cheapest of its kind, not of all
    left: tuple[int, ...] = ()  # how much it leaves as it is, the worst first

    @cached_property
    def measures(self) -> Measures:
        return self.measures_of(self.answer)

    @cached_property
    def ways(self) -> frozenset[tuple[str, str]]:
        """Which need it treats by which method."""
        return frozenset((need, c.method) for c in self.answer.chosen for need in c.answers)

    def beats(self, other: "MenuEntry") -> bool:
        """No worse in all four and better in one, treating every need by the same method.

        A lining is no new pipe and a tunnel no open floor, whatever they cost: those people compare themselves.
        """
        return self.ways == other.ways and self.no_worse(other) and not self.is_like(other)

    def no_worse(self, other: "MenuEntry") -> bool:
        """As good or better in price, days, floor and old pipe left."""
        return self.price <= other.price and all(map(operator.le, self.measures, other.measures))

    def is_like(self, other: "MenuEntry") -> bool:
        """Every need is treated by the same method, and all four are alike."""
        return (self.ways, self.price) == (other.ways, other.price) and self.measures == other.measures


PartOf = Callable[[Candidate], Measures]
"""What one candidate adds: days its line is out, floor it opens, and (below zero) old pipe it takes away."""


def menu_entries(
    needs: Sequence[str],
    candidates: Sequence[Candidate],
    shared_costs: Mapping[str, int],
    price_of: PriceOf,
    measures_of: MeasuresOf,
    part_of: PartOf,
    slack: int = 0,
    leasts: Sequence[PriceOf] = (),
    left_of: LeftOf = nothing_left,
    no_dearer: bool = False,
) -> tuple[MenuEntry, ...]:
    """The sets looked at: the best by real price first; the cheapest by sum for every set of allowed
    methods; and the sets best at days without drains, at floor opened and at old pipe left, the sum breaking ties.

    The best carries by how much it could be beaten, and so does another that proves to be as cheap or cheaper. Where `no_dearer`
    is wanted than the best, sets that are sure to be are left out unpriced.
    """
    best = best_real(in_order(needs, candidates, shared_costs), price_of, slack, leasts=leasts, left_of=left_of)
    if best is None:
        return ()
    answers = {best.answer: None}
    answers |= dict.fromkeys(cheapest_of_methods(needs, candidates, shared_costs))
    answers |= dict.fromkeys(best_at(needs, candidates, shared_costs, part_of))
    if no_dearer:
        answers = {a: None for a in answers if all(least(a) <= best.price for least in leasts)}
    found = [MenuEntry(answer=a, price=price_of(a), measures_of=measures_of, left=left_of(a)) for a in answers]
    never_below = best.price - best.bound
    return tuple(replace(d, bound=max(0, d.price - never_below)) if d.price <= best.price else d for d in found)


def menu(found: Sequence[MenuEntry]) -> tuple[MenuEntry, ...]:
    """The sets worth showing, the cheapest by real price first.

    An entry is dropped when another that treats every need by the same method beats it, or is like it in all four and comes
    first. Not promised: every set that nothing beats.
    """
    kept: list[MenuEntry] = []
    for entry in by_price(d for d in found if not any(other is not d and other.beats(d) for other in found)):
        if not any(one.is_like(entry) for one in kept):
            kept.append(entry)
    return tuple(kept)


def by_price(found: Iterable[MenuEntry]) -> list[MenuEntry]:
    """The cheapest first; at one price what leaves less as it is, then by what the homeowner lives with, then by name."""
    alike = groupby(sorted(found, key=_asked_first), _asked_first)
    return [entry for _, some in alike for entry in _in_order([*some])]


def _asked_first(entry: MenuEntry) -> tuple[int, tuple[int, ...]]:
    return entry.price, entry.left


def _in_order(alike: list[MenuEntry]) -> list[MenuEntry]:
    if len(alike) < 2:
        return alike
    return sorted(alike, key=lambda d: (d.measures, tuple(c.id for c in d.answer.chosen)))


def cheapest_of_methods(
    needs: Sequence[str], candidates: Sequence[Candidate], shared_costs: Mapping[str, int]
) -> Iterator[Answer]:
    """The cheapest set by sum for every set of allowed methods, each answer once; at most 256 sets of methods are solved.

    Forbidding a method that the answer does not use changes nothing, so only used ones are forbidden in turn; the
    answers of all other sets of methods are among these.
    """
    waiting: list[frozenset[str]] = [frozenset()]
    seen = set(waiting)
    given: set[Answer] = set()
    solved = 0
    cover = Cover(needs, candidates, shared_costs)
    while waiting and solved < MOST_METHOD_SETS:
        forbidden = waiting.pop(0)
        solved += 1
        answer = cheapest_without(cover, forbidden)
        if answer is None:
            continue
        if answer not in given:
            given.add(answer)
            yield answer
        for method in sorted({c.method for c in answer.chosen}):
            fewer = forbidden | {method}
            if fewer not in seen:
                seen.add(fewer)
                waiting.append(fewer)


def best_at(
    needs: Sequence[str], candidates: Sequence[Candidate], shared_costs: Mapping[str, int], part_of: PartOf
) -> Iterator[Answer]:
    """The set with the least sum of each of the three measures, the sum of cents breaking ties.

    Days are summed along each line, so the set with the fewest also has the fewest on its slowest line.
    """
    by_id = {c.id: c for c in candidates}
    whole = sum(c.cost for c in candidates) + sum(shared_costs.values()) + 1
    parts = {c.id: part_of(c) for c in candidates}
    for which in range(3):
        weights = {c.id: round(100 * parts[c.id][which]) * whole + c.cost for c in candidates}
        found = least_by(needs, candidates, shared_costs, weights)
        if found is not None:
            chosen = tuple(by_id[c.id] for c in found.chosen)
            charges = {key for c in chosen for key in c.shared}
            yield Answer(chosen, sum(c.cost for c in chosen) + sum(shared_costs[key] for key in charges))

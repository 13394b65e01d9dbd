"""The menu in, the two to four sets worth showing side by side out."""

from collections.abc import Callable, Sequence

from estimator.model.work import Candidate
from estimator.scopes.kinds import SMALL, SMALLEST, kind, method, way
from estimator.scopes.menu import Dish

MOST_SHOWN = 4
MOST_OF_A_KIND = 2
"""So many methods of one kind are shown: a tunnel and a floor opened are not the same weeks for those who live there."""

Told = Callable[[Candidate | None], str]


def shown(menu: Sequence[Dish], most: int = MOST_SHOWN) -> tuple[Dish, ...]:
    """The cheapest; then, while there are fewer than four, the cheapest of the others that differ by what people tell apart.

    First another kind (spot, line, replace, go around) on the dearest need, the one whose repair costs most in the
    cheapest set; then, need by need, a spot opened beside one lined from inside; then a second method of a kind.
    """
    if not menu:
        return ()
    needs = _dearest_first(menu[0])
    out = [menu[0]]
    for need, told in [*((n, kind) for n in needs[:1]), *((n, way) for n in needs), *((n, method) for n in needs[:1])]:
        _add_others(out, menu, need, told, most)
    return tuple(sorted(out, key=lambda d: menu.index(d)))


def _add_others(out: list[Dish], menu: Sequence[Dish], need: str, told: Told, most: int) -> None:
    """The cheapest of each that treats the need as none of those shown does."""
    for dish in menu:
        here = on(need, dish)
        alike = [on(need, d) for d in out]
        full = told is method and sum(kind(a) == kind(here) for a in alike) >= MOST_OF_A_KIND
        if len(out) < most and not full and told(here) not in {told(a) for a in alike}:
            out.append(dish)


def _dearest_first(dish: Dish) -> list[str]:
    """One need of each repair of this set, that of the dearest repair first."""
    by_cost = sorted(dish.answer.chosen, key=lambda c: (-c.cost, c.id))
    return list(dict.fromkeys(min(c.answers) for c in by_cost))


def small(found: Sequence[Dish], slight: bool = False) -> tuple[Dish, ...]:
    """What cleans, finds out or mends single spots; where all is `slight` and can be cleaned out, nothing that is dug for."""
    cleans = slight and any(_only(d, frozenset({"clean", "find out"})) for d in found)
    return tuple(d for d in found if _only(d, SMALLEST if cleans else SMALL))


def _only(dish: Dish, ways: frozenset[str]) -> bool:
    return {way(c) for c in dish.answer.chosen} <= ways


def on(need: str, dish: Dish) -> Candidate | None:
    """The repair that treats the need; the dearest where several do."""
    on_it = [c for c in dish.answer.chosen if need in c.answers]
    return max(on_it, key=lambda c: (c.cost, c.id), default=None)

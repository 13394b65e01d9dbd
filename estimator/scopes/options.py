"""The menu in, the two to four sets worth showing side by side out."""

from collections.abc import Callable, Sequence

from estimator.model.work import Candidate
from estimator.scopes.kinds import SMALL, SMALLEST, kind, method, reach, way
from estimator.scopes.menu import MenuEntry

MOST_SHOWN = 4
MOST_OF_A_KIND = 2
"""So many methods of one kind are shown where the next gives nothing that one of those shown does not."""

Told = Callable[[Candidate | None], str]
Fits = Callable[[str, MenuEntry, Sequence[MenuEntry]], bool]


def shown(menu: Sequence[MenuEntry], most: int = MOST_SHOWN) -> tuple[MenuEntry, ...]:
    """The cheapest; then, while there are fewer than four, the cheapest of the others that differ by what people tell apart.

    First on the dearest need, the one whose repair costs most in the cheapest set: another kind (spot, line, replace, go
    around), then another way to come to the pipe (floor, tunnel, lining, trench) and another method, as long as none that
    is shown beats it. Then, need by need, a spot opened beside one lined from inside; then a second method of a kind.
    """
    if not menu:
        return ()
    needs = _dearest_first(menu[0])
    main = needs[:1]
    out = [menu[0]]
    steps: list[tuple[list[str], Told, Fits]] = [
        (main, kind, _always),
        (main, reach, _unbeaten),
        (main, method, _unbeaten),
        (needs, way, _always),
        (main, method, _second),
    ]
    for some, told, fits in steps:
        for need in some:
            _add_others(out, menu, need, told, fits, most)
    return tuple(sorted(out, key=lambda d: menu.index(d)))


def _add_others(out: list[MenuEntry], menu: Sequence[MenuEntry], need: str, told: Told, fits: Fits, most: int) -> None:
    """The cheapest of each that treats the need as none of those shown does."""
    cheapest: dict[str, MenuEntry] = {}
    for entry in menu:
        cheapest.setdefault(told(on(need, entry)), entry)
    for here, entry in cheapest.items():
        if len(out) < most and here not in {told(on(need, d)) for d in out} and fits(need, entry, out):
            out.append(entry)


def _always(need: str, entry: MenuEntry, out: Sequence[MenuEntry]) -> bool:
    return True


def _unbeaten(need: str, entry: MenuEntry, out: Sequence[MenuEntry]) -> bool:
    """None of those shown treats the need the same way and is no worse in price, days, floor and old pipe left."""
    here = way(on(need, entry))
    return not any(way(on(need, one)) == here and one.no_worse(entry) for one in out)


def _second(need: str, entry: MenuEntry, out: Sequence[MenuEntry]) -> bool:
    here = kind(on(need, entry))
    return sum(kind(on(need, one)) == here for one in out) < MOST_OF_A_KIND


def _dearest_first(entry: MenuEntry) -> list[str]:
    """One need of each repair of this set, that of the dearest repair first."""
    by_cost = sorted(entry.answer.chosen, key=lambda c: (-c.cost, c.id))
    return list(dict.fromkeys(min(c.answers) for c in by_cost))


def small(found: Sequence[MenuEntry], slight: bool = False) -> tuple[MenuEntry, ...]:
    """What cleans, finds out or mends single spots; where all is `slight` and can be cleaned out, nothing that is dug for."""
    cleans = slight and any(_only(d, frozenset({"clean", "find out"})) for d in found)
    return tuple(d for d in found if _only(d, SMALLEST if cleans else SMALL))


def _only(entry: MenuEntry, ways: frozenset[str]) -> bool:
    return {way(c) for c in entry.answer.chosen} <= ways


def on(need: str, entry: MenuEntry) -> Candidate | None:
    """The repair that treats the need; the dearest where several do."""
    on_it = [c for c in entry.answer.chosen if need in c.answers]
    return max(on_it, key=lambda c: (c.cost, c.id), default=None)

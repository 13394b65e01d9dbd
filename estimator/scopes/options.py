"""The menu in, the two to four sets worth showing side by side out."""

from collections.abc import Iterator, Sequence

from estimator.model.work import Candidate
from estimator.scopes.menu import Dish, by_price

LEAST_SHOWN = 2
MOST_SHOWN = 4

KINDS: dict[str, str] = {
    "clean": "clean",
    "isolation test": "find out",
    "look and see": "find out",
    "yard spot": "spot",
    "slab spot": "spot",
    "sectional liner": "spot",
    "reline": "line",
    "tunnel": "replace",
    "break-through": "replace",
    "trench": "replace",
    "burst": "replace",
    "crawl replace": "replace",
    "reroute": "go around",
}
"""What a homeowner tells apart: fix the bad spot, line it from inside, replace that part, go around it."""


def shown(menu: Sequence[Dish], most: int = MOST_SHOWN) -> tuple[Dish, ...]:
    """The cheapest; then, while fewer than four, the cheapest that treats the dearest need in another way.

    The dearest need is the one whose repair costs most in the cheapest set. Other ways are first other kinds (spot, line,
    replace, go around), then other methods of the same kind.
    """
    if not menu:
        return ()
    need = _dearest_need(menu[0])
    if need is None:
        return (menu[0],)
    out = [menu[0]]
    for way in (_kind, _method):
        seen = {way(_on(need, dish)) for dish in out}
        for dish in menu:
            here = way(_on(need, dish))
            if len(out) < most and dish not in out and here not in seen:
                seen.add(here)
                out.append(dish)
    return tuple(sorted(out, key=lambda d: d.price))


def spare(picked: Sequence[Dish], found: Sequence[Dish]) -> Iterator[Dish]:
    """Sets to fill up with where fewer than two are left to show, even if beaten: the dearest need another way.

    First the cheapest of another kind (spot, line, replace, go around), then of another method. Beside one small repair
    only another small one: a whole run is not pushed where one dig does it.
    """
    need = _dearest_need(picked[0]) if picked else None
    if need is None:
        return
    found = small(found) if small(picked) else found
    for way in (_kind, _method):
        shown_so = {way(_on(need, dish)) for dish in picked}
        yield from (d for d in by_price(found) if d not in picked and way(_on(need, d)) not in shown_so)


def _dearest_need(dish: Dish) -> str | None:
    """The need whose repair costs most in this set."""
    dearest = max(dish.answer.chosen, key=lambda c: (c.cost, c.id), default=None)
    return min(dearest.answers) if dearest else None


def small(menu: Sequence[Dish]) -> tuple[Dish, ...]:
    """What cleans, finds out or mends single spots."""
    return tuple(d for d in menu if {KINDS.get(c.method) for c in d.answer.chosen} <= {"clean", "find out", "spot"})


def _on(need: str, dish: Dish) -> Candidate | None:
    """The repair that treats the need; the dearest where several do."""
    on_it = [c for c in dish.answer.chosen if need in c.answers]
    return max(on_it, key=lambda c: (c.cost, c.id), default=None)


def _kind(candidate: Candidate | None) -> str:
    return KINDS.get(candidate.method, candidate.method) if candidate else ""


def _method(candidate: Candidate | None) -> str:
    return candidate.method if candidate else ""

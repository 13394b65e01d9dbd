"""Sets that are shown and all that were looked at in; for each allowed way that is in none of them the reason, out."""

from collections.abc import Iterator, Sequence

from estimator.model.judgement import Effect, Verdict
from estimator.model.say import Say
from estimator.model.work import Repair
from estimator.scopes.counter import Counter
from estimator.scopes.measures import each
from estimator.scopes.menu import Dish, by_price

COSTS_MORE = "costs-more"
NO_ROOM = "four-are-enough"
TOO_MUCH = "smaller-way-first"
WHY: dict[str, Say] = {
    COSTS_MORE: Say.of("It could be done, but costs more and gives nothing more in days, floor or new pipe."),
    NO_ROOM: Say.of("It could be done too; of ways so alike only the cheaper ones are shown. Ask us for its price."),
    TOO_MUCH: Say.of("Nothing found here asks for so much work; something smaller puts it right."),
}


def left_out(
    picked: Sequence[Dish], allowed: Sequence[Dish], found: Sequence[Dish], counter: Counter, dropped: set[str]
) -> tuple[Verdict, ...]:
    """One reason a way: too much for what was found (`found`, not `allowed`), beaten by one shown, or no place for it.

    What the estimator dropped needs no reason. A way that no whole set uses keeps what the rules say of it elsewhere.
    """
    used = {way for dish in picked for way in _ways(dish, counter)} | dropped
    out: dict[str, Verdict] = {}
    for dish in by_price(found):
        for repair in _new(dish, used, counter):
            why = TOO_MUCH if dish not in allowed else COSTS_MORE if _beaten(dish, picked) else NO_ROOM
            out.setdefault(repair.method, _verdict(repair, why))
    return tuple(out.values())


def _new(dish: Dish, used: set[str], counter: Counter) -> Iterator[Repair]:
    return (r for r in each(counter.repairs_of(dish.answer)) if r.method not in used)


def _ways(dish: Dish, counter: Counter) -> set[str]:
    return {r.method for r in each(counter.repairs_of(dish.answer))}


def _beaten(dish: Dish, picked: Sequence[Dish]) -> bool:
    return any(one.no_worse(dish) and one.price < dish.price for one in picked)


def _verdict(repair: Repair, why: str) -> Verdict:
    return Verdict(
        rule=why,
        effect=Effect.PREFERS,
        method=repair.method,
        line=repair.line,
        stretch=repair.stretch,
        homeowner=WHY[why],
        estimator=WHY[why],
    )

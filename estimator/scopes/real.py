"""Sets in order of their sum and a function that prices one in, the best real price with its bound out. No clock."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

from estimator.model.frozen import Frozen
from estimator.scopes.search import Answer

MOST_PRICED = 200
"""So many sets are priced at most; a count, not a time, so that every machine gives the same answer."""
MOST_LOOKED_AT = 2_000
"""So many sets are looked at at most, priced or not."""

PriceOf = Callable[[Answer], int]
"""The exact price of a set, in cents, rounded as the firm rounds."""
LeftOf = Callable[[Answer], tuple[int, ...]]
"""How much a set leaves as it is, the worst first; less is better. Asked where real prices are equal."""


def nothing_left(answer: Answer) -> tuple[int, ...]:
    """Where nobody counts what is left."""
    return ()


class Real(Frozen):
    """The best set by real price. No other set can be cheaper by more than `bound` cents; 0: proved."""

    answer: Answer
    price: int
    bound: int
    priced: int

    @property
    def proved(self) -> bool:
        return self.bound == 0


def best_real(
    in_order: Iterable[Answer],
    price_of: PriceOf,
    slack: int = 0,
    most: int = MOST_PRICED,
    leasts: Sequence[PriceOf] = (),
    left_of: LeftOf = nothing_left,
) -> Real | None:
    """The cheapest set by real price, looked for in the order of their sums; None when there is no set.

    A set's real price is never below its sum less `slack` (the quarter hour of each crew that is not paid, marked up),
    because days, packs, minimums and the price step only round up. So once the next sum less slack reaches the best
    price the answer is proved. `leasts` may know nearer amounts that a set's real price is never below, the quickest
    first: then a set that cannot win is looked at and not priced. Equal prices: the set that leaves less (`left_of`), then the earlier one.
    Errors: none of its own.

    >>> sums = [Answer((), 100), Answer((), 110), Answer((), 190)]
    >>> found = best_real(sums, lambda a: {100: 180, 110: 150, 190: 190}[a.cost])
    >>> found.price, found.bound, found.priced
    (150, 0, 2)
    """
    best: Real | None = None
    priced = 0
    for looked, answer in enumerate(in_order):
        if best is not None:
            least = answer.cost - slack
            enough = best.price + (1 if any(left_of(best.answer)) else 0)  # one of the same price may leave less
            if least >= enough:
                return replace(best, priced=priced)
            if priced >= most or looked >= MOST_LOOKED_AT:
                return replace(best, bound=max(0, best.price - least), priced=priced)
            if any(least_of(answer) >= enough for least_of in leasts):
                continue
        price = price_of(answer)
        priced += 1
        if best is None or (price, left_of(answer)) < (best.price, left_of(best.answer)):
            best = Real(answer, price, 0, priced)
    return None if best is None else replace(best, priced=priced)

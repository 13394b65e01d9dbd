"""Step 7: prices of work items in; what must be added so that no method is sold below its least charge, out."""

from collections.abc import Mapping
from decimal import Decimal

from estimator.model.money import cents, spread
from estimator.model.say import Say
from estimator.model.work import JOB
from estimator.pricing.spread_on import Owner
from estimator.tables.tables import Tables

Prices = Mapping[Owner, Decimal]


def lifts(prices: Prices, methods: Mapping[str, str], tables: Tables) -> tuple[dict[Owner, Decimal], tuple[Say, ...]]:
    """Per method, once a scope, on prices without pass-through. `methods`: repair → method.

    What comes once a job counts towards the minimum: with several methods each is credited with its share of it.
    The lift goes on that method's items in proportion.
    """
    sums = _by_method(prices, methods)
    job = sums.pop(JOB, Decimal(0))
    whole = sum(sums.values(), Decimal(0))
    lifted: dict[Owner, Decimal] = {}
    said: list[Say] = []
    for method, own in sums.items():
        least = tables.method(method).min_charge or Decimal(0)
        reached = own + (job * own / whole if whole else Decimal(0))
        if own > 0 and reached < least:
            owners = [o for o in prices if methods[o[0]] == method]
            parts = spread(cents(least - reached), [prices[o] for o in owners])
            lifted |= dict(zip(owners, parts, strict=True))
            said.append(_said(method, reached, least))
    return lifted, tuple(said)


def _by_method(prices: Prices, methods: Mapping[str, str]) -> dict[str, Decimal]:
    sums: dict[str, Decimal] = {}
    for (repair, _), price in prices.items():
        sums[methods[repair]] = sums.get(methods[repair], Decimal(0)) + price
    return sums


def _said(method: str, reached: Decimal, least: Decimal) -> Say:
    return Say.of(
        "{method} comes to {reached}; its least charge is {least}", method=method, reached=cents(reached), least=least
    )

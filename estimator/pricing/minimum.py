"""Step 7: prices of work items in; what must be added so that no method is sold below its least charge, out."""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from estimator.model.money import cents, spread
from estimator.model.say import Dollars, Say
from estimator.model.visit import kinds_in
from estimator.model.work import JOB, Takeoff
from estimator.pricing.amounts import Owner
from estimator.pricing.figures import Figures
from estimator.pricing.lines import PASSED_ON
from estimator.pricing.markup import ByClass
from estimator.pricing.shares import allocated_by_method, loads_of
from estimator.tables.tables import Tables

Prices = Mapping[Owner, Decimal]
A_DOLLAR = 1.0
"""More than the cents by which laying costs on methods may round."""


def minimum_adjustments(
    prices: Prices, takeoffs: Sequence[Takeoff], tables: Tables
) -> tuple[dict[Owner, Decimal], tuple[Say, ...]]:
    """Per method, once a scope, on prices without pass-through; what is added goes on that method's items in proportion."""
    methods = {t.repair.id: t.repair.method for t in takeoffs}
    added: dict[Owner, Decimal] = {}
    said: list[Say] = []
    for method, (reached, least) in short_of(_by_method(prices, methods), takeoffs, tables).items():
        owners = [o for o in prices if methods[o[0]] == method]
        parts = spread(cents(least - reached), [prices[o] for o in owners])
        added |= dict(zip(owners, parts, strict=True))
        said.append(_said(method, reached, least))
    return added, tuple(said)


def short_of(
    work: Mapping[str, Decimal], takeoffs: Sequence[Takeoff], tables: Tables
) -> dict[str, tuple[Decimal, Decimal]]:
    """Each method below its least charge: what it reaches, and that charge. `work` is what each is sold for, dollars.

    What comes once a job counts towards the minimum: with several methods each is credited with its share of it. A visit
    without any method only films.
    """
    sums = dict(work)
    job = sums.pop(JOB, Decimal(0)) if set(sums) != {JOB} else Decimal(0)
    whole = sum(sums.values(), Decimal(0))
    out: dict[str, tuple[Decimal, Decimal]] = {}
    for method, own in sums.items():
        least = least_charge(method, takeoffs, tables)
        reached = own + (job * own / whole if whole else Decimal(0))
        if own > 0 and reached < least:
            out[method] = reached, least
    return out


def sum_of_adjustments(figures: Figures, by_class: ByClass, takeoffs: Sequence[Takeoff], tables: Tables) -> Decimal:
    """What least charges add to a scope, dollars."""
    methods = {t.repair.id: t.repair.method for t in takeoffs}
    if _reached_alone(figures, by_class, methods, takeoffs, tables):
        return Decimal(0)
    by_method = allocated_by_method(loads_of(figures), methods)
    work = {method: by_class.share(cells, passed_on=False) for method, cells in by_method.items()}
    short = short_of(work, takeoffs, tables)
    return sum((cents(least - reached) for reached, least in short.values()), Decimal(0))


def _reached_alone(
    figures: Figures, by_class: ByClass, methods: Mapping[str, str], takeoffs: Sequence[Takeoff], tables: Tables
) -> bool:
    """Whether its crews and what it uses bring each method over its least charge: then nothing need be allocated to the cent."""
    sold = set(methods.values()) - {JOB}
    if not sold or not by_class.costs.get("own"):
        return False
    rates = {n: float(by_class.prices[n] / cost) for n, cost in by_class.costs.items() if cost and n != PASSED_ON}
    hour = {crew.crew: rates["own"] * float(crew.amount) / crew.work_hours for crew in figures.crews}
    alone = dict.fromkeys(methods.values(), 0.0)
    for task in figures.tasks:
        alone[methods[task.repair]] += task.hours * hour.get(task.crew, 0.0)
    used = [(m.want, m.amount, "own") for m in figures.machines if m.days is None or len(m.want.owners) == 1]
    used += [(b.want, b.amount, "own") for b in figures.materials.bought]
    used += [(s.want, s.amount, s.row.price_class) for s in figures.subs]
    for want, amount, price_class in used:
        each = float(amount) * rates.get(price_class, 0.0) / sum([weight for _, _, weight in want.by])
        for repair, _, weight in want.by:
            alone[methods[repair]] += each * weight
    return all(alone[m] > float(least_charge(m, takeoffs, tables)) + A_DOLLAR for m in sold)


def least_charge(method: str, takeoffs: Sequence[Takeoff], tables: Tables) -> Decimal:
    """The method's own; a visit that only tests the whole, or only films, has a setting of its own."""
    if method == JOB:
        return tables.amount("min_charge_camera")
    does = {kind for t in takeoffs if t.repair.method == method for kind in kinds_in(t.facts)}
    if does == {"test"}:
        return tables.amount("min_charge_test")
    if does == {"film"}:
        return tables.amount("min_charge_camera")
    return tables.method(method).min_charge or Decimal(0)


def _by_method(prices: Prices, methods: Mapping[str, str]) -> dict[str, Decimal]:
    sums: dict[str, Decimal] = {}
    for (repair, _), price in prices.items():
        sums[methods[repair]] = sums.get(methods[repair], Decimal(0)) + price
    return sums


def _said(method: str, reached: Decimal, least: Decimal) -> Say:
    return Say.of(
        "{method} is {reached}, under its minimum charge of {least}",
        method=method,
        reached=Dollars(cents(reached)),
        least=Dollars(least),
    )

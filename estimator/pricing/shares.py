"""Step 5: cost lines in; what each work item of each repair costs, by price class, to the cent, out."""

from collections.abc import Iterable
from decimal import Decimal

from estimator.model.money import spread
from estimator.model.price import CostLine
from estimator.pricing.spread_on import Owner

Laid = dict[Owner, dict[str, Decimal]]
"""(repair, work item) → price class → dollars."""


def laid_on(costs: Iterable[CostLine]) -> Laid:
    """Every line spread over its shares without losing a cent: the sum of all cells is the sum of all lines."""
    laid: Laid = {}
    for line in costs:
        parts = spread(line.amount, [weight for _, _, weight in line.shares])
        for (repair, item, _), amount in zip(line.shares, parts, strict=True):
            classes = laid.setdefault((repair, item), {})
            classes[line.price_class] = classes.get(line.price_class, Decimal(0)) + amount
    return laid


def by_class(costs: Iterable[CostLine]) -> dict[str, Decimal]:
    """The sum of the cost lines of each price class."""
    total: dict[str, Decimal] = {}
    for line in costs:
        total[line.price_class] = total.get(line.price_class, Decimal(0)) + line.amount
    return total

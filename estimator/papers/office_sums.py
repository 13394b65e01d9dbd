"""An option in, what the firm asks, spends and keeps out: cost as priced, in the middle and at the firm's own confidence."""

from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.money import cents
from estimator.model.offer import Option

PARTS = ("labor", "overhead", "material", "small parts", "tax", "equipment", "sub", "fee")
MIDDLE = 50


class Sums(Frozen, kw_only=True):
    """Dollars. `middle` and `sure` are None where no range was drawn; `profit` is the price without tax less the middle cost; `days` are the day plan's, without one those paid."""

    price: Decimal
    cost: Decimal
    middle: Decimal | None
    sure: Decimal | None
    confidence: float
    profit: Decimal
    share: Decimal
    per_day: Decimal
    days: Decimal


def cost_of(option: Option) -> Decimal:
    """All cost lines, passed on ones too, and what allowances and chosen add-ons cost beside them."""
    return sum((cost.amount for cost in option.price.costs), Decimal(0)) + option.price.cost_beside


def sums_of(option: Option) -> Sums:
    """Return the sums; the range is about the firm's own work, so what others are paid comes on top as it stands."""
    price, cost, found = option.price, cost_of(option), option.likely_range
    others = cost - price.direct
    percents = {percent: cents(dollars) for percent, dollars, _ in found.curve} if found else {}
    middle = percents[MIDDLE] + others if MIDDLE in percents else None
    confidence = found.confidence_percent if found else 0.0
    sure = percents[round(confidence)] + others if round(confidence) in percents else None
    net = price.total - price.tax
    days = sum(map(option.schedule.crew_days_of, option.schedule.crews), Decimal(0)) or price.days
    profit = net - (cost if middle is None else middle)
    return Sums(
        price=price.total,
        cost=cost,
        middle=middle,
        sure=sure,
        confidence=confidence,
        profit=profit,
        share=profit / net if net else Decimal(0),
        per_day=cents(profit / days) if days else Decimal(0),
        days=days,
    )


def parts(option: Option) -> list[tuple[str, Decimal]]:
    """Return what the cost is made of, by kind of cost."""
    sums = [(part, sum((c.amount for c in option.price.costs if c.part == part), Decimal(0))) for part in PARTS]
    beside = [("allowances, add-ons, commission, fees", option.price.cost_beside)]
    return [(part, amount) for part, amount in (*sums, *beside) if amount]

"""A price in; what of it goes into finding, reaching, the pipe itself and putting back, out, for whoever must part it."""

from decimal import Decimal

from estimator.model.money import spread
from estimator.model.price import Price

CLASSES = ("find", "reach", "pipe", "put back")


def price_by_class(price: Price) -> dict[str, Decimal]:
    """The sum of the lines of each class, to the cent. Discounts are laid on the classes in proportion, so that the four
    sum to the price without tax. It says nothing about what any insurance covers.
    """
    lines = [line for line in price.lines if line.work_class in CLASSES]
    sums = {c: sum((line.amount for line in lines if line.work_class == c), Decimal(0)) for c in CLASSES}
    off = sum((line.amount for line in price.lines if line.work_class not in CLASSES), Decimal(0))
    if off:
        parts = spread(off, list(sums.values()))
        sums = {c: amount + part for (c, amount), part in zip(sums.items(), parts, strict=True)}
    return sums

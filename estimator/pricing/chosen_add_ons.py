"""A price and the add-ons that were chosen in; the price with them, every other line as it was offered, out."""

from collections.abc import Iterable
from dataclasses import replace
from decimal import Decimal

from estimator.model.add_on import AddOn
from estimator.model.price import LineItem, Price, Step
from estimator.pricing.build import margin

ZERO = Decimal(0)
ADDED = ("Added: {text}", "Agregado: {text}")


def line_of(add_on: AddOn) -> LineItem:
    """The line of one that was chosen."""
    english, spanish = ADDED
    return LineItem(
        id="",
        work_item=add_on.work_item,
        work_class=add_on.work_class,
        repair=add_on.repair,
        text_en=english.format(text=add_on.text_en),
        text_es=spanish.format(text=add_on.text_es),
        size=add_on.size,
        size_unit=add_on.unit,
        billed="lump",
        quantity=Decimal(1),
        unit="",
        unit_price=add_on.amount,
        amount=add_on.amount,
        price_class=_class(add_on),
        cost_share=add_on.cost,
    )


def _class(add_on: AddOn) -> str:
    """The one class of all its costs, else the firm's own; an allowance where nobody knows its costs."""
    classes = {cost.price_class for cost in add_on.costs} or {"allowance"}
    return classes.pop() if len(classes) == 1 else "own"


def with_chosen(price: Price, offered: Iterable[AddOn]) -> Price:
    """The price with the add-ons that were chosen: every other line stays as it was offered."""
    chosen = [a for a in offered if a.chosen]
    if not chosen:
        return price
    added, tax = sum((a.amount for a in chosen), ZERO), sum((a.tax for a in chosen), ZERO)
    total = price.total + added + tax
    steps = [
        Step(text="add-ons chosen", formula="each at the price it was offered at", amount=added),
        Step(text="sales tax on them", formula="to the homeowner, by the place's kind", amount=tax),
        replace(price.steps[-1], amount=total),
    ]
    off = [line for line in price.lines if line.price_class == "discount"]
    work = [line for line in price.lines if line.price_class != "discount"]
    made = replace(
        price,
        lines=(*work, *map(line_of, chosen), *off),
        steps=(*price.steps[:-1], *(s for s in steps if s.amount)),
        total=total,
        tax=price.tax + tax,
    )
    spent = sum((cost.amount for cost in price.costs), ZERO) + made.cost_beside
    return replace(made, margin=margin(made.total - made.tax, spent))

"""The build-up as the office reads it: sums of the steps in, a list of text, formula and amount out."""

from collections.abc import Sequence
from decimal import Decimal

from estimator.model.money import cents, plain
from estimator.model.price import CostLine, Step
from estimator.pricing.sale import Sale
from estimator.tables.rows import PriceClass

PARTS = ("labor", "overhead", "equipment", "material", "small parts", "tax", "sub", "fee")
ZERO = Decimal(0)


def _step(text: str, formula: str, amount: Decimal) -> Step:
    return Step(text=text, formula=formula, amount=amount)


def build_up(
    lines: Sequence[CostLine], sale: Sale, work: Decimal, net: Decimal, tax: Decimal, kept: Decimal
) -> tuple[Step, ...]:
    """From the cost lines to the total; a step that adds nothing is left out, the total never.

    `work` is the price rounded up or set by the owner, `net` what is left after discounts.
    """
    steps = [_part(part, lines) for part in PARTS]
    for name, cost in sale.costs.items():
        steps += _class(name, cost, sale.rows[name], sale.contingency, sale.prices[name])
    steps.append(_step("least charge of the method", "added on its items in proportion", sale.adjustment))
    steps.append(_step("allowances", "as they stand", sale.fixed))
    steps.append(
        _step("commission, card fee, warranty reserve", f"all of it ÷ {plain(kept)}, less itself", _leaves(sale))
    )
    steps.append(_step("before rounding", "own work + subs + passed on + minimum charges + allowances", sale.before))
    steps.append(_step("price", "rounded up to the firm's step, or as the owner set it", work))
    steps.append(_step("discounts", "off after rounding", net - work))
    steps.append(_step("sales tax charged", "to the homeowner, by the place's kind", tax))
    return (*(step for step in steps if step.amount), _step("total", "what the homeowner pays", net + tax))


def _leaves(sale: Sale) -> Decimal:
    return sale.before - sum(sale.prices.values(), ZERO) - sale.adjustment - sale.fixed


def _part(part: str, lines: Sequence[CostLine]) -> Step:
    mine = [line for line in lines if line.part == part and line.price_class == "own"]
    return _step(f"{part}, own work", "sum of its cost lines", sum((line.amount for line in mine), ZERO))


def _class(name: str, cost: Decimal, row: PriceClass, contingency: Decimal, price: Decimal) -> list[Step]:
    percent = contingency if row.contingency else ZERO
    margin = f"÷ (1 − {plain(row.margin_percent)} %)"
    with_contingency = f"{cost} × (1 + {plain(percent)} %) " if percent else f"{cost} "
    return [
        _step(f"cost of class {name}", "sum of its cost lines, each to the cent", cost),
        _step(
            f"contingency on {name}",
            f"{cost} × {plain(percent)} %, shown here, not rounded on the way",
            cents(cost * percent / 100),
        ),
        _step(f"price of class {name}", with_contingency + margin, price),
    ]

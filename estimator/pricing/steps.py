"""The build-up as the office reads it: sums of the steps in, a list of text, formula and amount out."""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from estimator.model.money import cents
from estimator.model.price import CostLine, LineItem, Step
from estimator.pricing.shown import plain
from estimator.pricing.spread_on import Owner
from estimator.tables.rows import PriceClass

PARTS = ("labor", "equipment", "material", "small parts", "tax", "sub", "fee")
ZERO = Decimal(0)


def _step(text: str, formula: str, amount: Decimal) -> Step:
    return Step(text=text, formula=formula, amount=amount)


def build_up(
    lines: Sequence[CostLine],
    costs: Mapping[str, Decimal],
    rows: Mapping[str, PriceClass],
    contingency: Decimal,
    prices: Mapping[str, Decimal],
    lifted: Mapping[Owner, Decimal],
    fixed: Sequence[LineItem],
    before: Decimal,
    work: Decimal,
    tax: Decimal,
) -> tuple[Step, ...]:
    """From the cost lines to the total; a step that adds nothing is left out, the total never."""
    steps = [_part(part, lines) for part in PARTS]
    for name, cost in costs.items():
        steps += _class(name, cost, rows[name], contingency, prices[name])
    steps.append(_step("least charge of the method", "added on its items in proportion", sum(lifted.values(), ZERO)))
    steps.append(_step("allowances", "as they stand", sum((f.amount for f in fixed), ZERO)))
    shown = [step for step in steps if step.amount]
    shown.append(_step("before rounding", "own work + subs + passed on + lifts + allowances", before))
    shown.append(_step("rounded up", "to the firm's price step", work))
    if tax:
        shown.append(_step("sales tax charged", "", tax))
    shown.append(_step("total", "what the homeowner pays", work + tax))
    return tuple(shown)


def _part(part: str, lines: Sequence[CostLine]) -> Step:
    mine = [line for line in lines if line.part == part and line.price_class == "own"]
    return _step(f"{part}, own work", "sum of its cost lines", sum((line.amount for line in mine), ZERO))


def _class(name: str, cost: Decimal, row: PriceClass, contingency: Decimal, price: Decimal) -> list[Step]:
    percent = contingency if row.contingency else ZERO
    margin = f"÷ (1 − {plain(row.margin_percent)} %)"
    held = f"{cost} × (1 + {plain(percent)} %) " if percent else f"{cost} "
    return [
        _step(f"cost of class {name}", "sum of its cost lines, each to the cent", cost),
        _step(
            f"contingency on {name}",
            f"{cost} × {plain(percent)} %, shown here, not rounded on the way",
            cents(cost * percent / 100),
        ),
        _step(f"price of class {name}", held + margin, price),
    ]

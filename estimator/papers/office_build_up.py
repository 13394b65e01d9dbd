"""Cost lines on a page in, the way from cost to price below them out, live where the margins are known."""

from decimal import Decimal

from estimator.model.frozen import Frozen
from estimator.model.money import cents, up_to
from estimator.model.offer import Option
from estimator.papers.inside import live
from estimator.papers.page import Page, at
from estimator.sheets.book import Cell, Formula
from estimator.tables.tables import Tables

LABELS, RATE, AMOUNT, CLASS = 4, 4, 5, 6
HUNDRED = Decimal(100)
LEAVES = "of the price: commission, card fee, warranty reserve"


class ClassRow(Frozen):
    """What a price class costs and is sold for; contingency and margin as shares."""

    name: str
    cost: Decimal
    contingency: Decimal
    margin: Decimal
    price: Decimal


def class_rows(option: Option, tables: Tables) -> list[ClassRow]:
    """Each class of the cost lines at its own margin; contingency only where its row says so."""
    out = []
    for name in dict.fromkeys(cost.price_class for cost in option.price.costs):
        row = tables.price_class(name)
        cost = sum((c.amount for c in option.price.costs if c.price_class == name), Decimal(0))
        held = option.price.contingency_percent / HUNDRED if row.contingency else Decimal(0)
        margin = row.margin_percent / HUNDRED
        out.append(ClassRow(name, cost, held, margin, cents(cost * (1 + held) / (1 - margin))))
    return out


def build_up(page: Page, option: Option, tables: Tables | None, first: int, last: int) -> None:
    """The steps as the program took them, and, with the tables, the same once more as formulas with inputs."""
    page.heading("From cost to price, as the program did it")
    for step in option.price.steps:
        page.add(
            Cell(step.text, "cell", 2),
            Cell(step.formula, "cell quiet", 3),
            Cell(step.amount, "money"),
            Cell("", "cell", 2),
        )
    page.gap()
    if tables is not None and _can_recalculate(option, tables):
        _live(page, option, tables, first, last)


def _can_recalculate(option: Option, tables: Tables) -> bool:
    """The tables hold the margin of every class of this option and the step it is rounded to."""
    try:
        class_rows(option, tables)
        tables.setting("round_price_to")
    except KeyError:
        return False
    return True


LEFT_AS_IT_IS = "A rate moves its own line. Small parts, tax on materials and paid days stay as they are; estimator options --set reprices."
"""What the yellow cells do not feed."""


def _live(page: Page, option: Option, tables: Tables, first: int, last: int) -> None:
    """Class by class, then up to the firm's step; what else moved the price stands as one figure."""
    page.heading("Try it: change a yellow cell and read the total")
    page.add(Cell(LEFT_AS_IT_IS, "quiet", 8))
    page.add(
        *(
            Cell(t, "head" if i < 2 else "head right")
            for i, t in enumerate(("Class", "", "Cost", "Held", "Margin", "Price"))
        ),
        Cell("", "head", 2),
    )
    prices = []
    rows = class_rows(option, tables)
    for row in rows:
        prices.append(at(AMOUNT, _class(page, row, first, last)))
    work = sum((row.price for row in rows), Decimal(0))
    leaves = sum((share.percent for share in option.price.leaves), Decimal(0)) / HUNDRED
    other = cents(option.price.before_rounding * (1 - leaves)) - work
    step = Decimal(tables.setting("round_price_to").value)
    price = up_to(cents((work + other) / (1 - leaves)), step)
    after = option.price.total - price
    r_other = page.add(Cell("least charges, allowances", "cell", 5), Cell(other, "money"), Cell("", "cell", 2))
    r_leaves = page.add(Cell(LEAVES, "cell", 5), Cell(leaves, "input percent", open=True), Cell("", "cell", 2))
    text = f"=ROUND(SUM({','.join([*prices, at(AMOUNT, r_other)])})/(1-{at(AMOUNT, r_leaves)}),2)"
    sum_of_all = cents((work + other) / (1 - leaves))
    before = page.add(
        Cell("before rounding", "sum words", 5), Cell(Formula(text, sum_of_all), "sum"), Cell("", "sum words", 2)
    )
    r_step = page.add(Cell("rounded up to", "cell", 5), Cell(step, "input", open=True), Cell("", "cell", 2))
    r_after = page.add(
        Cell("set by hand, discounts, add-ons chosen, tax charged", "cell", 5),
        Cell(after, "money"),
        Cell("", "cell", 2),
    )
    text = f"=ROUND(ROUNDUP(ROUND({at(AMOUNT, before)}/{at(AMOUNT, r_step)},6),0)*{at(AMOUNT, r_step)}+{at(AMOUNT, r_after)},2)"
    page.add(
        Cell("Total", "total words", 5),
        Cell(live(text, price + after, option.price.total), "total"),
        Cell("", "body", 2),
    )
    page.gap()


def _class(page: Page, row: ClassRow, first: int, last: int) -> int:
    number = len(page.rows)
    cost, held, margin = at(2, number), at(3, number), at(4, number)
    classes, amounts = f"{at(CLASS, first)}:{at(CLASS, last)}", f"{at(AMOUNT, first)}:{at(AMOUNT, last)}"
    return page.add(
        Cell(row.name, "cell", 2),
        Cell(Formula(f"=ROUND(SUMIF({classes},{at(0, number)},{amounts}),2)", row.cost), "money"),
        Cell(row.contingency, "input percent", open=True),
        Cell(row.margin, "input percent", open=True),
        Cell(live(f"=ROUND({cost}*(1+{held})/(1-{margin}),2)", row.price, row.price), "money"),
        Cell("", "cell", 2),
    )

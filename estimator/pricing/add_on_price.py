"""One add-on of the table in; what it takes, what it costs and what it is sold for, out.

It is done while the crews are there, so it pays for its exact hours and no set-up, half day or least charge; nor any
contingency, since nothing is hidden in it. Then margin, up to the firm's step. Several chosen cost the sum of what was
printed for each.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from decimal import Decimal

from estimator.model.add_on import AddOn
from estimator.model.money import cents, exact, plain, up_to
from estimator.model.price import BESIDE, CrewDays, LineItem, Price, Step
from estimator.model.stretch import Stretch
from estimator.model.work import JOB, Quantity, Repair, Takeoff
from estimator.pricing.build import margin
from estimator.pricing.crews import Crew, crews_of
from estimator.pricing.discounts import floor_price
from estimator.pricing.figures import Figures, figures_of, hours_of
from estimator.pricing.hours import by_crew
from estimator.pricing.house_rules import HouseRules, house_rules
from estimator.pricing.lines import PASSED_ON
from estimator.pricing.markup import class_prices, class_rows
from estimator.pricing.parts import Sold, parts_of_sold
from estimator.pricing.prepared import of_parts
from estimator.pricing.shares import cost_lines
from estimator.pricing.tax import bought_for, charged_tax, taxed_in_their_own_way
from estimator.tables.price_shares import firm_share
from estimator.tables.rows import AddOnRow, PlaceRow, PriceClass, WorkItem
from estimator.tables.tables import Tables

ZERO = Decimal(0)


def priced(
    row: AddOnRow,
    size: float,
    by_hand: Decimal | None,
    takeoffs: Sequence[Takeoff],
    tables: Tables,
    place: PlaceRow | None,
) -> tuple[AddOn, Decimal]:
    """So many of its work item, at its own price or the one set by hand; and the least it may be sold for.

    Errors: CannotGoOn for a recipe with a missing row or without any cost.
    """
    item = tables.work_item(row.work_item)
    alone = _takeoff(row.code, item, size, takeoffs)
    figures = _figures(Sold(takeoff=alone, item=item, size=size), tables, place)
    spent = figures.costs
    rows = class_rows(tuple(spent), tables)
    prices = class_prices(spent, rows, ZERO)
    before = cents(sum(prices.values(), ZERO) / firm_share(tables))
    amount = up_to(before, house_rules(tables).price_step) if by_hand is None else by_hand
    made = AddOn(
        code=row.code,
        text_en=row.text_en or item.text_en.replace("{size}", alone.size),
        text_es=row.text_es or item.text_es.replace("{size}", alone.size),
        work_item=item.item,
        work_class=item.work_class,
        size=size,
        unit=item.unit,
        amount=amount,
        cost=sum(spent.values(), ZERO),
        tasks=figures.tasks,
        costs=cost_lines(figures, tables, place, ZERO),
        steps=_steps(spent, prices, rows, before, amount),
    )
    return taxed(made, prices, spent, tables, place), floor_price(spent, rows, firm_share(tables))


def _steps(
    spent: Mapping[str, Decimal],
    prices: Mapping[str, Decimal],
    rows: Mapping[str, PriceClass],
    before: Decimal,
    amount: Decimal,
) -> tuple[Step, ...]:
    """The way from its cost to its price."""
    steps = [
        Step(
            text=f"price of class {name}",
            formula=f"{cost} ÷ (1 − {plain(rows[name].margin_percent)} %)",
            amount=prices[name],
        )
        for name, cost in spent.items()
    ]
    last = Step(text="price", formula="rounded up to the firm's step, or as the owner set it", amount=amount)
    return (*steps, Step(text="before rounding", formula="own work + subs + passed on", amount=before), last)


def _takeoff(code: str, item: WorkItem, size: float, takeoffs: Sequence[Takeoff]) -> Takeoff:
    """The work item alone, in the ground, the weather and the pipe size of the option."""
    return Takeoff(
        repair=Repair(id=BESIDE + code, method=JOB, line="", stretch=Stretch(0.0, 0.0)),
        quantities=(Quantity(name=item.quantity, value=size, unit=item.unit),),
        facts=frozenset[str]().union(*(t.facts for t in takeoffs)),
        size=next((t.size for t in takeoffs if t.size), ""),
    )


def _figures(sold: Sold, tables: Tables, place: PlaceRow | None) -> Figures:
    """What it costs the firm; of crews their exact hours."""
    rules = house_rules(tables)
    scope = (of_parts(parts_of_sold([sold], tables), tables),)
    tasks, teams = hours_of(scope), crews_of(scope, tables, rules)
    crews = tuple(_at_work(teams[name], hours, rules) for name, hours in by_crew(tasks).items() if hours > 0)
    return figures_of(scope, tasks, teams, crews, ZERO, tables, place)


def _at_work(crew: Crew, work: float, rules: HouseRules) -> CrewDays:
    """A crew that is there already: its hours to the hundredth, no set-up."""
    hours = cents(work)
    return CrewDays(
        crew=crew.name,
        work_hours=work,
        setup_hours=0.0,
        days=hours / exact(rules.day_hours),
        hours=hours,
        rate=crew.rate,
        amount=cents(hours * crew.rate),
        cell=crew.cell,
    )


def taxed(
    made: AddOn,
    prices: Mapping[str, Decimal],
    spent: Mapping[str, Decimal],
    tables: Tables,
    place: PlaceRow | None,
) -> AddOn:
    """With the sales tax that the place charges the homeowner on it, by its kind and the class of its work."""
    own_way = taxed_in_their_own_way([line_of(made)], place, tables)
    usual = {**prices, PASSED_ON: prices.get(PASSED_ON, ZERO) - own_way.passed_on}
    tax, _ = charged_tax(bought_for(made.costs, own_way.owners), usual, spent, made.amount - own_way.amount, place)
    return replace(made, tax=tax + own_way.tax)


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

"""An option's takeoffs and price in; what may be added to it, each at a price that stands by itself, out.

An add-on is done while the crews are there, so it pays for its exact hours and no set-up, half day or least charge; nor any
contingency, since nothing is hidden in it. Then margin, up to the firm's step. Several chosen cost the sum of what was
printed for each.
"""

from collections.abc import Iterable, Mapping, Sequence, Set
from dataclasses import dataclass, replace
from decimal import Decimal

from estimator.model.add_on import AddOn
from estimator.model.job import WantedAddOn
from estimator.model.money import cents, exact, up_to
from estimator.model.price import CostLine, CrewDays, LineItem, Price, Step, TaskHours
from estimator.model.stretch import Stretch
from estimator.model.work import JOB, Quantity, Repair, Takeoff
from estimator.pricing.amounts import follow_crews
from estimator.pricing.build import margin
from estimator.pricing.crew_days import labor_lines
from estimator.pricing.crews import Crew, crews_of
from estimator.pricing.equipment import equipment_lines
from estimator.pricing.facts import holds
from estimator.pricing.hours import by_crew, task_hours
from estimator.pricing.house_rules import HouseRules, house_rules
from estimator.pricing.markup import class_prices, class_rows
from estimator.pricing.materials import material_lines
from estimator.pricing.parts import Sold, parts_of_sold
from estimator.pricing.shares import by_class
from estimator.pricing.shown import plain
from estimator.pricing.subs import sub_lines
from estimator.pricing.tax import charged_tax
from estimator.pricing.tax_classes import taxed_in_their_own_way
from estimator.tables.rows import AddOnRow, PlaceRow, WorkItem
from estimator.tables.tables import Tables

ZERO = Decimal(0)
ADDED = ("Added: {text}", "Agregado: {text}")


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a job says of add-ons: the estimator's words, the codes that were chosen, and the names of this option."""

    words: Sequence[WantedAddOn] = ()
    chosen: Sequence[str] = ()
    called: Set[str] = frozenset()

    def word(self, code: str) -> WantedAddOn | None:
        """The estimator's word on this add-on for this option."""
        return next((w for w in self.words if w.code == code and self._here(w)), None)

    def left_out(self, code: str) -> bool:
        """It stands in the job file for other options only, or with a quantity of 0."""
        named = [w for w in self.words if w.code == code]
        here = self.word(code)
        return bool(named) and (here is None or here.quantity == 0)

    def _here(self, word: WantedAddOn) -> bool:
        return not word.options or any(o.lower() in self.called for o in word.options)


def add_ons(
    takeoffs: Sequence[Takeoff], price: Price, tables: Tables, place: PlaceRow | None, wanted: Wanted
) -> tuple[AddOn, ...]:
    """Those of the table that fit and are not in the price anyway, then the estimator's own.

    Errors: CannotGoOn for a recipe with a missing row or without any cost.
    """
    sold = {line.work_item for line in price.lines}
    codes = {row.code for row in tables.add_ons}
    fitting = [
        r for r in tables.add_ons if _fits(r, takeoffs) and r.work_item not in sold and not wanted.left_out(r.code)
    ]
    own = [w for w in wanted.words if w.code not in codes and not wanted.left_out(w.code) and wanted.word(w.code) is w]
    made = [
        *(_from_table(row, wanted.word(row.code), takeoffs, tables, place) for row in fitting),
        *(_own(word, tables, place) for word in own),
    ]
    return tuple(replace(a, chosen=a.code in wanted.chosen) for a in made)


def _fits(row: AddOnRow, takeoffs: Sequence[Takeoff]) -> bool:
    methods = {t.repair.method for t in takeoffs}
    return (not row.methods or bool(methods & set(row.methods))) and holds(row.when, _facts(takeoffs))


def _facts(takeoffs: Iterable[Takeoff]) -> frozenset[str]:
    return frozenset[str]().union(*(t.facts for t in takeoffs))


# ── one of the table ──────────────────────────────────────────────────────────────────────────


def _from_table(
    row: AddOnRow, word: WantedAddOn | None, takeoffs: Sequence[Takeoff], tables: Tables, place: PlaceRow | None
) -> AddOn:
    item = tables.work_item(row.work_item)
    size = row.quantity if word is None or word.quantity is None else word.quantity
    alone = _takeoff(row.code, item, size, takeoffs)
    tasks, costs = _cost(Sold(takeoff=alone, item=item, size=size), tables, place)
    spent = by_class(costs)
    prices = class_prices(spent, class_rows(tuple(spent), tables), ZERO)
    natural = up_to(sum(prices.values(), ZERO), house_rules(tables).price_step)
    made = AddOn(
        code=row.code,
        text_en=(word.text if word else "") or row.text_en or item.text_en.replace("{size}", alone.size),
        text_es=(word.text_es if word else "") or row.text_es or item.text_es.replace("{size}", alone.size),
        work_item=item.item,
        work_class=item.work_class,
        size=size,
        unit=item.unit,
        amount=natural if word is None or word.price is None else word.price,
        cost=sum((line.amount for line in costs), ZERO),
        tasks=tasks,
        costs=costs,
        steps=_steps(spent, prices, tables, natural if word is None or word.price is None else word.price),
    )
    return _taxed(made, costs, prices, spent, tables, place)


def _steps(
    spent: Mapping[str, Decimal], prices: Mapping[str, Decimal], tables: Tables, amount: Decimal
) -> tuple[Step, ...]:
    """The way from its cost to its price."""
    rows, before = class_rows(tuple(spent), tables), sum(prices.values(), ZERO)
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
        repair=Repair(id=f"add-on {code}", method=JOB, line="", stretch=Stretch(0.0, 0.0)),
        quantities=(Quantity(name=item.quantity, value=size, unit=item.unit),),
        facts=_facts(takeoffs),
        size=next((t.size for t in takeoffs if t.size), ""),
    )


def _cost(sold: Sold, tables: Tables, place: PlaceRow | None) -> tuple[tuple[TaskHours, ...], tuple[CostLine, ...]]:
    """Hours and cost lines; of crews their exact hours."""
    rules = house_rules(tables)
    parts = parts_of_sold([sold], tables)
    tasks = task_hours(parts, tables, rules.factor_cap)
    teams = crews_of(parts, tables, rules)
    crews = tuple(_at_work(teams[name], hours, rules) for name, hours in by_crew(tasks).items() if hours > 0)
    parts = follow_crews(parts, tasks, {c.crew: c for c in crews})
    return tasks, (
        *labor_lines(tasks, crews),
        *equipment_lines(parts, tables, tasks, teams, rules),
        *material_lines(parts, tables, place, rules.small_parts_percent),
        *sub_lines(parts, tables),
    )


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


# ── one of the estimator's own ────────────────────────────────────────────────────────────────


def _own(word: WantedAddOn, tables: Tables, place: PlaceRow | None) -> AddOn:
    """In his words and at his price; its cost is the price less the margin of an allowance, as long as nobody knows better."""
    amount = word.price or ZERO
    left = class_rows(("allowance",), tables)["allowance"].margin_percent
    made = AddOn(
        code=word.code,
        text_en=word.text,
        text_es=word.text_es or word.text,
        work_item="",
        work_class="pipe",
        size=1.0 if word.quantity is None else word.quantity,
        unit="",
        amount=amount,
        cost=cents(amount * (1 - left / 100)),
    )
    return _taxed(made, (), {}, {}, tables, place)


# ── tax, and what choosing does ───────────────────────────────────────────────────────────────


def _taxed(
    made: AddOn,
    costs: Sequence[CostLine],
    prices: Mapping[str, Decimal],
    spent: Mapping[str, Decimal],
    tables: Tables,
    place: PlaceRow | None,
) -> AddOn:
    own_way = taxed_in_their_own_way([line_of(made)], place, tables)
    tax, _ = charged_tax(costs, prices, spent, made.amount - own_way.amount, place, own_way.owners)
    return replace(made, tax=tax + own_way.tax)


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
        price_class="own" if add_on.costs else "allowance",
        cost_share=add_on.cost,
    )


def with_chosen(price: Price, offered: Iterable[AddOn]) -> Price:
    """The price with the add-ons that were chosen: every other line stays as it was offered."""
    chosen = [a for a in offered if a.chosen]
    if not chosen:
        return price
    added, tax = sum((a.amount for a in chosen), ZERO), sum((a.tax for a in chosen), ZERO)
    total = price.total + added + tax
    spent = sum((c.amount for c in price.costs), ZERO) + sum((a.cost for a in chosen), ZERO)
    spent += sum((line.cost_share for line in price.lines if line.price_class == "allowance"), ZERO)
    net = total - price.tax - tax
    steps = [
        Step(text="add-ons chosen", formula="each at the price it was offered at", amount=added),
        Step(text="sales tax on them", formula="to the homeowner, by the place's kind", amount=tax),
        replace(price.steps[-1], amount=total),
    ]
    off = [line for line in price.lines if line.price_class == "discount"]
    work = [line for line in price.lines if line.price_class != "discount"]
    return replace(
        price,
        lines=(*work, *map(line_of, chosen), *off),
        steps=(*price.steps[:-1], *(s for s in steps if s.amount)),
        total=total,
        tax=price.tax + tax,
        margin=margin(net, spent),
    )
